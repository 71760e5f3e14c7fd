import type { Mm } from '#shared/units.ts';
import { directionTo, type SheetPoint } from '#geometry/point.ts';
import { stepStart } from '#drafting/steps/kinds.ts';
import { NO_DIAGNOSIS, type Diagnosis, type Misstep } from './misstep.ts';
import { explained } from './point-missteps.ts';
import {
	BESIDE,
	CARELESS,
	CARELESS_HAND,
	CERTAIN,
	CLEARLY_ABOVE,
	DISTANCES,
	HAND,
	MOST_TOLD,
	OWN_BASE,
	SHEET_AREA,
	SLIP,
	UNKNOWN,
	UNKNOWN_DISTANCE,
	WORTH_TELLING
} from './priors.ts';
import type { Stand } from './stand.ts';

/** How densely a hand of this spread puts places so far off along one axis, per millimetre. */
const alongAxis = (gap: number, spread: Mm): number =>
	Math.exp(-(gap * gap) / (2 * spread * spread)) / (Math.sqrt(2 * Math.PI) * spread);

/** The same on the sheet, for a place so far from the one that was meant: per square millimetre. */
const onSheet = (gap: number, spread: Mm): number => alongAxis(gap, spread) * alongAxis(0, spread);

const gapOf = (a: SheetPoint, b: SheetPoint): number => Math.hypot(a.x - b.x, a.y - b.y);

/** How far a place lies beside the way from a start to the right place, and how far along it from there. */
const besideWay = (
	placed: SheetPoint,
	{ right, step, scope }: Stand
): readonly [aside: number, off: number] => {
	const off = gapOf(placed, right);
	const start = stepStart(step);
	const way = start !== undefined && scope.has(start) ? directionTo(scope.point(start), right) : undefined;
	const aside = way
		? Math.abs((placed.x - right.x) * way.dy - (placed.y - right.y) * way.dx)
		: Math.min(Math.abs(placed.x - right.x), Math.abs(placed.y - right.y));
	return [aside, off];
};

/**
 * How likely a placement comes from none of the candidates: the rule was known and the hand slipped; only the distance is wrong from
 * another cause, by little more often than by much; or everything is.
 */
const unexplained = (placed: SheetPoint, stand: Stand): number => {
	const [aside, off] = besideWay(placed, stand);
	const along = 1 / DISTANCES + Math.exp(-off / SLIP) / SLIP;
	return (
		CARELESS * onSheet(gapOf(placed, stand.right), CARELESS_HAND) +
		UNKNOWN_DISTANCE * alongAxis(aside, HAND) * (along / 2) +
		UNKNOWN / SHEET_AREA
	);
};

/** A note, all that speaks for it, and the one of its candidates that explains the placement best. */
interface Weighed {
	readonly best: Misstep;
	readonly most: number;
	readonly weight: number;
}

const byNote = (weights: readonly (readonly [Misstep, number])[]): readonly Weighed[] => {
	const notes = new Map<string, Weighed>();
	for (const [candidate, weight] of weights) {
		const before = notes.get(candidate.note);
		const isBest = !before || weight > before.most;
		notes.set(candidate.note, {
			best: isBest ? candidate : before.best,
			most: isBest ? weight : before.most,
			weight: (before?.weight ?? 0) + weight
		});
	}
	return [...notes.values()].sort((a, b) => b.weight - a.weight);
};

/**
 * The diagnosis for candidates of these weights, beside all else that could have led there. One that is clearly above everything
 * else is certain; else the likeliest are told as what may have been, at most three; nothing where they are not worth telling. What is
 * `silent` leads to the same places: it makes none of them certain, and all of them worth telling.
 */
export const decided = (
	weights: readonly (readonly [Misstep, number])[],
	other: number,
	silent = 0
): Diagnosis => {
	const notes = byNote(weights);
	const [first, second] = notes;
	if (!first) return NO_DIAGNOSIS;
	const whole = other + silent + notes.reduce((sum, { weight }) => sum + weight, 0);
	if (first.weight >= CERTAIN * whole && first.weight >= CLEARLY_ABOVE * (second?.weight ?? 0))
		return { kind: 'certain', misstep: first.best };
	const likely = notes.slice(0, MOST_TOLD);
	const together = likely.reduce((sum, { weight }) => sum + weight, silent);
	const beside = likely.filter(({ weight }) => weight >= BESIDE * first.weight);
	const [likeliest, ...rest] = beside.map(({ best }) => best);
	return likeliest && together >= WORTH_TELLING * whole
		? { kind: 'either', missteps: [likeliest, ...rest] }
		: NO_DIAGNOSIS;
};

/** What speaks for each candidate of one stand, and for none of them. */
const weightsOf = (stand: Stand, placed: SheetPoint, share: number) => {
	const { told, silent } = explained({ ...stand, placed });
	const weight = ({ prior, place }: Misstep): number => share * prior * onSheet(gapOf(place, placed), HAND);
	return {
		weights: told.map((each) => [each, weight(each)] as const),
		silent: silent.reduce((sum, each) => sum + weight(each), 0),
		other: share * unexplained(placed, stand)
	};
};

/**
 * Weighs the candidates for a placement as Bayes does: how common each is, times how likely a hand that meant its place would have
 * put the point there. Where the learner may have worked from marks of their own or from the true ones, both are weighed together.
 */
export const weighed = (placed: SheetPoint, own: Stand, truth?: Stand): Diagnosis => {
	const bases = truth
		? [weightsOf(own, placed, OWN_BASE), weightsOf(truth, placed, 1 - OWN_BASE)]
		: [weightsOf(own, placed, 1)];
	const found = decided(
		bases.flatMap(({ weights }) => weights),
		bases.reduce((sum, { other }) => sum + other, 0),
		bases.reduce((sum, { silent }) => sum + silent, 0)
	);
	return found.kind === 'none' ? found : { ...found, seen: 'place' };
};
