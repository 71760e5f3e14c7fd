import jsep from 'jsep';
import { isChoice, type Allowance } from '#shared/allowances.ts';
import { BadInput, cut } from '#shared/bad-input.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { unknownName } from '#shared/reading.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { at } from '#geometry/point.ts';
import { straight } from '#geometry/segment.ts';
import { mm, type Mm } from '#shared/units.ts';
import { numberOf, type Scope } from './value.ts';
import type { Kind } from '#shared/speech/en/input.ts';
import { formulaParts, SIGNS, type Formula, type MeasuredKind, type Sign } from './formula.ts';

/** The names that a formula may use beside the measurements, which are always known. */
export interface KnownNames {
	readonly allowances: readonly string[];
	/** Those of the allowances that are plain numbers. */
	readonly shares?: readonly string[];
	readonly points: readonly string[];
	readonly lines: readonly string[];
	/** Pieces, and their edges by names such as `front.side`, where a garment's formulas may measure them. */
	readonly pieces?: readonly string[];
	readonly edges?: readonly string[];
	/** Formulas by name: the name of one stands for all of it. */
	readonly amounts?: Readonly<Record<string, Formula>>;
}

/** The names of allowances as formulas may use them. */
export const allowanceNames = (
	allowances: readonly Allowance[]
): Required<Pick<KnownNames, 'allowances' | 'shares'>> => ({
	allowances: allowances.map(({ key }) => key),
	shares: allowances.filter(isChoice).map(({ key }) => key)
});

/** The longest formula in signs: longer ones go deeper than they can be worked, and nobody can read them. */
const LONGEST = 400;
/** How much of a formula an error shows. */
const LONGEST_SHOWN = 120;
/** No number of a draft is as large as this, in millimetres: ten kilometres. */
const FURTHEST = 1e7;

/** Numbers like those of a body, no two alike: what is not finite with them divides by nothing, or runs away, whatever the body. */
const trialScope = (): Scope => {
	let count = 0;
	const next = (): Mm => mm(100 + 37.3 * ++count);
	const known = new Map<string, Mm>();
	const value = (key: string): Mm => known.get(key) ?? known.set(key, next()).get(key) ?? next();
	return {
		measurement: value,
		allowance: value,
		share: () => 0.37,
		point: (name) => at(value(name), mm(value(name) ** 2 / 500)),
		line: (name) => [straight(at(mm(0), mm(0)), at(value(name), mm(0)))],
		has: () => true,
		pieces: { width: value, openWidth: value, edge: value }
	};
};

/** A formula's text, where it stands, and the names it may use: what an error needs to be clear. */
interface Source {
	readonly text: string;
	readonly place: string;
	readonly known: KnownNames;
}

/** How many names, or formulas, each function takes at most. */
const FUNCTIONS = {
	distance: 2,
	length: 1,
	rise: 2,
	across: 2,
	angle: 2,
	turn: 2,
	widthAt: 3,
	openWidthAt: 3,
	sewn: 1,
	greater: 2,
	lesser: 2,
	choice: 3
} as const;
/** Those that may be left short: a width at the level of a point. */
const SHORTEST: Partial<Record<keyof typeof FUNCTIONS, number>> = { widthAt: 2, openWidthAt: 2 };
const isSign = (operator: string): operator is Sign => SIGNS.some((sign) => sign === operator);
const isFunction = (name: string): name is keyof typeof FUNCTIONS => Object.hasOwn(FUNCTIONS, name);

/** Parts of a tree carry no position, but the first place where a wrong word stands in the text is one where it is wrong. */
const positionOf = (text: string, word: string): number => {
	const found = new RegExp(`(?<![\\w$])${word.replace(/\W/g, '\\$&')}(?![\\w$])`).exec(text);
	return (found?.index ?? 0) + 1;
};

const fail = ({ text, place }: Source, position: number, slip: Message): never => {
	throw new BadInput(
		place,
		message('reading', 'inFormula', { position, text: cut(text, LONGEST_SHOWN), slip })
	);
};

/** A name, or a name of another method's after its own: `back.shoulder`. */
const nameOf = (node: jsep.Expression, source: Source): string => {
	if (node.type === 'Identifier') return (node as jsep.Identifier).name;
	const { computed, object, property } = node as jsep.MemberExpression;
	return node.type === 'MemberExpression' && !computed && object.type === 'Identifier'
		? `${(object as jsep.Identifier).name}.${(property as jsep.Identifier).name}`
		: fail(source, 1, message('reading', 'drawnNames'));
};

const knownName = (name: string, names: readonly string[], kind: Kind, source: Source): string =>
	names.includes(name) ? name : fail(source, positionOf(source.text, name), unknownName(kind, name, names));

const readCall = (node: jsep.CallExpression, source: Source): Formula => {
	const called = nameOf(node.callee, source);
	if (!isFunction(called)) {
		return fail(
			source,
			positionOf(source.text, called),
			message('reading', 'unknownFunction', { name: called })
		);
	}
	const count = node.arguments.length;
	if (count > FUNCTIONS[called] || count < (SHORTEST[called] ?? FUNCTIONS[called])) {
		return fail(
			source,
			positionOf(source.text, called),
			message('reading', 'takesNames', { name: called, wanted: FUNCTIONS[called], count })
		);
	}
	if (called === 'length' || called === 'distance') return readDrawn(called, node, source);
	if (called === 'greater' || called === 'lesser' || called === 'choice')
		return readChosen(called, node, source);
	return readMeasured(called, node, source);
};

/** What each argument of a measuring function names. */
const MEASURED: Readonly<Record<MeasuredKind, readonly ('point' | 'line' | 'piece' | 'edge')[]>> = {
	rise: ['point', 'point'],
	across: ['point', 'point'],
	angle: ['point', 'point'],
	turn: ['line', 'line'],
	widthAt: ['piece', 'point'],
	openWidthAt: ['piece', 'point'],
	sewn: ['edge']
};

/** Something else that is measured on the draft or on a piece: `rise(A, B)`, `widthAt(front, front.T)`. */
const readMeasured = (what: MeasuredKind, node: jsep.CallExpression, source: Source): Formula => {
	const { points, lines, pieces = [], edges = [] } = source.known;
	const known = { point: points, line: lines, piece: pieces, edge: edges };
	const args = node.arguments;
	const names = MEASURED[what].map((kind, i) => {
		const argument = args[i];
		return knownName(argument ? nameOf(argument, source) : '', known[kind], kind, source);
	});
	const height = args[MEASURED[what].length];
	const above = height && readNode(height, source);
	if (above && powerOf(above, source) !== 1) return fail(source, 1, message('reading', 'notLength'));
	return { kind: 'measured', what, names, ...(above ? { above } : {}) };
};

/** A length that is measured on the draft: `distance(A, B)`, `length(line)`. */
const readDrawn = (called: 'distance' | 'length', node: jsep.CallExpression, source: Source): Formula => {
	const [first = '', second = ''] = node.arguments.map((argument) => nameOf(argument, source));
	if (called === 'length')
		return { kind: 'length', line: knownName(first, source.known.lines, 'line', source) };
	const { points } = source.known;
	return {
		kind: 'distance',
		from: knownName(first, points, 'point', source),
		to: knownName(second, points, 'point', source)
	};
};

/** One of several formulas: `greater(a, b)`, `lesser(a, b)`, `choice(over, yes, no)`. */
const readChosen = (
	called: 'greater' | 'lesser' | 'choice',
	node: jsep.CallExpression,
	source: Source
): Formula => {
	const read = (index: number): Formula => {
		const argument = node.arguments[index];
		return argument
			? readNode(argument, source)
			: fail(source, 1, message('reading', 'lacksPart', { name: called }));
	};
	return called === 'choice'
		? { kind: called, over: read(0), yes: read(1), no: read(2) }
		: { kind: called, left: read(0), right: read(1) };
};

const readName = (name: string, source: Source): Formula => {
	if (name === 'pi') return { kind: 'number', value: Math.PI };
	const key = MEASUREMENT_KEYS.find((each) => each === name);
	if (key) return { kind: 'measurement', key };
	const { allowances, shares = [], amounts = {} } = source.known;
	const amount = Object.hasOwn(amounts, name) ? amounts[name] : undefined;
	if (amount) return amount;
	knownName(name, [...Object.keys(amounts), ...allowances, ...MEASUREMENT_KEYS], 'given', source);
	return { kind: shares.includes(name) ? 'share' : 'allowance', key: name };
};

const readNode = (node: jsep.Expression, source: Source): Formula => {
	switch (node.type) {
		case 'Literal':
			if (typeof node.value === 'number') return { kind: 'number', value: node.value };
			break;
		case 'Identifier':
			return readName((node as jsep.Identifier).name, source);
		case 'CallExpression':
			return readCall(node as jsep.CallExpression, source);
		case 'UnaryExpression': {
			const { operator, argument } = node as jsep.UnaryExpression;
			if (operator === '-') return { kind: 'negative', of: readNode(argument, source) };
			break;
		}
		case 'BinaryExpression': {
			const { operator, left, right } = node as jsep.BinaryExpression;
			if (isSign(operator)) {
				if (operator === '/' && right.type === 'Literal' && right.value === 0) {
					return fail(source, source.text.indexOf('/') + 1, message('reading', 'dividesByNothing'));
				}
				return {
					kind: 'operation',
					sign: operator,
					left: readNode(left, source),
					right: readNode(right, source)
				};
			}
			return fail(
				source,
				source.text.indexOf(operator) + 1,
				message('reading', 'notAllowed', { sign: operator })
			);
		}
	}
	return fail(source, 1, message('reading', 'cannotStand'));
};

/** The power of length that a formula has: 0 a plain number, 1 a length. Adding unlike powers is an error. */
const powerOf = (formula: Formula, source: Source): number => {
	if (formula.kind === 'number') return formula.isLength ? 1 : 0;
	if (formula.kind === 'share') return 0;
	if (formula.kind === 'negative') return powerOf(formula.of, source);
	if (formula.kind === 'measurement' || formula.kind === 'allowance') return 1;
	if (formula.kind === 'distance' || formula.kind === 'length') return 1;
	if (formula.kind === 'measured') return formula.what === 'angle' || formula.what === 'turn' ? 0 : 1;
	const [first, second] =
		formula.kind === 'choice' ? [formula.yes, formula.no] : [formula.left, formula.right];
	const [left, right] = [powerOf(first, source), powerOf(second, source)];
	if (formula.kind !== 'operation' && left !== right)
		return fail(source, 1, message('reading', 'oneSort', { name: formula.kind }));
	if (formula.kind !== 'operation') return left;
	if (formula.sign === '*') return left + right;
	if (formula.sign === '/') return left - right;
	if (left === right) return left;
	return fail(source, 1, message('reading', 'plainNumber'));
};

/** Whether a formula, and whatever it is made of, comes to a number that a draft can have. */
const isSound = (formula: Formula): boolean => {
	const scope = trialScope();
	const isFinitePart = (part: Formula): boolean =>
		Number.isFinite(numberOf(part, scope)) && formulaParts(part).every(isFinitePart);
	return Math.abs(numberOf(formula, scope)) < FURTHEST && isFinitePart(formula);
};

const parsed = (source: Source): jsep.Expression => {
	try {
		return jsep(source.text);
	} catch (error) {
		const { index = 0, description = 'not a formula' } = error as { index?: number; description?: string };
		return fail(source, index + 1, message('reading', 'notFormula', { description }));
	}
};

/**
 * Reads a formula. `place` names file, step and field for errors; `wanted` says whether it must be a
 * length (the usual case) or a plain share such as 1/2. Throws BadInput with the position, and for an
 * unknown name the nearest known one.
 */
export const parseFormula = (
	text: string,
	place: string,
	known: KnownNames,
	wanted: 'length' | 'share' = 'length'
): Formula => {
	const source: Source = { text, place, known };
	if (text.length > LONGEST) return fail(source, LONGEST, message('reading', 'tooLong', { most: LONGEST }));
	const formula = readNode(parsed(source), source);
	if (powerOf(formula, source) !== (wanted === 'length' ? 1 : 0)) {
		return fail(source, 1, message('reading', wanted === 'length' ? 'notLength' : 'notShare'));
	}
	if (!isSound(formula)) return fail(source, 1, message('reading', 'notFinite'));
	return formula;
};
