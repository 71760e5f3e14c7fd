import type { AllowanceValues } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import { the } from '#shared/speech/en/grammar.ts';
import { allowanceNoun } from '#shared/speech/en/nouns.ts';
import type { Mm, Unit } from '#shared/units.ts';
import { scopeOf, type Drafted } from './evaluate.ts';
import { lengthOf } from './formula/value.ts';
import type { Speech } from './formula/words.ts';
import { nounOf, stepNamed, type Method } from './method.ts';
import { explainStep, stepLengths } from './steps/kinds.ts';
import type { Explanation } from './steps/step-rules.ts';

const lineWords = (method: Method, name: string): string => the(nounOf(method, name));

const speechOf = (method: Method, unit: Unit): Speech => ({
	unit,
	allowances: 'named',
	allowanceWords: (key) => the(allowanceNoun(method.allowances.find((each) => each.key === key) ?? { key })),
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
