import {
	inParts,
	MM_PER,
	PRINTED_PARTS,
	printableRange,
	inchNumber,
	mm,
	type Mm,
	type Radians,
	type Unit
} from '../units.ts';
import { LOCALES, type Language } from './language.ts';

/** How much is said of a number that has no unit: three decimals are more than any rule has. */
const DECIMALS = 6;
/** The smallest inch part that is named; anything less is "a hair". */
const HAIR_INCHES: Mm = mm(25.4 / 32);

/** A range whose ends are written so that both lie in it when they are read back. */
export interface SpokenRange {
	readonly least: string;
	readonly most: string;
}

/**
 * Numbers, lengths, lists and plurals as one language writes them, in the unit of whoever reads. Catalogues are
 * made from a voice, so sentences get lengths and lists as data and never as text.
 */
export interface Voice {
	readonly language: Language;
	readonly unit: Unit;
	/** The same voice in another unit. */
	inUnit(unit: Unit): Voice;
	/** A plain number: `1.5`, `1,5`. */
	number(value: number, decimals?: number): string;
	/** A number with exactly so many decimals: `1.50`. */
	fixed(value: number, decimals: number): string;
	/** The number of a length without its unit: `22.2`, `8 3/4`. `parts` of the unit may be finer than the usual. */
	bare(length: Mm, parts?: number): string;
	/** A length as it is read: `22.2 cm`, `8 3/4″`. */
	length(length: Mm, parts?: number): string;
	/** A length in the finest parts that are printed: the steps of a grid in inches go down to `1/64″`. */
	fine(length: Mm): string;
	/** A small difference for the metre-rule or the tape: half millimetres, or a fraction of an inch. */
	slight(length: Mm): string;
	/** A small difference as a verdict says it: whole millimetres from 5 mm on, tenths below; undefined where it is less than a hair. */
	small(length: Mm): string | undefined;
	/** What a picture says of a place: tenths of a millimetre, or the finest parts of an inch that are printed. */
	seen(length: Mm): string;
	/** The ends of a range, rounded inward to what can be printed. */
	range(range: readonly [Mm, Mm]): SpokenRange;
	/** A length that lies outside a range, written so that it is seen to. */
	outside(length: Mm, range: readonly [Mm, Mm]): string;
	/** An angle, without its sign: `12.5°`. */
	degrees(angle: Radians, decimals?: number): string;
	/** "A, B and C". */
	list(items: readonly string[]): string;
	/** "A, B or C". */
	either(items: readonly string[]): string;
	/** The form that a number asks for: `plural(n, { one: '1 point', other: '5 points' })`. */
	plural(count: number, forms: { readonly one: string; readonly other: string }): string;
}

/** The sign that follows a number: ` cm`, ` mm`, `″`. */
const unitSign = (unit: Unit): string => (unit === 'in' ? '″' : ` ${unit}`);

/** The voice of a language, in a unit. */
export const voiceOf = (language: Language, unit: Unit): Voice => {
	const locale = LOCALES[language];
	const formats = new Map<string, Intl.NumberFormat>();
	const format = (least: number, most: number): Intl.NumberFormat => {
		const key = `${least}-${most}`;
		const known = formats.get(key);
		if (known) return known;
		const made = new Intl.NumberFormat(locale, {
			useGrouping: false,
			minimumFractionDigits: least,
			maximumFractionDigits: most
		});
		formats.set(key, made);
		return made;
	};
	const lists = new Intl.ListFormat(locale, { type: 'conjunction' });
	const choices = new Intl.ListFormat(locale, { type: 'disjunction' });
	const plurals = new Intl.PluralRules(locale);
	const number = (value: number, decimals = DECIMALS): string => format(0, decimals).format(value + 0);
	const bareIn = (length: Mm, each: Unit, parts = PRINTED_PARTS[each][0]): string => {
		const count = inParts(length, each, parts);
		return each === 'in' ? inchNumber(count, parts) : number(count / parts);
	};
	const lengthIn = (length: Mm, each: Unit, parts?: number): string =>
		bareIn(length, each, parts) + unitSign(each);
	const length = (each: Mm, parts?: number): string => lengthIn(each, unit, parts);
	const fine = (each: Mm): string => length(each, Math.max(...PRINTED_PARTS[unit]));
	const fixed = (value: number, decimals: number): string => format(decimals, decimals).format(value);
	return {
		language,
		unit,
		inUnit: (other) => voiceOf(language, other),
		number,
		fixed,
		bare: (each, parts) => bareIn(each, unit, parts),
		length,
		fine,
		slight: (each) => (unit === 'in' ? length(each) : lengthIn(mm(Math.round(each * 2) / 2), 'mm')),
		small: (each) => {
			if (unit === 'in') return each < HAIR_INCHES ? undefined : length(each);
			if (each >= 100) return lengthIn(mm(Math.round(each)), 'cm');
			return lengthIn(mm(each >= 5 ? Math.round(each) : Math.round(each * 10) / 10), 'mm');
		},
		seen: (each) => (unit === 'in' ? fine(each) : `${fixed(each, 1)} mm`),
		range: (range) => {
			const [least, most] = printableRange(range, unit);
			return { least: length(least), most: length(most) };
		},
		outside: (each, [least, most]) => {
			const shown = (inParts(each, unit) * MM_PER[unit]) / PRINTED_PARTS[unit][0];
			if (shown < least || shown > most) return length(each);
			return number(each / MM_PER[unit]) + unitSign(unit);
		},
		degrees: (angle, decimals = 1) => `${number((angle * 180) / Math.PI, decimals)}°`,
		list: (items) => lists.format(items),
		either: (items) => choices.format(items),
		plural: (count, forms) => (plurals.select(count) === 'one' ? forms.one : forms.other)
	};
};
