import type { Body } from './body.ts';
import type { MeasurementKey } from './measurements.ts';
import type { Speech } from './speech/speech.ts';
import type { Mm } from './units.ts';

/** A measurement as it is written wherever it is used: with its unit, and how it came about where no tape took it. */
export const measuredWords = (
	key: MeasurementKey,
	value: Mm,
	{ supposed }: Pick<Body, 'supposed'>,
	{ words, length }: Pick<Speech, 'words' | 'length'>
): string => {
	const how = supposed?.[key];
	return how ? words.input.supposed({ value: length(value), how }) : length(value);
};
