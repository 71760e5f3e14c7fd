import { z } from '#shared/shape.ts';
import { message } from '#shared/speech/message.ts';
import { explain } from '#drafting/explain.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { stepNeeds, stepStart } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { distance } from '#geometry/point.ts';
import { FEWEST_STARTS, STARTS_IN_HELP } from '../constants.ts';
import { draftSoFar, pointSteps } from '../draft-so-far.ts';
import { draftedBodies, type DraftedBody } from '../generate-body.ts';
import { ruleOf } from '../rule.ts';
import type { ExerciseKey, ExerciseRules, FindStart, Judged } from './exercise.ts';
import { judgedParts, notValid, unfinished } from './judgements.ts';

const answerSchema = z.object({ point: z.string() });

/** With more points beside the start than these a rule has no one beginning: a fold, or two lines that cross. */
const MOST_BESIDE = 2;

/** Whether a step is measured from a point of its own draft, with enough points beside it to choose from. */
const isAsked = (method: Method, step: Step): boolean => {
	const start = stepStart(step);
	if (stepNeeds(step).filter((name) => name !== start).length > MOST_BESIDE) return false;
	const before = method.steps
		.slice(0, method.steps.indexOf(step))
		.filter((each) => !each.when && !each.unless);
	const points = pointSteps({ ...method, steps: before });
	return points.length >= FEWEST_STARTS && points.some(({ name }) => name === start);
};

/** The first body of a seed that has the step. */
const bodyWith = ({ seed, step }: ExerciseKey, method: Method): DraftedBody => {
	for (const drafted of draftedBodies(seed, method)) if (step in drafted.draft.points) return drafted;
	throw new Error(`no drawn body has a point "${step}" by ${method.id}`);
};

/** The start, what the rule uses besides, and the points that lie nearest to it: as many as the first help names, in the order in which they were drafted. */
const amongPoints = ({ points }: Drafted, start: string, used: readonly string[]): readonly string[] => {
	const from = points[start];
	const near = Object.entries(points)
		.map(([name, at]) => ({ name, away: used.includes(name) ? 0 : from ? distance(from, at) : 0 }))
		.filter(({ name }) => name !== start)
		.sort((a, b) => a.away - b.away)
		.map(({ name }) => name);
	const few = [start, ...near].slice(0, STARTS_IN_HELP);
	return Object.keys(points).filter((name) => few.includes(name));
};

const judge = ({ step, start, used, soFar }: FindStart, answer: unknown): Judged => {
	const parsed = answerSchema.safeParse(answer);
	if (!parsed.success || !Object.hasOwn(soFar.points, parsed.data.point))
		return notValid(message('practice', 'nameStart'));
	const { point } = parsed.data;
	// It belongs to the rule, so it is no mistake; but the tape does not begin there.
	if (point !== start && used.includes(point))
		return unfinished(message('practice', 'usedToo', { point, step }));
	const right = point === start;
	return judgedParts(
		[{ part: 'point', answer: right ? 'right' : 'wrong' }],
		'start',
		message('practice', right ? 'rightStart' : 'wrongStart', { point, step })
	);
};

/** Say from which point a step is measured. */
export const findStart: ExerciseRules<'find-start'> = {
	asksFor: (method) =>
		pointSteps(method)
			.filter((step) => isAsked(method, step))
			.map(({ name }) => name),
	make: (key, method) => {
		const { body, draft } = bodyWith(key, method);
		const step = stepNamed(method, key.step);
		const start = stepStart(step);
		if (start === undefined) throw new Error(`${key.step} of ${method.id} is measured from nowhere`);
		const soFar = draftSoFar(method, draft, key.step);
		return {
			kind: 'find-start',
			key,
			rule: ruleOf(step),
			method,
			body,
			draft,
			step: key.step,
			soFar,
			start,
			used: stepNeeds(step),
			among: amongPoints(soFar, start, stepNeeds(step))
		};
	},
	asks: ({ method, step }, { words }) =>
		words.practice.askStart({ point: step, noun: stepNamed(method, step).label }),
	judge,
	explain: ({ method, step, body, draft }, speech) => explain(method, step, body, draft, speech)
};
