import type { Body } from '#shared/body.ts';
import type { StepKind } from '#shared/method.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { isPointName } from '#drafting/names.ts';
import { alongMissteps } from './by-kind/along.ts';
import { crossingMissteps } from './by-kind/crossing.ts';
import { divisionMissteps } from './by-kind/division.ts';
import { foldedMissteps } from './by-kind/folded.ts';
import type { KindMissteps } from './by-kind/kind-missteps.ts';
import { markMissteps } from './by-kind/mark.ts';
import { meetingMissteps } from './by-kind/meeting.ts';
import { mirrorMissteps } from './by-kind/mirror.ts';
import { spreadMissteps } from './by-kind/spread.ts';
import { swingMissteps } from './by-kind/swing.ts';
import { turnMissteps } from './by-kind/turn.ts';
import { untilMissteps } from './by-kind/until.ts';
import { slip, type Misstep } from './misstep.ts';
import { PRIORS } from './priors.ts';
import { passes, standOf, type Stand } from './stand.ts';

/** The kinds of step that have wrong rules of their own. */
const KINDS: { readonly [K in StepKind]?: KindMissteps<K> } = {
	turn: turnMissteps,
	spread: spreadMissteps,
	mirror: mirrorMissteps,
	folded: foldedMissteps,
	crossing: crossingMissteps,
	until: untilMissteps,
	mark: markMissteps,
	meeting: meetingMissteps,
	division: divisionMissteps,
	along: alongMissteps,
	swing: swingMissteps
};

/** A step and the entry of its own kind belong together, which TypeScript cannot see: said here once. */
const ownMissteps = (stand: Stand): readonly Misstep[] =>
	(KINDS[stand.step.kind] as unknown as KindMissteps<never> | undefined)?.(stand.step, stand) ?? [];

/** Where the methods that this one uses put their point of the same name: the back's rule, followed in the front. */
const otherPanels = ({ step, drafted, method }: Stand): readonly Misstep[] =>
	Object.entries(drafted.uses ?? {}).flatMap(([alias, draft]) => {
		const place = draft.points[step.name];
		if (!place) return [];
		return [
			{
				note: `panel:${alias}`,
				prior: PRIORS.otherPanel,
				place,
				slips: [slip('panel', { wrong: method.uses[alias]?.called ?? { name: alias }, right: method.name })]
			}
		];
	});

/** Where other points are to come, if `drafted` knows them already. */
const otherPoints = ({ step, method, drafted }: Stand): readonly Misstep[] => {
	// The end of a level has no name to be taken for another.
	if (!isPointName(step.name)) return [];
	const later = method.steps.slice(method.steps.indexOf(step) + 1).flatMap(({ name }) => {
		const place = drafted.points[name];
		return place ? [{ name, place }] : [];
	});
	return later.map(({ name, place }) => ({
		note: `point:${name}-for-${step.name}`,
		prior: PRIORS.otherPoint / later.length,
		place,
		slips: [slip('otherPoint', { wrong: name, right: step.name })]
	}));
};

/** Whether two places are one. Not by their distance: this is asked some thousand times for one diagnosis. */
const isSame = (a: SheetPoint, b: SheetPoint): boolean =>
	Math.abs(a.x - b.x) <= SAME_PLACE && Math.abs(a.y - b.y) <= SAME_PLACE;

/** One for each note and place: a wrong rule that is reached in two ways is as common as the commoner of them. */
const merged = (candidates: readonly Misstep[]): readonly Misstep[] => {
	const kept = new Map<string, Misstep[]>();
	for (const each of candidates) {
		const same = kept.get(each.note);
		if (!same) {
			kept.set(each.note, [each]);
			continue;
		}
		const at = same.findIndex(({ place }) => isSame(place, each.place));
		const before = same[at];
		if (!before) same.push(each);
		else if (each.prior > before.prior) same[at] = each;
	}
	return [...kept.values()].flat();
};

/**
 * Every plausible wrong place of a point step that would not pass for right, among those that are
 * `wanted`. A place that a wrong rule of its own explains is not told as another point's.
 */
export const candidatesAt = (
	stand: Stand,
	wanted: (place: SheetPoint) => boolean = ({ x, y }) => Number.isFinite(x) && Number.isFinite(y)
): readonly Misstep[] => {
	const isWanted = ({ place }: Misstep): boolean => wanted(place) && !passes(stand, place);
	const own = ownMissteps(stand).filter(isWanted);
	const others = [...otherPanels(stand), ...otherPoints(stand)].filter(
		(other) => isWanted(other) && !own.some(({ place }) => isSame(place, other.place))
	);
	return merged([...own, ...others]);
};

/**
 * Every plausible wrong rule of a point step and where it leads for this body, worked out from the
 * step's own formula, start and direction and from the points that `drafted` holds. A wrong rule that
 * leads within tolerance of the right place is not among them. A note may come more than once, with
 * different places: half for quarter of the bust alone, and of the ease with it. None for a line or
 * the corner. Throws NotDrafted where the step's own start is not in `drafted`, BadInput where the
 * body lacks a measurement.
 */
export const pointMissteps = (
	method: Method,
	stepName: string,
	body: Body,
	drafted: Drafted
): readonly Misstep[] => {
	const stand = standOf(method, stepNamed(method, stepName), body, drafted);
	return stand ? candidatesAt(stand) : [];
};
