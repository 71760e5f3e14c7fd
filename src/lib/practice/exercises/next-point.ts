import { englishIn } from '#shared/speech/english-for-now.ts';
import { the } from '#shared/speech/en/grammar.ts';
import type { Unit } from '#shared/units.ts';
import { NO_DIAGNOSIS } from '#checker/missteps/misstep.ts';
import { check } from '#checker/check.ts';
import { verdictWords } from '#checker/words.ts';
import { explain, givenLengths } from '#drafting/explain.ts';
import { stepNamed } from '#drafting/method.ts';
import { pointSteps } from '../draft-so-far.ts';
import { ruleOf } from '../rule.ts';
import { tellingBody } from '../telling.ts';
import type { ExerciseRules, Judgement, NextPoint } from './exercise.ts';
import { judgedParts, notValid, ourFault, unfinished } from './judgements.ts';
import { diagnosed, diagnosisSentences, noteOf } from './slips.ts';

const judge = (exercise: NextPoint, placement: unknown, unit: Unit): Judgement => {
	const { method, step, body, draft, soFar } = exercise;
	const verdict = check(method, step, draft, placement);
	const { headline, sentences } = verdictWords(verdict, step, unit);
	switch (verdict.answer) {
		case 'unfinished':
			return unfinished(headline, [{ part: 'place', answer: 'unfinished' }]);
		case 'not-valid':
			return notValid(verdict.because);
		case 'our-fault':
			return ourFault(verdict.because);
		case 'right':
		case 'wrong': {
			const { answer } = verdict;
			const wrong = answer === 'wrong';
			const diagnosis = wrong ? diagnosed(method, step, body, soFar, placement) : NO_DIAGNOSIS;
			return judgedParts([{ part: 'place', answer }], noteOf(diagnosis, 'place'), headline, [
				...sentences,
				...diagnosisSentences(diagnosis)
			]);
		}
	}
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
			asks: `Place ${key.step}, ${the(stepNamed(method, key.step).label)}.`,
			method,
			body,
			draft,
			step: key.step,
			soFar,
			givens: givenLengths(method, key.step, body, soFar, englishIn(body.unit))
		};
	},
	judge,
	explain: ({ method, step, body, draft }, unit) => explain(method, step, body, draft, englishIn(unit))
};
