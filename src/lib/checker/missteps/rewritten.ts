import { isChoice } from '#shared/allowances.ts';
import type { RewrittenHow } from '#shared/speech/en/missteps.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Method } from '#drafting/method.ts';

/** A formula that was read otherwise in one place, and how. */
interface Rewritten {
	readonly how: RewrittenHow;
	readonly formula: Formula;
}

const isPlain = (formula: Formula): boolean =>
	formula.kind === 'number' ||
	formula.kind === 'share' ||
	(formula.kind === 'operation' && isPlain(formula.left) && isPlain(formula.right));

const otherShares = (key: string, method: Method): readonly Formula[] => {
	const allowance = method.allowances.find((each) => each.key === key);
	return allowance && isChoice(allowance)
		? allowance.choices.map(({ share }) => ({ kind: 'number', value: share }))
		: [];
};

/** What may be read in the place of a formula itself. */
const misread = (formula: Formula, method: Method): readonly Rewritten[] => {
	switch (formula.kind) {
		case 'greater':
		case 'lesser':
			return [formula.left, formula.right].map((one) => ({ how: 'otherOfTwo', formula: one }));
		case 'choice':
			return [formula.yes, formula.no].map((one) => ({ how: 'otherCase', formula: one }));
		case 'share':
			return otherShares(formula.key, method).map((one) => ({ how: 'otherChoice', formula: one }));
		case 'operation': {
			const { sign, left, right } = formula;
			const without = sign === '*' || sign === '/';
			return [
				...(without && isPlain(right) ? [{ how: 'numberForgotten' as const, formula: left }] : []),
				...(sign === '*' && isPlain(left) ? [{ how: 'numberForgotten' as const, formula: right }] : [])
			];
		}
		default:
			return [];
	}
};

const within = (formula: Formula, method: Method): readonly Rewritten[] => {
	const put = (part: Formula, field: string): readonly Rewritten[] =>
		rewritten(part, method).map((each) => ({
			...each,
			formula: { ...formula, [field]: each.formula } as Formula
		}));
	switch (formula.kind) {
		case 'operation':
		case 'greater':
		case 'lesser':
			return [...put(formula.left, 'left'), ...put(formula.right, 'right')];
		case 'choice':
			return [...put(formula.yes, 'yes'), ...put(formula.no, 'no')];
		case 'negative':
			return put(formula.of, 'of');
		default:
			return [];
	}
};

/** Every formula that comes of reading one part of it otherwise. */
export const rewritten = (formula: Formula, method: Method): readonly Rewritten[] => [
	...misread(formula, method),
	...within(formula, method)
];
