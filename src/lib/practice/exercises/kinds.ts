import { BadInput } from '#shared/bad-input.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { unknownName } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { TOLERANCES, type Tolerances } from '#shared/tolerances.ts';
import { diagnosisWords } from '#checker/missteps/words.ts';
import { NO_DIAGNOSIS } from '#checker/missteps/misstep.ts';
import { verdictWords, type VerdictWords } from '#checker/words.ts';
import type { Explanation } from '#drafting/steps/step-rules.ts';
import {
	EXERCISE_KINDS,
	type Exercise,
	type ExerciseKey,
	type ExerciseKind,
	type ExerciseRules,
	type Judged,
	type Practised,
	type Said
} from './exercise.ts';
import { findStart } from './find-start.ts';
import { findWrong } from './find-wrong.ts';
import { asVerdict, unfinished } from './judgements.ts';
import { nextPoint } from './next-point.ts';
import { trueSeams } from './true-seams.ts';
import { workNumber } from './work-number.ts';

/** Every kind of exercise: a kind that is named and not here does not compile. */
const KINDS: { readonly [K in ExerciseKind]: ExerciseRules<K> } = {
	'find-start': findStart,
	'next-point': nextPoint,
	'find-wrong': findWrong,
	'work-number': workNumber,
	'true-seams': trueSeams
};

/** The rules of this kind. TypeScript cannot see that an exercise and the entry of its own kind belong together, so that is said here once. */
const rulesOf = (kind: ExerciseKind): ExerciseRules<never> => KINDS[kind] as unknown as ExerciseRules<never>;

/** The kinds of exercise in which a step, or two seams by their name, can be asked. */
export const kindsFor = (method: Practised, step: string): readonly ExerciseKind[] =>
	EXERCISE_KINDS.filter((kind) => KINDS[kind].asksFor(method).includes(step));

/** Everything that can be asked of a method: its points, and its seams. */
export const askable = (method: Practised): readonly string[] => [
	...new Set(EXERCISE_KINDS.flatMap((kind) => KINDS[kind].asksFor(method)))
];

/**
 * The exercise of a key: the same key gives the same exercise. `library` finds methods by their id. Throws BadInput,
 * naming the nearest that there is, where there is no such method or the step cannot be asked in this way.
 */
export const exercise = (key: ExerciseKey, library: (id: string) => Practised | undefined): Exercise => {
	const method = library(key.method);
	if (!method) throw new BadInput('method', unknownName('method', key.method, []));
	const steps = KINDS[key.kind].asksFor(method);
	if (!steps.includes(key.step)) {
		const near = nearestName(key.step, steps);
		throw new BadInput(
			'step',
			message('practice', 'cannotBeAsked', { step: key.step, method: method.id, kind: key.kind, near })
		);
	}
	const { kind, seed, step } = key;
	return rulesOf(kind).make({ kind, seed, method: method.id, step }, method);
};

/** The question of an exercise, without its answer. */
export const asksOf = (exercise: Exercise, speech: Speech): string =>
	rulesOf(exercise.kind).asks(exercise as never, speech);

/** The rule of an exercise in words and numbers: what is shown when it is over, or as a worked example before it. */
export const explanationOf = (exercise: Exercise, speech: Speech): Explanation =>
	rulesOf(exercise.kind).explain(exercise as never, speech);

/**
 * How an answer stands. No answer makes it throw: nothing at all is *unfinished*, what cannot be read is *not-valid*,
 * and a fault of the program's own is *our-fault*; none of these counts against anyone. A place must be within `allowed`.
 */
export const judge = (
	exercise: Exercise,
	answer: unknown,
	allowed: Tolerances = TOLERANCES.normal
): Judged => {
	if (answer === undefined || answer === null) return unfinished(message('practice', 'nothingAnswered'));
	try {
		return rulesOf(exercise.kind).judge(exercise as never, answer, allowed);
	} catch (error) {
		const words = error instanceof Error ? error.message : String(error);
		return asVerdict({ answer: 'our-fault', because: message('verdicts', 'fault', { words }) }, '');
	}
};

/** What a learner reads of an answer. */
export const judgedWords = ({ said, diagnosis = NO_DIAGNOSIS }: Judged, speech: Speech): VerdictWords => {
	const { headline, sentences } = saidWords(said, speech);
	return {
		headline,
		sentences: diagnosis.kind === 'none' ? sentences : [...sentences, diagnosisWords(diagnosis, speech)]
	};
};

const saidWords = (said: Said, speech: Speech): VerdictWords => {
	if ('verdict' in said) return verdictWords(said.verdict, { name: said.name }, speech);
	if ('unusable' in said) {
		return { headline: speech.words.verdicts.notValid, sentences: [`${speech.tell(said.unusable)}.`] };
	}
	return { headline: speech.tell(said.headline), sentences: said.sentences.map((each) => speech.tell(each)) };
};
