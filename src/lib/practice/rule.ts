import { formulaParts, type Formula } from '#drafting/formula/formula.ts';
import { stepRule } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';

/**
 * A rule is named by what it asks and not by its step: `mark:across:bust/4+bustEase/4` is one rule at the
 * underarm of the back and of the front, so that what was learned on one is known of the other, and a
 * draft's points may be renamed. A rule that is changed gets a new name, and its mastery begins anew:
 * it is then another thing to know.
 */

const isSum = (formula: Formula): boolean =>
	formula.kind === 'operation' && (formula.sign === '+' || formula.sign === '-');

const formulaName = (formula: Formula): string => {
	switch (formula.kind) {
		case 'number':
			return String(formula.value);
		case 'measurement':
		case 'allowance':
		case 'share':
			return formula.key;
		case 'distance':
			return `distance(${formula.from},${formula.to})`;
		case 'length':
			return `length(${formula.line})`;
		case 'measured':
			return `${formula.what}(${[...formula.names, ...formulaParts(formula).map(formulaName)].join(',')})`;
		case 'negative':
			return `-${bracketed(formula.of)}`;
		case 'greater':
		case 'lesser':
			return `${formula.kind}(${formulaName(formula.left)},${formulaName(formula.right)})`;
		case 'choice':
			return `choice(${formulaName(formula.over)},${formulaName(formula.yes)},${formulaName(formula.no)})`;
		case 'operation': {
			const { sign, left, right } = formula;
			const first = sign === '*' || sign === '/' ? bracketed(left) : formulaName(left);
			return first + sign + (right.kind === 'operation' ? `(${formulaName(right)})` : formulaName(right));
		}
	}
};

const bracketed = (formula: Formula): string =>
	isSum(formula) ? `(${formulaName(formula)})` : formulaName(formula);

/** The name of the rule that a step follows. */
export const ruleOf = (step: Step): string =>
	[step.kind, ...stepRule(step).map((part) => (typeof part === 'string' ? part : formulaName(part)))].join(
		':'
	);

/** The name of the rule that two seams must be of one length; `seam` is its name in the garment. */
export const seamRule = (seam: string): string => `true:${seam}`;
