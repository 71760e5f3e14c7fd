import { depends, type ComparisonRule } from '#drafting/conditions.ts';
import { scopeOf, type Draft } from '#drafting/evaluate.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import { isBorrowed } from '#drafting/names.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { stepAnswer, stepPasses } from '#drafting/steps/kinds.ts';
import type { Body } from '#shared/body.ts';
import type { LineName } from '#shared/speech/en/practice.ts';
import { mm } from '#shared/units.ts';
import type { Seam } from './exercise.ts';

/** Two edges that a method compares: the lines of its own, and those of a draft that it uses. */
export interface SeamPair {
	readonly name: string;
	readonly own: readonly string[];
	readonly borrowed: readonly string[];
	/** The points of the last own line, which is straight: the last of them can be moved along it. */
	readonly last: readonly string[];
}

interface SignedLine {
	readonly line: string;
	readonly added: boolean;
}

/** A formula that adds lengths of lines and takes others off, as those lines; undefined where it is anything else. */
const signedLines = (formula: Formula, added = true): readonly SignedLine[] | undefined => {
	if (formula.kind === 'length') return [{ line: formula.line, added }];
	if (formula.kind !== 'operation' || (formula.sign !== '+' && formula.sign !== '-')) return undefined;
	const left = signedLines(formula.left, added);
	const right = signedLines(formula.right, formula.sign === '+' ? added : !added);
	return left && right && [...left, ...right];
};

/**
 * The two edges of a comparison, where it compares own lines with borrowed ones and the last own line is
 * straight, so that its end can be moved along it without bending anything.
 */
const pairOf = (method: Method, { name, difference }: ComparisonRule): SeamPair | undefined => {
	const lines = signedLines(difference) ?? [];
	const own = lines.filter(({ line, added }) => added && !isBorrowed(line)).map(({ line }) => line);
	const borrowed = lines.filter(({ line, added }) => !added && isBorrowed(line)).map(({ line }) => line);
	const last = method.steps.find((step) => step.name === own.at(-1));
	const isStraight = last !== undefined && stepAnswer(last).put !== 'handles' && stepPasses(last).length > 0;
	if (!isStraight || borrowed.length === 0 || own.length + borrowed.length < lines.length) return undefined;
	return { name, own, borrowed, last: stepPasses(last) };
};

/** The names of the comparisons whose seams can be trued. */
export const seamNames = (method: Method): readonly string[] => [
	...new Set(method.comparisons.flatMap((rule) => pairOf(method, rule)?.name ?? []))
];

/** The pair of this name that the body's draft has; with a dart a side seam has other pieces than without. */
export const seamPair = (method: Method, name: string, body: Body, draft: Draft): SeamPair | undefined => {
	const scope = scopeOf(method, body, draft);
	const rule = method.comparisons.find((each) => each.name === name && depends(each, scope));
	return rule && pairOf(method, rule);
};

/** What a line is called, and the draft that it is of where that is another one. */
const lineName = (method: Method, line: string): LineName => {
	const [alias = '', own] = line.split('.');
	const used = own === undefined ? undefined : method.uses[alias];
	const { label: noun } = stepNamed(used ?? method, own ?? line);
	return used ? { noun, of: used.called } : { noun };
};

/** A seam of the draft as it is drawn, in its pieces. */
export const drawnSeam = (method: Method, draft: Draft, lines: readonly string[]): Seam => {
	const parts = lines.map((line) => {
		const [alias = '', own] = line.split('.');
		const drawn = own === undefined ? draft.lines[line] : draft.uses[alias]?.lines[own];
		if (!drawn) throw new Error(`the draft of ${method.id} has no line "${line}"`);
		return { ...lineName(method, line), path: drawn.path, length: drawn.length };
	});
	return { parts, length: mm(parts.reduce((sum, { length }) => sum + length, 0)) };
};

/** What a seam's lines are called. */
export const linesOf = ({ parts }: Seam): readonly LineName[] =>
	parts.map(({ noun, of }) => (of ? { noun, of } : { noun }));
