import type { Placement } from '#shared/placement.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Plan, Taking } from './plan.ts';
import { saidBy, type Laid } from './read.ts';
import { circlesOf, type Reading } from './solve.ts';

/** Where the points of a paper draft lie by what a tape says between them. */

/** What is laid between the points; how far a reading of it may be off. */
export const TAPES = ['rule', 'tape'] as const;
export type Tape = (typeof TAPES)[number];

/**
 * How far one reading may be off, as a standard deviation. A rule or steel tape of EU class II may be 0.3 + 0.2 mm off within a metre
 * (directive 2014/32/EU, annex VIII), is read to half a millimetre, and a pencil mark is half a millimetre wide. A tape of the
 * sewing room has no class and lies less flat: twice as much, from memory.
 */
export const READING_ERROR: Readonly<Record<Tape, Mm>> = { rule: mm(0.5), tape: mm(1) };

/** A reading that does not agree with the others, with what it should then be. */
export interface Disagreeing {
	/** Those of which one is wrong: only one where it is plain which. */
	readonly of: readonly (Taking & { readonly read: Mm; readonly told: Mm })[];
}

/** What a tape has said so far. */
export interface Taped {
	/** The points that are pinned down, with the error of each, by the names of their steps; given ones are left out. */
	readonly measured: Readonly<Record<string, Placement>>;
	/** The points that are not pinned down yet. */
	readonly open: readonly string[];
	readonly disagreeing: readonly Disagreeing[];
	/** By how much a reading misses what all of them together say, as a root of the mean of squares; undefined where none is to spare. */
	readonly misses: Mm | undefined;
	/** How much worse than a tape should be they agree: 1 for not at all. The points' errors are as much greater. */
	readonly worse: number;
}

const placementsOf = ({ points, solution }: Laid, plan: Plan, given: ReadonlySet<string>, error: number) =>
	Object.fromEntries(
		circlesOf(solution).flatMap((circle, i): readonly (readonly [string, Placement])[] => {
			const [name, place] = [plan.points[points[i] ?? -1], solution.places[i]];
			if (name === undefined || !place || given.has(name)) return [];
			return [[name, { kind: 'point', at: [place.x, place.y], error: circle * error }]];
		})
	);

/**
 * Where the points lie by what was read so far.
 *
 * @param read what the tape said of each taking of the plan; undefined where it was not laid yet
 * @param given the points that nobody draws: they hold the others and are not judged
 */
export const tapedBy = (
	plan: Plan,
	read: readonly (Mm | undefined)[],
	given: ReadonlySet<string>,
	tape: Tape
): Taped => {
	const error = READING_ERROR[tape];
	const readings = plan.takings.flatMap(({ from, to }, i): Reading[] => {
		const length = read[i];
		return length === undefined
			? []
			: [{ from: plan.points.indexOf(from), to: plan.points.indexOf(to), length }];
	});
	const { laid, doubted } = saidBy(readings, plan.sheet, error);
	const { misses = 0, spare = 0 } = laid?.solution ?? {};
	const worse = spare > 0 ? Math.max(1, Math.sqrt(misses / spare)) : 1;
	const measured = laid ? placementsOf(laid, plan, given, error * worse) : {};
	const takingOf = ({ from, to }: Reading): Taking | undefined =>
		plan.takings.find((each) => each.from === plan.points[from] && each.to === plan.points[to]);
	return {
		measured,
		open: plan.points.filter((name) => !(name in measured) && !given.has(name)),
		disagreeing: doubted.map((doubt) => ({
			of: doubt.readings.flatMap((reading, i) => {
				const taking = takingOf(reading);
				return taking ? [{ ...taking, read: mm(reading.length), told: mm(doubt.told[i] ?? 0) }] : [];
			})
		})),
		misses: spare > 0 ? mm(error * Math.sqrt(misses / spare)) : undefined,
		worse
	};
};
