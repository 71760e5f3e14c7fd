import { NUMBER_TOLERANCE } from '#shared/tolerances.ts';
import { z } from '#shared/shape.ts';
import { message } from '#shared/speech/message.ts';
import { mm, type Mm, type Unit } from '#shared/units.ts';
import { NO_DIAGNOSIS, type Diagnosis, type Misstep } from '#checker/missteps/misstep.ts';
import { scopeOf } from '#drafting/evaluate.ts';
import { explain } from '#drafting/explain.ts';
import { readSum } from '#drafting/formula/sum.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { stepNamed } from '#drafting/method.ts';
import { stepLengths, stepNumber, stepRuler, withNumber, workStep } from '#drafting/steps/kinds.ts';
import { pointSteps } from '../draft-so-far.ts';
import { ruleOf } from '../rule.ts';
import { tellingBody } from '../telling.ts';
import type { ExerciseRules, Judged, JudgedPart, WorkNumber } from './exercise.ts';
import { judgedParts, notValid, readable, unfinished } from './judgements.ts';
import { among, diagnosed, noteOf } from './slips.ts';

const answerSchema = z.object({
	typed: z.string().check(z.maxLength(100)),
	unit: z.enum(['mm', 'cm', 'in'])
});

/** Missteps in working a number. Those of the way and of the start have no say in it. */
const isOfNumber = ({ note }: Misstep): boolean =>
	note
		.split('+')
		.every((each) => !/^(start|direction|toward|slope|point|left|squares|halfway|laid-off)\b/.test(each));

/** What probably went wrong with a number, told by the sum and by the place to which it would have led. */
const diagnosedNumber = (
	{ method, body, soFar, step: name }: WorkNumber,
	value: Mm,
	sum: string,
	unit: Unit
): Diagnosis => {
	const step = stepNamed(method, name);
	const work = workStep(withNumber(step, { kind: 'number', value }), scopeOf(method, body, soFar));
	if (work.kind !== 'point') return NO_DIAGNOSIS;
	const at = [work.point.x, work.point.y];
	const { from, go } = stepRuler(step) ?? {};
	const typed = go ? { typed: { form: 'distance', sum, from, go, unit } } : {};
	return among(diagnosed(method, name, body, soFar, { kind: 'point', at, ...typed }), isOfNumber);
};

const part = (answer: JudgedPart['answer']): JudgedPart => ({ part: 'number', answer });

const judgeNumber = (exercise: WorkNumber, typed: string, unit: Unit): Judged => {
	const { value } = readSum(typed, unit);
	const over = mm(value - exercise.right);
	const by = mm(Math.abs(over));
	const { method, step, body, soFar } = exercise;
	const lengths = stepLengths(stepNamed(method, step), scopeOf(method, body, soFar));
	if (by <= NUMBER_TOLERANCE * (1 + lengths.length))
		return judgedParts([part('right')], 'number', message('practice', 'rightNumber'));
	const diagnosis = diagnosedNumber(exercise, value, typed, unit);
	return judgedParts(
		[part('wrong')],
		noteOf(diagnosis, 'number'),
		message('practice', 'wrongNumber'),
		[message('practice', over > 0 ? 'tooMuch' : 'tooLittle', { by })],
		diagnosis
	);
};

const judge = (exercise: WorkNumber, answer: unknown): Judged => {
	const parsed = answerSchema.safeParse(answer);
	if (!parsed.success) return notValid(message('input', 'sumEmpty'));
	const { typed, unit } = parsed.data;
	if (typed.trim() === '') return unfinished(message('practice', 'noNumber'), [part('unfinished')]);
	return readable(() => judgeNumber(exercise, typed, unit));
};

/** Work out the number of a step before its point is placed. */
export const workNumber: ExerciseRules<'work-number'> = {
	asksFor: (method) =>
		pointSteps(method)
			.filter((step) => stepNumber(step))
			.map(({ name }) => name),
	make: (key, method) => {
		const { body, draft, soFar } = tellingBody(key.seed, method, key.step);
		const step = stepNamed(method, key.step);
		const number = stepNumber(step);
		if (!number) throw new Error(`${key.step} of ${method.id} lays off no length`);
		return {
			kind: 'work-number',
			key,
			rule: ruleOf(step),
			method,
			body,
			draft,
			step: key.step,
			soFar,
			right: lengthOf(number, scopeOf(method, body, soFar))
		};
	},
	asks: ({ method, step, body, soFar }, speech) =>
		speech.words.practice.askNumber({
			where: explain(method, step, body, soFar, speech).where,
			point: step,
			noun: stepNamed(method, step).label
		}),
	judge,
	explain: ({ method, step, body, draft }, speech) => explain(method, step, body, draft, speech)
};
