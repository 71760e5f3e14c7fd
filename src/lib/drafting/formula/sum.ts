import { BadInput } from '#shared/bad-input.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { MM_PER, mm, printLength, spellFractions, type Mm, type Unit, UNIT_WORDS } from '#shared/units.ts';
import type { Formula, Sign } from './formula.ts';
import { numberOf, type Scope } from './value.ts';

/** A sum as a drafter types it, such as `38.4/2+3`: its tree of plain numbers, and its value. */
export interface TypedSum {
	readonly formula: Formula;
	readonly value: Mm;
}

const nothingNamed = (): never => {
	throw new Error('a typed sum names nothing');
};
export const NUMBERS_ONLY: Scope = {
	measurement: nothingNamed,
	allowance: nothingNamed,
	share: nothingNamed,
	point: nothingNamed,
	line: nothingNamed,
	has: () => false
};

const refused = (rule: Message): never => {
	throw new BadInput('sum', rule);
};

/** A piece of a typed sum: `text` is what was written, for whoever has to be told of it. */
type Token =
	| { readonly kind: 'number'; readonly text: string; readonly value: number }
	| { readonly kind: 'sign'; readonly text: string; readonly sign: Sign }
	| { readonly kind: 'unit'; readonly text: string; readonly unit: Unit }
	| { readonly kind: 'open' | 'close'; readonly text: string };

const SIGN_OF: Readonly<Record<string, Sign>> = {
	'+': '+',
	'-': '-',
	'−': '-',
	'–': '-',
	'*': '*',
	'×': '*',
	'·': '*',
	x: '*',
	'/': '/',
	'÷': '/',
	':': '/'
};
const numberToken = (text: string): Token => {
	if (/^(\d+([.,]\d*)?|[.,]\d+)$/.test(text))
		return { kind: 'number', text, value: Number(text.replace(',', '.')) };
	return refused(message('input', 'sumNumber', { text }));
};

const tokenOf = (text: string): Token => {
	const known = text.toLowerCase();
	const [sign, unit] = [SIGN_OF[known], UNIT_WORDS[known]];
	if (sign) return { kind: 'sign', text, sign };
	if (unit) return { kind: 'unit', text, unit };
	if (/^[\d.,]/.test(text)) return numberToken(text);
	if (text === '(' || text === ')') return { kind: text === '(' ? 'open' : 'close', text };
	if (/^\p{L}/u.test(text)) return refused(message('input', 'sumWord', { written: text }));
	return refused(message('input', 'sumSign', { text }));
};

const TOKEN = /[\d.,]+|\p{L}[\p{L}\d_]*|''|\S/gu;
/** `2x3`: letters are words, but an x between numbers is a sign. */
const CROSS = /(?<=[\d.,)\s])x(?=[\d.,(\s])/gi;

const tokensOf = (text: string): readonly Token[] =>
	[...spellFractions(text).replace(CROSS, '×').matchAll(TOKEN)].map(([piece]) => tokenOf(piece));

const operation = (sign: Sign, left: Formula, right: Formula): Formula => ({
	kind: 'operation',
	sign,
	left,
	right
});
const number = (value: number): Formula => ({ kind: 'number', value });
const isWhole = (token: Token | undefined): token is Extract<Token, { kind: 'number' }> =>
	token?.kind === 'number' && Number.isInteger(token.value);

/**
 * Reads the pieces of a sum from left to right. A unit belongs to all that is multiplied and divided
 * before it, so that `38.4/2 cm` is half of 38.4 cm.
 */
class SumReader {
	#next = 0;
	readonly #tokens: readonly Token[];
	readonly #unit: Unit;

	constructor(tokens: readonly Token[], unit: Unit) {
		this.#tokens = tokens;
		this.#unit = unit;
	}

	read(): Formula {
		const sum = this.#sum();
		return this.#tokens[this.#next] ? this.#stray() : sum;
	}

	/** The sum is at its end, but something follows it. */
	#stray(): never {
		const [last, token] = [this.#tokens[this.#next - 1], this.#tokens[this.#next]];
		if (token?.kind === 'close') return refused(message('input', 'sumClosed'));
		return refused(message('input', 'sumBetween', { before: last?.text ?? '', after: token?.text ?? '' }));
	}

	#sum(): Formula {
		let left = this.#product();
		for (let sign = this.#sign('+', '-'); sign; sign = this.#sign('+', '-'))
			left = operation(sign, left, this.#product());
		return left;
	}

	#product(): Formula {
		let left = this.#factor();
		for (;;) {
			const token = this.#tokens[this.#next];
			if (token?.kind === 'unit' && this.#tokens[this.#next - 1]?.kind !== 'unit') {
				this.#next += 1;
				const factor = MM_PER[token.unit] / MM_PER[this.#unit];
				if (factor !== 1) left = operation('*', left, number(factor));
				continue;
			}
			const sign = this.#sign('*', '/');
			if (!sign) return left;
			left = operation(sign, left, this.#factor());
		}
	}

	#factor(): Formula {
		const sign = this.#sign('+', '-');
		if (sign) return sign === '+' ? this.#factor() : { kind: 'negative', of: this.#factor() };
		const token = this.#tokens[this.#next];
		if (token?.kind === 'number') return this.#number(token.value);
		if (token?.kind !== 'open') return this.#missing(token);
		this.#next += 1;
		const inside = this.#sum();
		const end = this.#tokens[this.#next];
		if (end?.kind !== 'close') return end ? this.#stray() : refused(message('input', 'sumOpened'));
		this.#next += 1;
		return inside;
	}

	/** A number, or a whole one with a fraction after it as a tape shows them: 37 3/4. In 1/2 3/4 nobody can tell. */
	#number(value: number): Formula {
		const [whole, top, stroke, bottom] = this.#tokens.slice(this.#next, this.#next + 4);
		const divides = this.#tokens[this.#next - 1]?.text === '/';
		if (!divides && isWhole(whole) && isWhole(top) && stroke?.text === '/' && isWhole(bottom)) {
			this.#next += 4;
			return operation('+', number(value), operation('/', number(top.value), number(bottom.value)));
		}
		this.#next += 1;
		return number(value);
	}

	#missing(token: Token | undefined): never {
		const before = this.#tokens[this.#next - 1];
		return refused(
			before
				? message('input', 'sumMissingAfter', { text: before.text })
				: message('input', 'sumMissingBefore', { text: token?.text ?? '' })
		);
	}

	#sign(...wanted: readonly Sign[]): Sign | undefined {
		const token = this.#tokens[this.#next];
		if (token?.kind !== 'sign' || !wanted.includes(token.sign)) return undefined;
		this.#next += 1;
		return token.sign;
	}
}

/** A typed entry is kept with its placement, and no longer one is. */
const LONGEST = 100;

/**
 * Reads a number or a sum that a learner typed; bare numbers are in `unit`. Throws BadInput, whose
 * rule says in plain words what could not be read.
 */
export const readSum = (text: string, unit: Unit): TypedSum => {
	if (text.length > LONGEST) refused(message('input', 'sumTooLong', { most: LONGEST }));
	const tokens = tokensOf(text);
	if (tokens.length === 0) refused(message('input', 'sumEmpty'));
	const formula = new SumReader(tokens, unit).read();
	const value = numberOf(formula, NUMBERS_ONLY);
	if (!Number.isFinite(value)) refused(message('input', 'sumByNothing', { text: text.trim() }));
	return { formula, value: mm(value * MM_PER[unit]) };
};

/** Nothing is drafted further off than this: five metres. */
const FURTHEST = mm(5000);

/**
 * Reads a typed distance that is to be laid off on the sheet: as readSum, and refused too where it is
 * further than any draft goes. Throws BadInput.
 */
export const readDistance = (text: string, unit: Unit): TypedSum => {
	const sum = readSum(text, unit);
	const size = Math.abs(sum.value);
	if (size <= FURTHEST) return sum;
	const bare = size / MM_PER[unit] <= FURTHEST && !tokensOf(text).some(({ kind }) => kind === 'unit');
	return refused(message('input', 'tooFar', { length: mm(size), inMm: bare && unit !== 'mm' }));
};

/** Whether something is added or taken away outside of brackets: a unit at the end would belong to the last part only. */
const isSum = (tokens: readonly Token[]): boolean =>
	tokens.some((token, i) => {
		if (i === 0 || token.kind !== 'sign' || (token.sign !== '+' && token.sign !== '-')) return false;
		const before = tokens.slice(0, i);
		const opened = before.filter(({ kind }) => kind === 'open').length;
		return opened === before.filter(({ kind }) => kind === 'close').length;
	});
const isBare = ({ kind }: Token): boolean => kind !== 'unit';
/** Two readings nearer than this are one: floating-point noise. */
const NOISE_MM = 1e-6;
/** Decimals of such a length: finer than any pencil. */
const DECIMALS = 6;

/** A length in the unit it was typed in, where that can print it as it is; else in millimetres. */
const written = (length: Mm, unit: Unit): string => {
	const printed = printLength(length, unit);
	const same = Math.abs(readSum(printed, unit).value - length) < NOISE_MM;
	return same ? printed : `${Number(length.toFixed(DECIMALS))} mm`;
};

/**
 * What was typed in `unit`, for a field that now counts in another: numbers without a unit take theirs
 * with them, `20.5` as `20.5 cm` and `38.4/2+3` as `(38.4/2+3) cm`. What cannot be read stays as it is.
 */
export const withUnit = (text: string, unit: Unit): string => {
	const valueIn = (each: Unit): number => readSum(text, each).value;
	try {
		// What comes to the same in every unit names its units already, or is nothing.
		if (Math.abs(valueIn('cm') - valueIn('in')) < NOISE_MM) return text;
		if (!tokensOf(text).every(isBare)) return written(readSum(text, unit).value, unit);
		return isSum(tokensOf(text)) ? `(${text.trim()}) ${unit}` : `${text.trim()} ${unit}`;
	} catch (error) {
		if (error instanceof BadInput) return text;
		throw error;
	}
};
