import type { Formula } from '#drafting/formula/formula.ts';
import type { Step, StepOf } from '#drafting/steps/step-rules.ts';

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

const alongWay = ({ on }: StepOf<'along'>): string => {
	if ('line' in on) return `line-${on.from}`;
	return 'as' in on ? 'same-way' : 'toward';
};

/** The name of the rule that a step follows. */
export const ruleOf = (step: Step): string => {
	switch (step.kind) {
		case 'mark':
			return `mark:${step.go}:${formulaName(step.by)}`;
		case 'division':
			return `division:${formulaName(step.at)}`;
		case 'along':
			return `along:${alongWay(step)}:${formulaName(step.by)}`;
		case 'swing':
			return `swing:${step.side}:${formulaName(step.length)}:${formulaName(step.level)}`;
		case 'level':
			return `level:${formulaName(step.reach)}`;
		case 'curve':
			return `curve:${step.rule}`;
		case 'turn':
			return `turn:${step.opening ? formulaName(step.opening) : 'close'}:${formulaName(step.share)}`;
		case 'spread':
		case 'parallel':
			return `${step.kind}:${formulaName(step.by)}`;
		case 'arc':
			return `arc:${formulaName(step.turn)}`;
		case 'until':
			return `until:${formulaName(step.length)}`;
		case 'corner':
		case 'meeting':
		case 'straight':
		case 'mirror':
		case 'section':
		case 'chain':
		case 'traced':
		case 'carried':
			return step.kind;
	}
};

/** The name of the rule that two seams must be of one length; `comparison` is what the method calls them. */
export const seamRule = (comparison: string): string => `true:${comparison}`;
