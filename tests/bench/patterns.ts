import { readBody, type Body } from '#shared/body.ts';
import { evaluate, type Evaluation } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { makePattern } from '#garment/pattern.ts';
import { DRESS } from '../reference/dress-pattern.ts';
import { surveyFigures } from '../reference/survey-bodies.ts';
import { median, quantile, type Figure } from './figure.ts';

/** A change must be drawn within a frame of a screen that shows sixty a second. */
const FRAME_MS = 16;
/** The engine's part of it: the rest of the frame draws. */
const ENGINE_MS = 10;
/** All pieces, allowances and seams: at most so many times as long as the drafts alone that they are traced off. */
const GOAL = 5;
const MANY = 1000;

const draftsAlone = (body: Body): void => {
	const known = new Map<Method, Evaluation>();
	for (const method of Object.values(DRESS.uses)) evaluate(method, body, {}, known);
};

const milliseconds = (work: () => unknown): number => {
	const start = performance.now();
	work();
	return performance.now() - start;
};

/** The survey's bodies again and again until there are enough, so that what was learned of one does not help the next. */
const manyBodies = (): readonly Body[] => {
	const bodies = surveyFigures().map((figure) => readBody({ ...figure }));
	return Array.from({ length: MANY }, (_, i) => bodies[i % bodies.length]).filter(
		(body) => body !== undefined
	);
};

/** How long the whole dress takes: for one body, beside its drafts alone and a screen's frame, and for a thousand. */
export const patternFigures = (): readonly Figure[] => {
	const bodies = manyBodies();
	for (const body of bodies.slice(0, 100)) makePattern(DRESS, body);
	// One after the other over all bodies: the drafts of the body before are kept, and would not be worked again.
	const drafts = bodies.map((body) => milliseconds(() => draftsAlone(body)));
	const patterns = bodies.map((body) => milliseconds(() => makePattern(DRESS, body)));
	const ratio = median(patterns.map((pattern, i) => pattern / (drafts[i] ?? NaN)));
	const seconds = patterns.reduce((sum, each) => sum + each, 0) / 1000;
	const slow = quantile(patterns, 0.99);
	return [
		{
			name: 'all pieces of the course dress, against its drafts alone',
			figure: `${ratio.toFixed(2)} times`,
			goal: `at most ${GOAL} times`,
			met: ratio <= GOAL
		},
		{
			name: 'the pattern after a change, ninety-nine bodies in a hundred',
			figure: `${slow.toFixed(1)} ms (median ${median(patterns).toFixed(1)} ms)`,
			goal: `at most ${ENGINE_MS} ms of a frame's ${FRAME_MS}`,
			met: slow <= ENGINE_MS
		},
		{
			name: `patterns of ${MANY} bodies`,
			figure: `${seconds.toFixed(1)} s`,
			goal: `a frame each: ${(MANY * FRAME_MS) / 1000} s`,
			met: seconds * 1000 < MANY * FRAME_MS
		}
	];
};
