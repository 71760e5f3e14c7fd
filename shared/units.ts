/**
 * Lengths. Inside the program every length is a branded millimetre; centimetres, inches and
 * fractions exist only at the edge, where a person or a file writes or reads them.
 */

declare const unitOf: unique symbol;
type Branded<Name extends string> = number & { readonly [unitOf]: Name };

/** A length in millimetres. */
export type Mm = Branded<'mm'>;
/** An angle in radians. */
export type Radians = Branded<'rad'>;
/** A length on the screen, in CSS pixels. */
export type Px = Branded<'px'>;

/** Says that a plain number is a length in millimetres. */
export const mm = (value: number): Mm => value as Mm;
/** Says that a plain number is an angle in radians. */
export const radians = (value: number): Radians => value as Radians;
/** Says that a plain number is a screen length in CSS pixels. */
export const px = (value: number): Px => value as Px;

/** The units that a person may write lengths in. */
export type Unit = 'mm' | 'cm' | 'in';

/** Millimetres in one of each unit; the inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
export const MM_PER: Readonly<Record<Unit, number>> = { mm: 1, cm: 10, in: 25.4 };

/** The words and signs by which people write a unit, in small letters. */
export const UNIT_WORDS: Readonly<Record<string, Unit>> = {
	mm: 'mm',
	cm: 'cm',
	in: 'in',
	inch: 'in',
	inches: 'in',
	'"': 'in',
	'″': 'in',
	'”': 'in',
	"''": 'in'
};
const VULGAR: Readonly<Record<string, string>> = {
	'½': '1/2',
	'¼': '1/4',
	'¾': '3/4',
	'⅛': '1/8',
	'⅜': '3/8',
	'⅝': '5/8',
	'⅞': '7/8',
	'⅓': '1/3',
	'⅔': '2/3'
};

/** Rewrites ½ and its kin as ` 1/2`, so that `37½` reads as `37 1/2`. */
export const spellFractions = (text: string): string =>
	text.replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${VULGAR[sign] ?? sign}`);

/**
 * Parts of each unit in which lengths are printed, the usual first: a tenth of a millimetre is the
 * finest that pencil and tape can mean, a sixteenth the finest that most tapes in inches show. The
 * finer ones are for arithmetic that would not add up in the usual ones.
 */
export const PRINTED_PARTS: Readonly<Record<Unit, readonly [number, ...number[]]>> = {
	mm: [10, 100],
	cm: [100, 1000],
	in: [16, 32, 64]
};

/** A length as a whole number of the parts in which it is printed: 22.2 cm is 2220 hundredths. */
export const inParts = (length: Mm, unit: Unit, parts = PRINTED_PARTS[unit][0]): number => {
	const count = Math.round((Math.abs(length) / MM_PER[unit]) * parts);
	return length < 0 && count > 0 ? -count : count;
};

const greatestCommonDivisor = (a: number, b: number): number =>
	b === 0 ? a : greatestCommonDivisor(b, a % b);

/** A whole number of parts of an inch, as a tape says it: `8 3/4`. */
export const inchNumber = (count: number, parts: number): string => {
	const [whole, rest] = [Math.floor(Math.abs(count) / parts), Math.abs(count) % parts];
	const common = greatestCommonDivisor(rest, parts);
	const fraction = rest === 0 ? '' : `${rest / common}/${parts / common}`;
	const sign = count < 0 ? '-' : '';
	return sign + ([whole === 0 && fraction ? '' : String(whole), fraction].filter(Boolean).join(' ') || '0');
};

/**
 * Writes the number of a length without its unit: `22.2` (cm), `222` (mm), `8 3/4` (inches, to a
 * sixteenth). `parts` of the unit may be finer than the usual: see PRINTED_PARTS.
 */
export const printNumber = (length: Mm, unit: Unit, parts = PRINTED_PARTS[unit][0]): string => {
	const count = inParts(length, unit, parts);
	return unit === 'in' ? inchNumber(count, parts) : String(count / parts);
};

/** The sign that follows a number: ` cm`, ` mm`, `″`. */
const unitSign = (unit: Unit): string => (unit === 'in' ? '″' : ` ${unit}`);

/** Writes a length as a person reads it: `22.2 cm`, `222 mm`, `8 3/4″`. */
export const printLength = (length: Mm, unit: Unit, parts = PRINTED_PARTS[unit][0]): string =>
	printNumber(length, unit, parts) + unitSign(unit);

/** Writes a length in the finest parts that are printed: the steps of a grid in inches go down to `1/64″`. */
export const printFine = (length: Mm, unit: Unit): string =>
	printLength(length, unit, Math.max(...PRINTED_PARTS[unit]));

/** Writes a small difference: millimetres for metric readers, a fraction of an inch for the others. */
export const printSmall = (length: Mm, unit: Unit): string =>
	unit === 'in' ? printLength(length, 'in') : `${printNumber(mm(Math.round(length * 2) / 2), 'mm')} mm`;

/** A share of a printed part below which a length stands at the part itself: floating-point noise. */
const NOISE = 1e-6;

/**
 * The least and the greatest length of a range, rounded inward to what can be printed, so that both
 * lie in the range when they are read back: 1 to 6 cm are 7/16 to 2 5/16 inches.
 */
export const printableRange = ([least, most]: readonly [Mm, Mm], unit: Unit): readonly [Mm, Mm] => {
	const part = MM_PER[unit] / PRINTED_PARTS[unit][0];
	return [mm(Math.ceil(least / part - NOISE) * part), mm(Math.floor(most / part + NOISE) * part)];
};

/** Writes a range: `from 7/16″ to 2 5/16″`; every length that it shows lies in it. */
export const printRange = (range: readonly [Mm, Mm], unit: Unit): string => {
	const [least, most] = printableRange(range, unit);
	return `from ${printLength(least, unit)} to ${printLength(most, unit)}`;
};

/**
 * Writes a length that lies outside a range so that it is seen to: in the usual parts, or, where it
 * would then seem to lie within, in as many decimals as it takes.
 */
export const printOutside = (length: Mm, [least, most]: readonly [Mm, Mm], unit: Unit): string => {
	const shown = (inParts(length, unit) * MM_PER[unit]) / PRINTED_PARTS[unit][0];
	if (shown < least || shown > most) return printLength(length, unit);
	return `${Number((length / MM_PER[unit]).toFixed(6))}${unitSign(unit)}`;
};
