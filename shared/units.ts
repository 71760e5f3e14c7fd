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

/** A written length that could not be read: `seen` is what was written, `rule` what would have been accepted. */
export class UnreadableLength extends Error {
	constructor(
		readonly seen: string,
		readonly rule: string
	) {
		super(`"${seen}" is not a length: ${rule}`);
		this.name = 'UnreadableLength';
	}
}

const RULE = 'write a number such as 96, 96.5, 96,5 or 37 3/4, with cm, mm or " after it if you like';
const UNIT_WORDS: Readonly<Record<string, Unit>> = {
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
 * Reads the number part of a written length: `96`, `96.5`, `96,5`, `37 3/4`, `37-3/4`, `3/4`.
 * A comma is a decimal comma. Returns undefined where the text is not such a number.
 */
const readNumber = (text: string): number | undefined => {
	const sign = /^[-−]/.test(text) ? -1 : 1;
	const bare = text.replace(/^[-−+]\s*/, '');
	const mixed = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)$/.exec(bare);
	if (mixed) {
		const [, whole = '0', top = '', bottom = ''] = mixed;
		return Number(bottom) === 0 ? undefined : sign * (Number(whole) + Number(top) / Number(bottom));
	}
	return /^(\d+([.,]\d*)?|[.,]\d+)$/.test(bare) ? sign * Number(bare.replace(',', '.')) : undefined;
};

/**
 * Reads a written length. `unit` is what a bare number is taken to be in; a unit written after the
 * number wins. Throws UnreadableLength, naming what was seen, where it is not a length.
 */
export const parseLength = (text: string, unit: Unit): Mm => {
	const parts = /^(.*?)\s*(mm|cm|inches|inch|in|"|″|”|'')?$/i.exec(spellFractions(text).trim());
	const number = readNumber((parts?.[1] ?? '').trim());
	if (number === undefined || !Number.isFinite(number)) throw new UnreadableLength(text, RULE);
	const written = UNIT_WORDS[(parts?.[2] ?? '').toLowerCase()] ?? unit;
	return mm(number * MM_PER[written]);
};

/** Smallest part of an inch that a tape shows, and so the finest that is printed: a sixteenth. */
const INCH_PARTS = 16;

const greatestCommonDivisor = (a: number, b: number): number =>
	b === 0 ? a : greatestCommonDivisor(b, a % b);

const inchNumber = (inches: number): string => {
	const sixteenths = Math.round(Math.abs(inches) * INCH_PARTS);
	const whole = Math.floor(sixteenths / INCH_PARTS);
	const rest = sixteenths % INCH_PARTS;
	const common = greatestCommonDivisor(rest, INCH_PARTS);
	const fraction = rest === 0 ? '' : `${rest / common}/${INCH_PARTS / common}`;
	const sign = inches < 0 && sixteenths > 0 ? '-' : '';
	return sign + ([whole === 0 && fraction ? '' : String(whole), fraction].filter(Boolean).join(' ') || '0');
};

/** Decimals printed for each unit: a tenth of a millimetre is the finest that pencil and tape can mean. */
const DECIMALS: Readonly<Record<'mm' | 'cm', number>> = { mm: 1, cm: 2 };

/** Writes the number of a length without its unit: `22.2` (cm), `222` (mm), `8 3/4` (inches, to a sixteenth). */
export const printNumber = (length: Mm, unit: Unit): string => {
	if (unit === 'in') return inchNumber(length / MM_PER.in);
	const rounded = Number((length / MM_PER[unit]).toFixed(DECIMALS[unit]));
	return String(rounded === 0 ? 0 : rounded);
};

/** The sign that follows a number: ` cm`, ` mm`, `″`. */
const unitSign = (unit: Unit): string => (unit === 'in' ? '″' : ` ${unit}`);

/** Writes a length as a person reads it: `22.2 cm`, `222 mm`, `8 3/4″`. */
export const printLength = (length: Mm, unit: Unit): string => printNumber(length, unit) + unitSign(unit);

/** Writes a small difference: millimetres for metric readers, a fraction of an inch for the others. */
export const printSmall = (length: Mm, unit: Unit): string =>
	unit === 'in' ? printLength(length, 'in') : `${printNumber(mm(Math.round(length * 2) / 2), 'mm')} mm`;
