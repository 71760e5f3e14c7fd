import type { Mm } from '#shared/units.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { NO_DIAGNOSIS, type Diagnosis, type Misstep } from './misstep.ts';
import { candidatesAt } from './point-missteps.ts';
import {
	BESIDE,
	CARELESS,
	CARELESS_HAND,
	CERTAIN,
	CLEARLY_ABOVE,
	DISTANCES,
	HAND,
	MOST_TOLD,
	SHEET_AREA,
	STRAY,
	TOGETHER,
	UNKNOWN,
	UNKNOWN_DISTANCE
} from './priors.ts';
import type { Stand } from './stand.ts';

/** How densely a hand of this spread puts places so far off along one axis, per millimetre. */
const alongAxis = (gap: number, spread: Mm): number =>
	Math.exp(-(gap * gap) / (2 * spread * spread)) / (Math.sqrt(2 * Math.PI) * spread);

/** The same on the sheet, for a place so far from the one that was meant: per square millimetre. */
const onSheet = (gap: number, spread: Mm): number => alongAxis(gap, spread) * alongAxis(0, spread);

const gapOf = (a: SheetPoint, b: SheetPoint): number => Math.hypot(a.x - b.x, a.y - b.y);

/** How likely a placement comes from none of the candidates: the rule was known and the hand slipped, only the distance is wrong from another cause, or everything is. */
const unexplained = (placed: SheetPoint, right: SheetPoint): number => {
	const aside = Math.min(Math.abs(placed.x - right.x), Math.abs(placed.y - right.y));
	return (
		CARELESS * onSheet(gapOf(placed, right), CARELESS_HAND) +
		(UNKNOWN_DISTANCE * alongAxis(aside, HAND)) / DISTANCES +
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
 * The diagnosis for candidates of these weights, beside all else that could have led there. One that is
 * clearly above everything else is certain; two or three that share it are told together; else no guess.
 */
export const decided = (weights: readonly (readonly [Misstep, number])[], other: number): Diagnosis => {
	const notes = byNote(weights);
	const [first, second] = notes;
	if (!first) return NO_DIAGNOSIS;
	const whole = other + notes.reduce((sum, { weight }) => sum + weight, 0);
	if (first.weight >= CERTAIN * whole && first.weight >= CLEARLY_ABOVE * (second?.weight ?? 0))
		return { kind: 'certain', misstep: first.best };
	const beside = notes.filter(({ weight }) => weight >= BESIDE * first.weight);
	const together = beside.reduce((sum, { weight }) => sum + weight, 0);
	if (beside.length > MOST_TOLD || together < TOGETHER * whole) return NO_DIAGNOSIS;
	const [one, two, ...rest] = beside.map(({ best }) => best);
	return one && two ? { kind: 'either', missteps: [one, two, ...rest] } : NO_DIAGNOSIS;
};

/** Whether a hand that meant `meant` may have put the point at `placed` at all. */
const mayMean = (placed: SheetPoint, meant: SheetPoint): boolean =>
	Math.abs(meant.x - placed.x) <= STRAY && Math.abs(meant.y - placed.y) <= STRAY;

/**
 * Weighs the candidates for a placement as Bayes does: how common each is, times how likely a hand that
 * meant its place would have put the point there.
 */
export const weighed = (stand: Stand, placed: SheetPoint): Diagnosis => {
	const near = candidatesAt({ ...stand, placed }, (place) => mayMean(placed, place));
	const weights = near.map(
		(candidate) => [candidate, candidate.prior * onSheet(gapOf(candidate.place, placed), HAND)] as const
	);
	const found = decided(weights, unexplained(placed, stand.right));
	return found.kind === 'none' ? found : { ...found, seen: 'place' };
};
