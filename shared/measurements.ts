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
