import statistics from '../survey/statistics.json' with { type: 'json' };
import { mm, MM_PER, type Mm } from '../units.ts';
import { dot, inverted, type Matrix } from './matrix.ts';
import { STAND_INS, SURVEYED_KEYS, type SurveyedKey } from './stand-ins.ts';

export const PEOPLE = ['women', 'men'] as const;
/** Whose survey. */
export type People = (typeof PEOPLE)[number];

/** A stand-in as one number for each column of the survey. */
const weights = (key: SurveyedKey): readonly number[] =>
	statistics.columns.map((name) => STAND_INS[key].columns[name] ?? 0);
const WEIGHTS = SURVEYED_KEYS.map(weights);

/** Means and covariances of all measurements, in millimetres, in the order of SURVEYED_KEYS. */
interface Figures {
	readonly mean: readonly number[];
	readonly covariance: Matrix;
}

const figuresOf = (people: People): Figures => {
	const { mean, covariance } = statistics[people];
	const spread = WEIGHTS.map((row) => covariance.map((each) => dot(each, row)));
	const square = MM_PER.cm ** 2;
	return {
		mean: SURVEYED_KEYS.map((key, i) => MM_PER.cm * (dot(WEIGHTS[i] ?? [], mean) + STAND_INS[key].more)),
		covariance: SURVEYED_KEYS.map((key, i) =>
			WEIGHTS.map(
				(row, j) => square * (dot(spread[i] ?? [], row) + (i === j ? STAND_INS[key].loose ** 2 : 0))
			)
		)
	};
};

const FIGURES: Readonly<Record<People, Figures>> = { women: figuresOf('women'), men: figuresOf('men') };

/** What the survey says of some measurements together, in millimetres. */
export interface Together {
	readonly keys: readonly SurveyedKey[];
	readonly mean: readonly number[];
	readonly covariance: Matrix;
	readonly precision: Matrix;
	readonly logDeterminant: number;
}

const worked = (people: People, keys: readonly SurveyedKey[]): Together => {
	const { mean, covariance } = FIGURES[people];
	const places = keys.map((key) => SURVEYED_KEYS.indexOf(key));
	const part = places.map((i) => places.map((j) => covariance[i]?.[j] ?? NaN));
	return { keys, mean: places.map((i) => mean[i] ?? NaN), covariance: part, ...inverted(part) };
};

const KNOWN = new Map<string, Together>();
/** A page asks about the same few sets of measurements again and again. */
const MOST_KNOWN = 500;

/** What the women's or the men's survey says of some measurements together. */
export const together = (people: People, keys: readonly SurveyedKey[]): Together => {
	const name = [people, ...keys].join();
	const found = KNOWN.get(name) ?? worked(people, keys);
	if (KNOWN.size >= MOST_KNOWN) KNOWN.clear();
	KNOWN.set(name, found);
	return found;
};

/** The survey's mean of a measurement, and its standard deviation. */
export const alone = (people: People, key: SurveyedKey): { readonly mean: Mm; readonly sd: Mm } => {
	const i = SURVEYED_KEYS.indexOf(key);
	const { mean, covariance } = FIGURES[people];
	return { mean: mm(mean[i] ?? NaN), sd: mm(Math.sqrt(covariance[i]?.[i] ?? NaN)) };
};

/** The percentile of a length between known ones, by straight lines between them; the survey's least and greatest at the ends. */
const between = (length: number, percents: readonly number[], lengths: readonly number[]): number => {
	const above = lengths.findIndex((each) => each > length);
	if (above === 0) return 0;
	if (above < 0) return 100;
	const [low, high] = [lengths[above - 1] ?? NaN, lengths[above] ?? NaN];
	const [from, to] = [percents[above - 1] ?? NaN, percents[above] ?? NaN];
	return from + ((length - low) / (high - low)) * (to - from);
};

/** How many in a hundred of the survey have less, where what stands in is one of its columns; undefined where it is several. */
export const percentile = (people: People, key: SurveyedKey, length: Mm): number | undefined => {
	const { columns, more } = STAND_INS[key];
	const [[name, share] = ['', 0], ...others] = Object.entries(columns);
	if (others.length > 0 || share !== 1) return undefined;
	const lengths = statistics[people].percentiles[statistics.columns.indexOf(name)] ?? [];
	return between(length / MM_PER.cm - more, statistics.percents, lengths);
};
