import { readBody, type Body } from '#shared/body.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { surveyFigures } from '../reference/survey-bodies.ts';
import { median, type Figure } from './figure.ts';
import { straightBack } from './straight-back.ts';

/** At most so many times as long as the same block in straight-line code. */
const GOAL = 3;
const ROUNDS = 41;
/** Times that all bodies are drafted in a round: long enough for the clock, short enough to keep a disturbance in one round. */
const REPEATS = 4;

/** Millimetres by which two drafts of one body may differ: the same arithmetic, in another order. */
const SAME = 1e-9;

const numbersIn = (value: unknown): number[] => {
	if (typeof value === 'number') return [value];
	return value && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
};

/** Only equal work is compared: both must give the same points, handles and lengths under the same names. */
const checkSame = (ours: Draft | undefined, theirs: Draft | undefined): void => {
	const sorted = (draft: Draft | undefined): unknown =>
		draft &&
		[draft.points, draft.lines].map((part) => Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)));
	const [a, b] = [numbersIn(sorted(ours)), numbersIn(sorted(theirs))];
	const names = (draft: Draft | undefined): string =>
		draft
			? Object.keys({ ...draft.points, ...draft.lines })
					.sort()
					.join()
			: '';
	const same = a.length === b.length && a.every((value, i) => Math.abs(value - (b[i] ?? NaN)) < SAME);
	if (!same || names(ours) !== names(theirs)) throw new Error('the straight-line back is another block');
};

const timed = (work: (body: Body) => unknown, bodies: readonly Body[]): number => {
	const start = performance.now();
	for (let i = 0; i < REPEATS; i++) for (const body of bodies) work(body);
	return performance.now() - start;
};

/** How many times as long `evaluate` takes for the back block as straight-line code: the median over interleaved rounds. */
export const draftingFigures = (): readonly Figure[] => {
	const method = backBlock();
	const bodies = surveyFigures().map((figure) => readBody({ ...figure }));
	const engine = (body: Body): Draft | undefined => {
		const evaluation = evaluate(method, body);
		return evaluation.kind === 'drafted' ? evaluation.draft : undefined;
	};
	for (const body of bodies) checkSame(engine(body), straightBack(body));
	const rounds = Array.from({ length: ROUNDS }, (_, i) => {
		// Whichever comes first in a round has the colder machine, so they take turns.
		if (i % 2 === 0) return { ours: timed(engine, bodies), plain: timed(straightBack, bodies) };
		const plain = timed(straightBack, bodies);
		return { ours: timed(engine, bodies), plain };
	}).slice(ROUNDS >> 2);
	const ratio = median(rounds.map(({ ours, plain }) => ours / plain));
	const each = (median(rounds.map(({ ours }) => ours)) * 1000) / (bodies.length * REPEATS);
	return [
		{
			name: 'drafting the back block, against straight-line code',
			figure: `${ratio.toFixed(2)} times (${each.toFixed(1)} µs a body)`,
			goal: `at most ${GOAL} times`,
			met: ratio <= GOAL
		}
	];
};
