import type { AllowanceValues } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import type { Mm, Unit } from '#shared/units.ts';
import { scopeOf, type Drafted } from './evaluate.ts';
import { lengthOf } from './formula/value.ts';
import type { Speech } from './formula/words.ts';
import { stepNamed, type Method } from './method.ts';
import { explainStep, stepLengths } from './steps/kinds.ts';
import type { Explanation } from './steps/step-rules.ts';

/** What a line is called: "the shoulder", or of another method "the back's shoulder". */
const lineWords = (method: Method, name: string): string => {
	const [alias = '', own] = name.split('.');
	if (own === undefined) return method.steps.find((each) => each.name === name)?.label ?? name;
	const used = method.uses[alias];
	return used ? lineWords(used, own).replace(/^((the|an?) )?/, `the ${alias}'s `) : name;
};

const speechOf = (method: Method, unit: Unit): Speech => ({
	unit,
	allowances: 'named',
	allowanceWords: (key) => method.allowances.find((each) => each.key === key)?.words ?? key,
	lineWords: (name) => lineWords(method, name)
});

/**
 * The rule of one step in words, with its arithmetic for this body: "half the back width + 3 =
 * 19.2 + 3 = 22.2 cm". `draft` holds the earlier points that the rule leans on; lengths are written
 * in `unit`.
 */
export const explain = (
	method: Method,
	stepName: string,
	body: Body,
	draft: Drafted,
	unit: Unit,
	chosen: AllowanceValues = {}
): Explanation =>
	explainStep(stepNamed(method, stepName), scopeOf(method, body, draft, chosen), speechOf(method, unit));

/** A length that a rule starts from, in words. */
export interface GivenLength {
	readonly words: string;
	readonly length: Mm;
}

/**
 * The drawn lengths that a step's formulas name: "the back's shoulder", "O to N". With the body's
 * measurements and the allowances they are all that a learner needs to work the step. Each is given once.
 */
export const givenLengths = (
	method: Method,
	stepName: string,
	body: Body,
	draft: Drafted,
	chosen: AllowanceValues = {}
): readonly GivenLength[] => {
	const scope = scopeOf(method, body, draft, chosen);
	const lengths = stepLengths(stepNamed(method, stepName)).map((formula) => ({
		words: formula.kind === 'length' ? lineWords(method, formula.line) : `${formula.from} to ${formula.to}`,
		length: lengthOf(formula, scope)
	}));
	// A formula may name the same line twice; a learner needs it once.
	return lengths.filter(({ words }, i) => lengths.findIndex((each) => each.words === words) === i);
};
