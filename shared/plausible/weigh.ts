import type { Slip } from '../speech/en/doubts.ts';
import type { Mm, Unit } from '../units.ts';
import { dot } from './matrix.ts';
import { together, type People } from './people.ts';
import { apartOnCard, COMMON, insteadOf, righted } from './slips.ts';
import type { SurveyedKey } from './stand-ins.ts';

/** One number of a body, as it was written. */
export interface Written {
	readonly key: SurveyedKey;
	readonly value: Mm;
}

/** What may have happened to one number: a slip, or something that no slip explains. Of two that are swapped each has a cause of its own. */
export interface Cause {
	/** Which of the written numbers it concerns, by its place. */
	readonly at: number;
	/** None where no slip explains it. */
	readonly slip?: Slip;
	/** What the number should be. */
	readonly value?: Mm;
	/** Which other measurement it was mixed up with. */
	readonly other?: SurveyedKey;
	/** The logarithm of how likely it is, beside nothing having happened. */
	readonly weight: number;
}

/**
 * Bodies are spread as a t distribution with the survey's means and covariances: as a normal one in the middle, with
 * more far out, where bodies are that the survey hardly knows. So many degrees of freedom. Tried on half of the sample.
 */
const FREEDOM = 10;
/** How far a girth lies from the other that was measured in its place, in mm: two readings of one place. */
const AGAIN = 8;
/** How wide a number may be spread of which nothing is known, as a share of what is written there. */
const ANYTHING = 0.5;
/** How common it is that a number is wrong in a way that no slip here explains, beside all that are explained. */
const UNEXPLAINED = 0.12;
const HALF_LOG_TURN = 0.5 * Math.log(2 * Math.PI);

/** Each next measurement divides a t distribution's density by so much: the ratio of two gamma functions half apart, to 1 part in 1000. */
const ofOneMore = (count: number): number =>
	0.5 * Math.log(((FREEDOM + count) / 2 - 0.25) / ((FREEDOM - 2) * Math.PI));

/** The logarithm of a t distribution's density, but for what is the same for as many measurements. */
const density = (squared: number, count: number, logDeterminant: number): number =>
	-0.5 * logDeterminant - ((FREEDOM + count) / 2) * Math.log1p(squared / (FREEDOM - 2));

type Unweighed = Omit<Cause, 'weight'> & { readonly log: number };

/** All that one survey says of written numbers: how likely they are as they are, and after each thing that may have happened. */
const bySurvey = (
	people: People,
	written: readonly Written[],
	unit: Unit
): { readonly nothing: number; readonly causes: readonly Unweighed[] } => {
	const keys = written.map(({ key }) => key);
	const count = keys.length;
	const { mean, precision, logDeterminant } = together(people, keys);
	const off = written.map(({ value }, i) => value - (mean[i] ?? NaN));
	const pulled = precision.map((row) => dot(row, off));
	const squared = dot(off, pulled);
	const own = (i: number): number => precision[i]?.[i] ?? NaN;
	const pull = (i: number): number => pulled[i] ?? NaN;
	const log = (q: number): number => density(Math.max(q, 0), count, logDeterminant);
	/** Without one number: what all others are likely to be together. */
	const without = (i: number): number =>
		density(Math.max(squared - pull(i) ** 2 / own(i), 0), count - 1, logDeterminant + Math.log(own(i))) -
		ofOneMore(count - 1);

	const ofOne = ({ key, value }: Written, i: number): readonly Unweighed[] => {
		const slips = righted(key, value, unit);
		const single = slips.map(({ slip, value: right, stretch }): Unweighed => {
			const by = right - value;
			const q = squared + 2 * by * pull(i) + by ** 2 * own(i);
			return { at: i, slip, value: right, log: log(q) + Math.log(stretch * COMMON[slip]) };
		});
		const others = insteadOf(key, keys);
		const instead = others.map((other): Unweighed => {
			const by = (value - (written[keys.indexOf(other)]?.value ?? NaN)) / AGAIN;
			const near = -0.5 * by ** 2 - Math.log(AGAIN) - HALF_LOG_TURN;
			return {
				at: i,
				slip: 'instead',
				other,
				log: without(i) + near + Math.log(COMMON.instead / others.length)
			};
		});
		const gone: Unweighed = { at: i, log: without(i) + Math.log(UNEXPLAINED / (ANYTHING * value)) };
		return [...single, ...instead, gone];
	};
	const ofTwo = written.flatMap((a, i) =>
		written.slice(i + 1).flatMap((b, later): readonly Unweighed[] => {
			const j = i + 1 + later;
			const by = b.value - a.value;
			const q =
				squared + 2 * by * (pull(i) - pull(j)) + by ** 2 * (own(i) + own(j) - 2 * (precision[i]?.[j] ?? NaN));
			const swapped = {
				slip: 'swapped' as const,
				log: log(q) + Math.log(COMMON.swapped / (1 + apartOnCard(a.key, b.key)))
			};
			return [
				{ ...swapped, at: i, value: b.value, other: b.key },
				{ ...swapped, at: j, value: a.value, other: a.key }
			];
		})
	);
	return { nothing: log(squared), causes: [...written.flatMap(ofOne), ...ofTwo] };
};

const logSum = (logs: readonly number[]): number => {
	const most = Math.max(...logs);
	return most + Math.log(logs.reduce((sum, each) => sum + Math.exp(each - most), 0));
};

/** All that may have happened to a body's numbers, each weighed beside nothing having happened; both surveys count where both are given. */
export const causesOf = (
	surveys: readonly People[],
	written: readonly Written[],
	unit: Unit
): readonly Cause[] => {
	const all = surveys.map((people) => bySurvey(people, written, unit));
	const nothing = logSum(all.map((each) => each.nothing));
	const [first] = all;
	return (first?.causes ?? []).map(({ log: _, ...cause }, i) => ({
		...cause,
		weight: logSum(all.map(({ causes }) => causes[i]?.log ?? -Infinity)) - nothing
	}));
};

/** How likely a body's numbers are by a survey, as they are: a logarithm, to be compared with another survey's. */
export const likelihood = (people: People, written: readonly Written[]): number =>
	written.length === 0 ? 0 : bySurvey(people, written, 'cm').nothing;

/** How likely it is, beside nothing having happened, that something happened to one of the numbers. */
export const weightAt = (causes: readonly Cause[], i: number): number =>
	logSum(causes.filter(({ at }) => at === i).map(({ weight }) => weight));
