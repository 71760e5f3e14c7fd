import type { Tolerances } from '#shared/tolerances.ts';
import { check } from '#checker/check.ts';
import { explain } from '#drafting/explain.ts';
import { stepNamed } from '#drafting/method.ts';
import { pointSteps } from '../draft-so-far.ts';
import { ruleOf } from '../rule.ts';
import { tellingBody } from '../telling.ts';
import type { ExerciseRules, Judged, NextPoint } from './exercise.ts';
import { asVerdict } from './judgements.ts';
import { diagnosed, noteOf } from './slips.ts';

const judge = (
	{ method, step, body, draft, soFar }: NextPoint,
	placement: unknown,
	allowed: Tolerances
): Judged => {
	const verdict = check(method, step, draft, placement, allowed);
	const { answer } = verdict;
	if (answer !== 'right' && answer !== 'wrong') return asVerdict(verdict, step);
	const judged = asVerdict(verdict, step, [{ part: 'place', answer }]);
	if (answer === 'right') return judged;
	const diagnosis = diagnosed(method, step, body, soFar, placement);
	return { ...judged, note: noteOf(diagnosis, 'place'), diagnosis };
};

/** Place the next point of a draft. */
export const nextPoint: ExerciseRules<'next-point'> = {
	asksFor: (method) => pointSteps(method).map(({ name }) => name),
	make: (key, method) => {
		const { body, draft, soFar } = tellingBody(key.seed, method, key.step);
		return {
			kind: 'next-point',
			key,
			rule: ruleOf(stepNamed(method, key.step)),
			method,
			body,
			draft,
			step: key.step,
			soFar
		};
	},
	asks: ({ method, step }, { words }) =>
		words.practice.placeNext({ point: step, noun: stepNamed(method, step).label }),
	judge,
	explain: ({ method, step, body, draft }, speech) => explain(method, step, body, draft, speech)
};
