import { bodyFileSchema, readBody, readMeasurement, type Body } from '#shared/body.ts';
import { formerKeys, MEASUREMENT_KEYS, measurementNow, type MeasurementKey } from '#shared/measurements.ts';
import { z } from '#shared/shape.ts';
import { mm, printNumber, type Unit } from '#shared/units.ts';
import type { OwnBodyFile } from './schemas.ts';

/** Whether a body's file has a measurement under a name that it had. */
export const isFormer = (file: OwnBodyFile): boolean => formerKeys(file).length > 0;

/** A body's file with its measurements under the names that they have now. */
export const underNewNames = (file: OwnBodyFile): OwnBodyFile => ({
	...Object.fromEntries(Object.entries(file).map(([key, value]) => [measurementNow(key), value])),
	unit: file.unit,
	allowances: file.allowances
});

/** An own body with a measurement as it was typed, or without it where nothing is. Throws BadInput. */
export const withMeasurement = (file: OwnBodyFile, key: MeasurementKey, text: string): OwnBodyFile => {
	if (text !== '') {
		readMeasurement(key, text, file.unit);
		return { ...file, [key]: text };
	}
	const { [key]: _, ...others } = file;
	return { ...others, allowances: file.allowances, unit: file.unit };
};

/** A body's measurements and allowances as someone writes them down who reads them off the page in `unit`. */
export const writtenDown = (body: Body, name: string, unit: Unit): OwnBodyFile => ({
	name,
	unit,
	...Object.fromEntries(
		MEASUREMENT_KEYS.flatMap((key) => {
			const taken = body.measurements[key];
			return taken === undefined ? [] : [[key, printNumber(taken, unit)]];
		})
	),
	allowances: Object.fromEntries(
		// A body that is kept here was read with the block's allowances alone, and they are lengths.
		Object.entries(body.allowances).map(([key, value]) => [key, printNumber(mm(value), unit)])
	)
});

/**
 * A body's file as it was saved, from parsed JSON: numbers as they were typed, under the names that they have now, and
 * nothing that is no part of a body. Throws BadInput where it is none.
 */
export const openedBody = (input: unknown, name: string): OwnBodyFile => {
	const body = readBody(input, '', name);
	const file = underNewNames(z.parse(bodyFileSchema, input));
	return {
		name: body.name,
		unit: body.unit,
		...Object.fromEntries(
			MEASUREMENT_KEYS.flatMap((key) => (key in body.measurements ? [[key, file[key]]] : []))
		),
		allowances: file.allowances
	};
};
