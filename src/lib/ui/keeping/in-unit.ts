import { readMeasurement } from '#shared/body.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { readLength } from '#shared/reading.ts';
import type { Voice } from '#shared/speech/voice.ts';
import type { Unit } from '#shared/units.ts';
import { withMeasurement } from './own-body.ts';
import type { OwnBodyFile } from './schemas.ts';

/**
 * There is one unit on the screen, the page's. A body's file stays as it was typed, in whatever unit that was: its
 * numbers are worked into the page's unit to be read, and only a field that is changed is written anew.
 */

/** Whether a length names its unit itself. */
const isSigned = (text: string): boolean => /[a-z"″”']\s*$/i.test(text);

/** A kept length as it stands in a field of the page: as it was typed where that was in the page's unit. */
export const inField = (kept: unknown, unit: Unit, page: Pick<Voice, 'unit' | 'bare'>): string => {
	if (typeof kept !== 'string' && typeof kept !== 'number') return '';
	const text = String(kept);
	if (text === '') return '';
	return unit === page.unit && !isSigned(text) ? text : page.bare(readLength(text, unit, ''));
};

/** What was typed in a field of the page, as a file in `unit` keeps it: with the page's unit where that is another. */
export const toKeep = (typed: string, page: Unit, unit: Unit): string =>
	typed === '' || page === unit || isSigned(typed) ? typed : `${typed} ${page}`;

/** An own body with a measurement as it was typed in a field of the page, or without it where nothing is. Throws BadInput. */
export const withTyped = (file: OwnBodyFile, key: MeasurementKey, typed: string, page: Unit): OwnBodyFile => {
	if (typed !== '') readMeasurement(key, typed, page);
	return withMeasurement(file, key, toKeep(typed, page, file.unit));
};
