import { the } from '#shared/speech/en/grammar.ts';
import { NUMBER_TOLERANCE } from '#shared/tolerances.ts';
import { z } from '#shared/shape.ts';
import { BadInput, ruleWords } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { mm, type Mm, type Unit } from '#shared/units.ts';
import { NO_DIAGNOSIS, type Diagnosis, type Misstep } from '#checker/missteps/misstep.ts';
import { smallWords } from '#checker/words.ts';
import { scopeOf } from '#drafting/evaluate.ts';
import { explain, givenLengths } from '#drafting/explain.ts';
import { readSum } from '#drafting/formula/sum.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { workStep } from '#drafting/steps/kinds.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { pointSteps } from '../draft-so-far.ts';
import { ruleOf } from '../rule.ts';
import { tellingBody } from '../telling.ts';
import type { ExerciseRules, Judgement, WorkNumber } from './exercise.ts';
import { judgedParts, notValid, unfinished } from './judgements.ts';
import { among, diagnosed, diagnosisSentences, noteOf } from './slips.ts';

const answerSchema = z.object({
	typed: z.string().check(z.maxLength(100)),
	unit: z.enum(['mm', 'cm', 'in'])
});

/** A step that lays off one length. */
type Measured = StepOf<'mark'> | StepOf<'along'>;

const measuredStep = (method: Method, name: string): Measured => {
	const step = stepNamed(method, name);
	if (step.kind === 'mark' || step.kind === 'along') return step;
	throw new Error(`${name} of ${method.id} lays off no length`);
};

/** Missteps in working a number. Those of the way and of the start have no say in it. */
const isOfNumber = ({ note }: Misstep): boolean =>
	/^(fraction|allowance|measurement|distance|unit|decimal|tape|digits)\b/.test(note);

/** What probably went wrong with a number, told by the sum and by the place to which it would have led. */
const diagnosedNumber = (
	{ method, body, soFar, step: name }: WorkNumber,
	value: Mm,
	sum: string,
	unit: Unit
): Diagnosis => {
	const step = measuredStep(method, name);
	const work = workStep({ ...step, by: { kind: 'number', value } }, scopeOf(method, body, soFar));
	if (work.kind !== 'point') return NO_DIAGNOSIS;
	const at = [work.point.x, work.point.y];
	const typed =
		step.kind === 'mark' ? { typed: { form: 'distance', sum, from: step.from, go: step.go, unit } } : {};
	return among(diagnosed(method, name, body, soFar, { kind: 'point', at, ...typed }), isOfNumber);
};

const judgeNumber = (exercise: WorkNumber, typed: string, typedUnit: Unit, unit: Unit): Judgement => {
	const { value } = readSum(typed, typedUnit);
	const over = mm(value - exercise.right);
	if (Math.abs(over) <= NUMBER_TOLERANCE * (1 + exercise.givens.length))
		return judgedParts([{ part: 'number', answer: 'right' }], 'number', 'That is the number.');
	const diagnosis = diagnosedNumber(exercise, value, typed, typedUnit);
	const way = over > 0 ? 'too much' : 'too little';
	return judgedParts(
		[{ part: 'number', answer: 'wrong' }],
		noteOf(diagnosis, 'number'),
		'That is not the number yet.',
		[`It is ${smallWords(mm(Math.abs(over)), unit)} ${way}.`, ...diagnosisSentences(diagnosis)]
	);
};

const judge = (exercise: WorkNumber, answer: unknown, unit: Unit): Judgement => {
	const parsed = answerSchema.safeParse(answer);
	if (!parsed.success) return notValid('write a number, or a sum such as 38.4/2+3');
	const { typed, unit: typedUnit } = parsed.data;
	if (typed.trim() === '')
		return unfinished('No number is written yet.', [{ part: 'number', answer: 'unfinished' }]);
	try {
		return judgeNumber(exercise, typed, typedUnit, unit);
	} catch (error) {
		if (error instanceof BadInput) return notValid(ruleWords(error, englishIn('cm')));
		throw error;
	}
};

/** Work out the number of a step before its point is placed. */
export const workNumber: ExerciseRules<'work-number'> = {
	asksFor: (method) =>
		pointSteps(method).flatMap(({ kind, name }) => (kind === 'mark' || kind === 'along' ? [name] : [])),
	make: (key, method) => {
		const { body, draft, soFar } = tellingBody(key.seed, method, key.step);
		const step = measuredStep(method, key.step);
		const scope = scopeOf(method, body, soFar);
		return {
			kind: 'work-number',
			key,
			rule: ruleOf(step),
			asks: `${explain(method, key.step, body, soFar, englishIn(body.unit)).where} How far is it to ${key.step}, ${the(step.label)}?`,
			method,
			body,
			draft,
			step: key.step,
			soFar,
			givens: givenLengths(method, key.step, body, soFar, englishIn(body.unit)),
			right: lengthOf(step.by, scope)
		};
	},
	judge,
	explain: ({ method, step, body, draft }, unit) => explain(method, step, body, draft, englishIn(unit))
};
