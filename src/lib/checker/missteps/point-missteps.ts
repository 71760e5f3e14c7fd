import type { Body } from '#shared/body.ts';
import type { StepKind } from '#shared/method.ts';
import { SAME_PLACE, UNSPOKEN } from '#shared/tolerances.ts';
import type { Mm } from '#shared/units.ts';
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
import { mayBeMeant } from './parts.ts';
import { OUTDONE, PRIORS } from './priors.ts';
import { passes, standOf, type Stand } from './stand.ts';
import { widePoints } from './wide-points.ts';

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
const isSame = (a: SheetPoint, b: SheetPoint, within: Mm = SAME_PLACE): boolean =>
	Math.abs(a.x - b.x) <= within && Math.abs(a.y - b.y) <= within;

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

/** What may have led to a mark: what is worth telling, and the rivals that go without saying. */
export interface Explained {
	readonly told: readonly Misstep[];
	readonly silent: readonly Misstep[];
}

/**
 * Of those that lead to one place, the rarer beside a commoner one go without saying. What any step has (`wide`), beside one that is
 * this step's own, is another name for it, so that what speaks for it speaks for that one.
 */
const outdone = (own: readonly Misstep[], wide: readonly Misstep[]): Explained => {
	const [told, silent]: [Misstep[], Misstep[]] = [[], []];
	const stronger = (each: Misstep, times: number): number =>
		told.findIndex(({ place, prior }) => isSame(place, each.place, UNSPOKEN) && prior >= times * each.prior);
	for (const each of own.toSorted((a, b) => b.prior - a.prior))
		(stronger(each, OUTDONE) >= 0 ? silent : told).push(each);
	for (const each of wide.toSorted((a, b) => b.prior - a.prior)) {
		const at = stronger(each, 0);
		const first = told[at];
		if (first) told[at] = { ...first, prior: first.prior + each.prior };
		else told.push(each);
	}
	return { told, silent };
};

const isWanted =
	(stand: Stand) =>
	({ place }: Misstep): boolean =>
		Number.isFinite(place.x) && Number.isFinite(place.y) && mayBeMeant(stand, place) && !passes(stand, place);

/** Every plausible wrong place of a point step; one that a wrong rule of its own explains is not told as another point's. */
const candidates = (stand: Stand): readonly Misstep[] => {
	const own = ownMissteps(stand).filter(isWanted(stand));
	const others = [...otherPanels(stand), ...otherPoints(stand)]
		.filter(isWanted(stand))
		.filter((other) => !own.some(({ place }) => isSame(place, other.place)));
	return merged([...own, ...others]);
};

/** What a mark that was put at `placed` may have meant, the common wrong rules and the rare ones. */
export const explained = (stand: Stand): Explained =>
	outdone(candidates(stand), merged(widePoints(stand).filter(isWanted(stand))));

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
	return stand ? candidates(stand) : [];
};
