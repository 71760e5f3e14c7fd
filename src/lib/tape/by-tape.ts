import type { Placement } from '#shared/placement.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Plan, Taking } from './plan.ts';
import type { Read } from './read-taking.ts';
import { saidBy, type Doubted, type Laid } from './read.ts';
import { circlesOf, type Reading } from './solve.ts';
import { READING_ERROR, type Tape } from './tapes.ts';

/** Where the points of a paper draft lie by what a tape says between them. */

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
	/** What alone may lead to points that lie far off; it counts. Where they were not drawn there, it was misread. */
	readonly perhaps: (Disagreeing & { readonly points: readonly string[] }) | undefined;
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
	read: readonly (Read | undefined)[],
	given: ReadonlySet<string>,
	tape: Tape
): Taped => {
	const error = READING_ERROR[tape];
	const readings = plan.takings.flatMap(({ from, to }, i): Reading[] => {
		const taken = read[i];
		return taken ? [{ from: plan.points.indexOf(from), to: plan.points.indexOf(to), ...taken }] : [];
	});
	const { laid, doubted, perhaps } = saidBy(readings, plan.sheet, error);
	const { misses = 0, spare = 0 } = laid?.solution ?? {};
	const worse = spare > 0 ? Math.max(1, Math.sqrt(misses / spare)) : 1;
	const measured = laid ? placementsOf(laid, plan, given, error * worse) : {};
	const takingOf = ({ from, to }: Reading): Taking | undefined =>
		plan.takings.find((each) => each.from === plan.points[from] && each.to === plan.points[to]);
	const named = (doubt: Doubted): Disagreeing => ({
		of: doubt.readings.flatMap((reading, i) => {
			const taking = takingOf(reading);
			return taking ? [{ ...taking, read: mm(reading.length), told: mm(doubt.told[i] ?? 0) }] : [];
		})
	});
	return {
		measured,
		open: plan.points.filter((name) => !(name in measured) && !given.has(name)),
		disagreeing: doubted.map(named),
		perhaps: perhaps && {
			...named(perhaps),
			points: perhaps.points.flatMap((point) => plan.points[point] ?? [])
		},
		misses: spare > 0 ? mm(error * Math.sqrt(misses / spare)) : undefined,
		worse
	};
};
