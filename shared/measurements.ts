import { the } from './speech/en/grammar.ts';
import { MEASUREMENT_WORDS, measurementNoun } from './speech/en/nouns.ts';

/** The ten body measurements, in the order in which they are taken. What they are called stands in the `nouns` of each language. */
export const MEASUREMENT_KEYS = [
	'bust',
	'waist',
	'hip',
	'neck',
	'backWidth',
	'backLength',
	'waistToHip',
	'frontLength',
	'bustHeight',
	'bustSpan'
] as const;
export type MeasurementKey = (typeof MEASUREMENT_KEYS)[number];

/** Whether a text is the key of a measurement. */
export const isMeasurementKey = (key: string): key is MeasurementKey =>
	MEASUREMENT_KEYS.some((each) => each === key);

/** A measurement in English, for callers that are not handed a speech yet. */
interface Measurement {
	readonly key: MeasurementKey;
	readonly title: string;
	readonly words: string;
	readonly what: string;
}

/** The measurement with this key, in English: for callers that are not handed a speech yet, as are the next two. */
export const measurementOf = (key: MeasurementKey): Measurement => {
	if (!isMeasurementKey(key)) throw new Error(`no measurement is called "${String(key)}"`);
	const { noun, title, what } = MEASUREMENT_WORDS[key];
	return { key, title, words: the(noun), what };
};

export const MEASUREMENTS: readonly Measurement[] = MEASUREMENT_KEYS.map(measurementOf);

export const measurementWords = (key: string): string => the(measurementNoun(key));
