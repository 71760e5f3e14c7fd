import type { Body } from '#shared/body.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { mm, printNumber, type Unit } from '#shared/units.ts';
import type { OwnBodyFile } from '#ui/keeping/schemas.ts';

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
	),
	...(body.supposed && { supposed: body.supposed })
});
