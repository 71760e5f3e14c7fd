/**
 * The ten body measurements, in the vocabulary of ISO 8559-1 (terms from memory, the standard's
 * text was not reprinted). `words` is how a rule speaks of the measurement.
 */
export interface Measurement {
	readonly key: MeasurementKey;
	readonly title: string;
	readonly words: string;
	readonly what: string;
}

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

const measurement = (key: MeasurementKey, title: string, words: string, what: string): Measurement => ({
	key,
	title,
	words,
	what
});

/** Every measurement, in the order in which they are taken. */
export const MEASUREMENTS: readonly Measurement[] = [
	measurement('bust', 'Bust girth', 'the bust', 'round the body at the fullest level of the bust'),
	measurement('waist', 'Waist girth', 'the waist', 'round the body at the natural waist'),
	measurement('hip', 'Hip girth', 'the hip', 'round the body at the fullest level of the hip'),
	measurement('neck', 'Neck-base girth', 'the neck', 'round the base of the neck'),
	measurement(
		'backWidth',
		'Back width',
		'the back width',
		'across the back, shoulder point to shoulder point'
	),
	measurement('backLength', 'Back length', 'the back length', 'side neck point to waist, down the back'),
	measurement('waistToHip', 'Waist to hip', 'waist to hip', 'waist level to hip level, at the side'),
	measurement(
		'frontLength',
		'Front length',
		'the front length',
		'side neck point to waist, down the front over the bust point'
	),
	measurement('bustHeight', 'Bust height', 'the bust height', 'side neck point to bust point'),
	measurement('bustSpan', 'Bust span', 'the bust span', 'bust point to bust point')
];

/** The measurement with this key. */
export const measurementOf = (key: MeasurementKey): Measurement => {
	const found = MEASUREMENTS.find((each) => each.key === key);
	if (!found) throw new Error(`no measurement is called "${key}"`);
	return found;
};

/** Whether a text is the key of a measurement. */
export const isMeasurementKey = (key: string): key is MeasurementKey =>
	MEASUREMENT_KEYS.some((each) => each === key);

/** What a measurement is called, by its key; any other key is left as it is. */
export const measurementWords = (key: string): string =>
	isMeasurementKey(key) ? measurementOf(key).words : key;
