import type { Body } from './body.ts';
import type { MeasurementKey } from './measurements.ts';
import type { Speech } from './speech/speech.ts';

/** A measurement of a body as it is written wherever it is used: with its unit, and how it came about where no tape took it. */
export const measuredWords = (
	key: MeasurementKey,
	{ measurements, supposed }: Pick<Body, 'measurements' | 'supposed'>,
	{ words: { input }, length }: Pick<Speech, 'words' | 'length'>
): string => {
	const taken = measurements[key];
	if (taken === undefined) return input.notMeasured;
	const value = length(taken);
	const how = supposed?.[key];
	return how ? input.supposed({ value, how }) : value;
};
