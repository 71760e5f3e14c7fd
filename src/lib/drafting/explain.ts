import type { AllowanceValues } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Mm } from '#shared/units.ts';
import { scopeOf, type Drafted } from './evaluate.ts';
import { lengthOf } from './formula/value.ts';
import type { Telling } from './formula/words.ts';
import { allowanceOf, nounOf, stepNamed, type Method } from './method.ts';
import { explainStep, stepLengths } from './steps/kinds.ts';
import type { Explanation } from './steps/step-rules.ts';

const tellingOf = (method: Method, speech: Speech): Telling => ({
	speech,
	allowance: (key) => allowanceOf(method, key, speech.words.nouns),
	line: (name) => nounOf(method, name, speech.words.nouns)
});

/**
 * The rule of one step in words, with its arithmetic for this body: "half the shoulder width + 3 =
 * 19.2 + 3 = 22.2 cm". `draft` holds the earlier points that the rule leans on.
 */
export const explain = (
	method: Method,
	stepName: string,
	body: Body,
	draft: Drafted,
	speech: Speech,
	chosen: AllowanceValues = {}
): Explanation =>
	explainStep(stepNamed(method, stepName), scopeOf(method, body, draft, chosen), tellingOf(method, speech));

/** A length that a rule starts from, and what it is called. */
export interface GivenLength {
	readonly noun: Noun;
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
	speech: Speech,
	chosen: AllowanceValues = {}
): readonly GivenLength[] => {
	const scope = scopeOf(method, body, draft, chosen);
	const { nouns } = speech.words;
	const lengths = stepLengths(stepNamed(method, stepName), scope).map((formula) => ({
		noun: formula.kind === 'length' ? nounOf(method, formula.line, nouns) : nouns.fromTo(formula),
		length: lengthOf(formula, scope)
	}));
	// A formula may name the same line twice; a learner needs it once.
	return lengths.filter(({ noun }, i) => lengths.findIndex((each) => each.noun.name === noun.name) === i);
};
