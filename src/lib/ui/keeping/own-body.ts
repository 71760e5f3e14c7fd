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

const without = <T>(all: Readonly<Record<string, T>>, key: string): Record<string, T> => {
	const { [key]: _, ...others } = all;
	return others;
};

/** A body's file without what was noted of how one of its measurements came about. */
const unnoted = (file: OwnBodyFile, key: MeasurementKey): OwnBodyFile => ({
	...file,
	...(file.readings && { readings: without(file.readings, key) }),
	...(file.supposed && { supposed: without(file.supposed, key) })
});

/** An own body with a measurement as it was typed, or without it where nothing is. Throws BadInput. */
export const withMeasurement = (file: OwnBodyFile, key: MeasurementKey, text: string): OwnBodyFile => {
	if (text !== '') {
		readMeasurement(key, text, file.unit);
		return { ...unnoted(file, key), [key]: text };
	}
	const { [key]: _, ...others } = unnoted(file, key);
	return { ...others, allowances: file.allowances, unit: file.unit };
};
