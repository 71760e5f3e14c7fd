import {
	BLOCK_ALLOWANCES,
	checkAllowance,
	isChoice,
	namedChoice,
	type Allowance,
	type AllowanceValues,
	type LengthAllowance
} from './allowances.ts';
import { BadInput, shown } from './bad-input.ts';
import {
	isMeasurementKey,
	MEASUREMENT_KEYS,
	measurementNow,
	NEEDED_KEYS,
	SUPPOSED,
	type MeasurementKey,
	type NeededKey,
	type Supposed
} from './measurements.ts';
import { parsed, readLength, unknownHere } from './reading.ts';
import { z } from './shape.ts';
import { message } from './speech/message.ts';
import { mm, type Mm, type Unit } from './units.ts';

/** Measurements by key, in millimetres; a measurement that was not taken is absent. */
export type Measurements = Readonly<Partial<Record<MeasurementKey, Mm>>>;

/** A set of measurements, and the allowances chosen for it (only those that differ from the defaults). */
export interface Body {
	readonly name: string;
	readonly unit: Unit;
	readonly measurements: Measurements;
	readonly allowances: AllowanceValues;
	/** What the tape read each time, where a measurement was taken more than once; the measurement itself is their mean. */
	readonly readings?: Readonly<Partial<Record<MeasurementKey, readonly Mm[]>>>;
	/** The measurements that no tape took. */
	readonly supposed?: Readonly<Partial<Record<MeasurementKey, Supposed>>>;
}

/** The least and greatest length that can be a body measurement at all: outside it the unit was mistaken. */
const BODY_RANGE: readonly [Mm, Mm] = [mm(50), mm(3000)];
/** Of what may be taken as well, the least and greatest that anybody can measure: a wrong place is sooner found. Common practice, no source. */
const FURTHER_RANGES: Readonly<Partial<Record<MeasurementKey, readonly [Mm, Mm]>>> = {
	napeToWaist: [mm(200), mm(700)],
	shoulderLength: [mm(50), mm(250)],
	shoulderDrop: [mm(5), mm(150)],
	acrossBack: [mm(150), mm(700)],
	acrossChest: [mm(150), mm(700)],
	scyeDepth: [mm(80), mm(400)],
	upperBust: [mm(400), mm(2200)],
	underBust: [mm(400), mm(2200)],
	upperArm: [mm(120), mm(800)],
	armLength: [mm(250), mm(950)],
	wrist: [mm(80), mm(400)],
	sideWaistToFloor: [mm(400), mm(1500)]
};

/** A middling body, rounded: the sizes of most women's systems agree to a tenth. Common practice, no single source. */
const MIDDLING: Readonly<Record<NeededKey, Mm>> = {
	bust: mm(950),
	waist: mm(780),
	hip: mm(1000),
	neck: mm(370),
	shoulderWidth: mm(370),
	backLength: mm(410),
	waistToHip: mm(210),
	frontLength: mm(440),
	bustHeight: mm(265),
	bustSpan: mm(190)
};
/** Nobody is so many times as large as a middling body in every measurement; the smallest grown body in centimetres, read as inches, is. */
const NOBODY = 1.7;
/** With fewer measurements than these, one that is large may be so. */
const ENOUGH = 3;

/** Throws BadInput at `place` where measurements that are said to be in inches are centimetres, by their sizes. */
export const checkUnit = (measurements: Measurements, unit: Unit, place: string): void => {
	const taken = NEEDED_KEYS.flatMap((of) => {
		const value = measurements[of];
		return value === undefined ? [] : [{ of, value }];
	});
	const [first] = taken;
	if (unit !== 'in' || !first || taken.length < ENOUGH) return;
	if (taken.every(({ of, value }) => value > MIDDLING[of] * NOBODY))
		throw new BadInput(place, message('input', 'notInches', first));
};

const written = z.union([z.number(), z.string()]);
/** A body as a file holds it: `{"name":"Heron","unit":"cm","bust":96,...,"allowances":{"bustEase":4}}`; the unit is cm where none is named. */
export const bodyFileSchema = z.looseObject({
	name: z.optional(z.string().check(z.maxLength(200))),
	unit: z._default(z.enum(['cm', 'mm', 'in']), 'cm'),
	allowances: z._default(z.record(z.string(), written), {}),
	readings: z.optional(z.record(z.string(), z.array(written))),
	supposed: z.optional(z.record(z.string(), z.enum(SUPPOSED)))
});

const NOTES = new Set(['note', 'about', 'sides', 'remarks', 'survey']);

/** In a file the reader has to find the value again; at a field they see what they wrote. */
const seenAt = (value: unknown, place: string): string | undefined =>
	place === '' ? undefined : shown(value);

/** Reads one measurement as a person or a file wrote it. Throws BadInput, naming `place`, the rule in `unit` and the value; `place` is empty for a field that stands before the reader. */
export const readMeasurement = (key: MeasurementKey, value: unknown, unit: Unit, place = ''): Mm => {
	const length = readLength(value, unit, `${place}${key}`);
	const range = FURTHER_RANGES[key] ?? BODY_RANGE;
	const [least, most] = range;
	if (length >= least && length <= most) return length;
	const seen = seenAt(value, place);
	throw new BadInput(place + key, message('input', 'outside', { of: key, range, value: length, unit, seen }));
};

/** Reads a chosen length as written, within its range. Throws BadInput. */
export const readLengthAllowance = (
	allowance: LengthAllowance,
	value: unknown,
	unit: Unit,
	place = ''
): Mm => {
	const length = readLength(value, unit, place + allowance.key);
	return checkAllowance(allowance, length, place, unit, seenAt(value, place));
};

/** Reads one chosen allowance as written: a length within its range, or the name of a value. Throws BadInput. */
export const readAllowance = (
	key: string,
	value: unknown,
	unit: Unit,
	known: readonly Allowance[] = BLOCK_ALLOWANCES,
	place = ''
): number => {
	const allowance = known.find((each) => each.key === key);
	const keys = known.map((each) => each.key);
	if (!allowance) throw new BadInput(place + key, unknownHere('allowance', key, keys));
	return isChoice(allowance)
		? namedChoice(allowance, typeof value === 'string' ? value.trim() : shown(value), place)
		: readLengthAllowance(allowance, value, unit, place);
};

/** The measurement that a file names as `key`. Throws BadInput where there is none. */
const checkKey = (now: string, key: string, place: string): MeasurementKey => {
	if (!isMeasurementKey(now))
		throw new BadInput(place + key, unknownHere('measurement', key, MEASUREMENT_KEYS));
	return now;
};

/** What a file says of some measurements, each read by its key. Throws BadInput for a name that no measurement has. */
const byMeasurement = <T, R>(
	said: Readonly<Record<string, T>>,
	place: string,
	read: (key: MeasurementKey, each: T) => R
): Partial<Record<MeasurementKey, R>> =>
	Object.fromEntries(Object.entries(said).map(([key, each]) => [key, read(checkKey(key, key, place), each)]));

/**
 * Reads a body from parsed JSON. `place` begins every error ("heron.json: "), `fallbackName` names a
 * body that does not name itself, `known` are the allowances that may be chosen. Throws BadInput.
 */
export const readBody = (
	input: unknown,
	place = '',
	fallbackName = 'body',
	known: readonly Allowance[] = BLOCK_ALLOWANCES
): Body => {
	const { name, unit, allowances, readings, supposed, ...rest } = parsed(
		bodyFileSchema,
		input,
		place,
		'body'
	);
	const measurements: Partial<Record<MeasurementKey, Mm>> = {};
	for (const [key, value] of Object.entries(rest)) {
		if (NOTES.has(key)) continue;
		const now = measurementNow(key);
		const of = checkKey(now, key, place);
		if (now !== key && now in rest) throw new BadInput(place + key, message('input', 'twoNames', { now }));
		measurements[of] = readMeasurement(of, value, unit, place);
	}
	checkUnit(measurements, unit, `${place}unit`);
	const chosen = Object.entries(allowances).map(
		([key, value]) => [key, readAllowance(key, value, unit, known, `${place}allowances.`)] as const
	);
	return {
		name: name || fallbackName,
		unit,
		measurements,
		allowances: Object.fromEntries(chosen),
		...(readings && {
			readings: byMeasurement(readings, `${place}readings.`, (key, all) =>
				all.map((each) => readMeasurement(key, each, unit, `${place}readings.`))
			)
		}),
		...(supposed && { supposed: byMeasurement(supposed, `${place}supposed.`, (_, how) => how) })
	};
};
