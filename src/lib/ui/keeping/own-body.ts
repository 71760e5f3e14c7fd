import { readMeasurement } from '#shared/body.ts';
import { formerKeys, measurementNow, type MeasurementKey } from '#shared/measurements.ts';
import type { OwnBodyFile } from './schemas.ts';

/** Whether a body's file has a measurement under a name that it had. */
export const isFormer = (file: OwnBodyFile): boolean => formerKeys(file).length > 0;

/** A body's file with its measurements under the names that they have now. */
export const underNewNames = (file: OwnBodyFile): OwnBodyFile => ({
	...Object.fromEntries(Object.entries(file).map(([key, value]) => [measurementNow(key), value])),
	unit: file.unit,
	allowances: file.allowances
});

/**
 * An own body with a measurement as it was typed, or without it where nothing is; how it came about before is forgotten.
 * Throws BadInput.
 */
export const withMeasurement = (file: OwnBodyFile, key: MeasurementKey, text: string): OwnBodyFile => {
	const made = structuredClone(file);
	for (const noted of [made.readings, made.supposed, ...(text === '' ? [made] : [])])
		if (noted) Reflect.deleteProperty(noted, key);
	if (text !== '') {
		readMeasurement(key, text, file.unit);
		made[key] = text;
	}
	return made;
};
