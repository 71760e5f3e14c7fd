import { mm, type Mm } from '#shared/units.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { movedAway } from '#drafting/moved.ts';
import { stepInk } from '#drafting/steps/kinds.ts';
import { at, type SheetPoint } from '#geometry/point.ts';

/** What a line is in a draft: of its outline, a level, traced off the draft before, or any other. */
export type DraftLineKind = 'outline' | 'level' | 'traced' | 'line';

/** What the line of this name is in its draft. */
export const draftLineKind = (method: Method, name: string): DraftLineKind => {
	if (method.outline.includes(name)) return 'outline';
	return stepInk(stepNamed(method, name));
};

/**
 * What of a draft is drawn on paper. Where a part was moved, only its newest place is: on paper that is cut, the older
 * ones would be taken for edges.
 */
export const drawnNow = (method: Method, draft: Draft): Pick<Draft, 'points' | 'lines'> => {
	const away = movedAway(method, draft);
	const left = <T>(all: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
		Object.fromEntries(Object.entries(all).filter(([name]) => !away.has(name)));
	return { points: left(draft.points), lines: left(draft.lines) };
};

/** Height of the names of points. */
export const POINT_NAME_SIZE: Mm = mm(4);

/** Where a name may stand beside its point, in millimetres, the preferred first: each corner, and further out. */
const NAME_OFFSETS = [
	[1.5, -1.5],
	[1.5, 4.5],
	[-7, -1.5],
	[-7, 4.5],
	[9, 1.5],
	[-14, 1.5]
] as const;
/** How near two names may stand, in millimetres: a name of two letters is about so wide. */
const NAME_ROOM = 6;

/** The place where each point's name begins: beside the point, and clear of the names written before it. */
export const namePlaces = (points: Draft['points']): Readonly<Record<string, SheetPoint>> => {
	const taken: SheetPoint[] = [];
	const places = Object.entries(points).map(([name, point]) => {
		const choices = NAME_OFFSETS.map(([across, down]) => at(point.x + across, point.y + down));
		const free = choices.find(({ x, y }) =>
			taken.every((other) => Math.abs(other.x - x) >= NAME_ROOM || Math.abs(other.y - y) >= POINT_NAME_SIZE)
		);
		const place = free ?? choices[0] ?? point;
		taken.push(place);
		return [name, place] as const;
	});
	return Object.fromEntries(places);
};
