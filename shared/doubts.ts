import { MIDDLING, type Measurements } from './body.ts';
import { NEEDED_KEYS, type NeededKey } from './measurements.ts';
import type { Slip } from './speech/en/measurements.ts';
import { mm, type Mm } from './units.ts';

/**
 * From a small child to the largest sizes that are sold: a measurement outside of these is far likelier a slip than a
 * body. It is asked about, and never refused. Common practice, no source.
 */
const PLAIN: Readonly<Record<NeededKey, readonly [Mm, Mm]>> = {
	bust: [mm(450), mm(1900)],
	waist: [mm(400), mm(1900)],
	hip: [mm(450), mm(2000)],
	neck: [mm(200), mm(550)],
	shoulderWidth: [mm(180), mm(650)],
	backLength: [mm(180), mm(600)],
	waistToHip: [mm(70), mm(400)],
	frontLength: [mm(180), mm(650)],
	bustHeight: [mm(80), mm(500)],
	bustSpan: [mm(70), mm(350)]
};

/** What may have happened to a number on its way from the tape, and what makes it right again. Common practice, no source. */
const SLIPS: Readonly<Record<Slip, readonly ((read: Mm) => number)[]>> = {
	point: [(read) => read * 10, (read) => read / 10],
	hundred: [(read) => read + 1000],
	inches: [(read) => read * 2.54],
	centimetres: [(read) => read / 2.54],
	half: [(read) => read * 2],
	twice: [(read) => read / 2]
};

/** A measurement that hardly anybody has, and what may have been read instead. */
export interface Doubt {
	readonly of: NeededKey;
	readonly value: Mm;
	readonly range: readonly [Mm, Mm];
	/** At most two, the likeliest first; none where no slip leads to what the other measurements let expect. */
	readonly slips: readonly { readonly slip: Slip; readonly value: Mm }[];
}

/** A number put right lies within so much of what the other measurements let expect, as a ratio: figures differ by less. */
const NEAR = 1.4;
const OFFERED = 2;

const isPlain = (of: NeededKey, value: Mm): boolean => value >= PLAIN[of][0] && value <= PLAIN[of][1];
const apart = (a: number, b: number): number => Math.abs(Math.log(a / b));

/** What a measurement may be expected to be: a middling body's, made as large as the middle one of the others that are plain. */
const expected = (of: NeededKey, measurements: Measurements): number => {
	const sizes = NEEDED_KEYS.flatMap((key) => {
		const value = key === of ? undefined : measurements[key];
		return value !== undefined && isPlain(key, value) ? [value / MIDDLING[key]] : [];
	}).sort((a, b) => a - b);
	return MIDDLING[of] * (sizes[Math.floor(sizes.length / 2)] ?? 1);
};

/** Asks about a measurement that hardly anybody has; undefined where it was not taken, or is plain. */
export const doubtOf = (of: NeededKey, measurements: Measurements): Doubt | undefined => {
	const value = measurements[of];
	if (value === undefined || isPlain(of, value)) return undefined;
	const usual = expected(of, measurements);
	const slips = (Object.keys(SLIPS) as Slip[])
		.flatMap((slip) => SLIPS[slip].map((right) => ({ slip, value: mm(right(value)) })))
		.filter((each) => isPlain(of, each.value) && apart(each.value, usual) <= Math.log(NEAR))
		.sort((a, b) => apart(a.value, usual) - apart(b.value, usual));
	return { of, value, range: PLAIN[of], slips: slips.slice(0, OFFERED) };
};

/** All that is to be asked about a body's measurements, in the order in which they are taken. */
export const doubtsOf = (measurements: Measurements): readonly Doubt[] =>
	NEEDED_KEYS.flatMap((key) => doubtOf(key, measurements) ?? []);
