import type { Place, Placement } from '#shared/placement.ts';
import { check } from '#checker/check.ts';
import { placementOfPath } from '#checker/placed.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { backBlock, lessonMethod } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { chances } from '../reference/random-bodies.ts';
import { quantile, type Figure } from './figure.ts';

const GOAL_MS = 1;
const GOAL_SHARE = 0.95;
/** Placements tried for each step, a third each: a pencil's width off, clearly off, anywhere. */
const PLACEMENTS = 150;
const STRAYS_MM = [1, 25, 400];
/** Checks left out at the start, while the machine code is still being made. */
const WARM_UP = 2000;

const chance = chances(4180);
const strayed = ([x, y]: Place, by: number): Place => [x + (chance() - 0.5) * by, y + (chance() - 0.5) * by];

/** The right placement of a step with every place of it moved by chance. */
const placementNear = (draft: Draft, step: string, by: number): Placement => {
	const point = draft.points[step];
	if (point) return { kind: 'point', at: strayed([point.x, point.y], by) };
	const line = draft.lines[step];
	if (!line) throw new Error(`nothing is drafted as ${step}`);
	const { segments } = placementOfPath(line.path);
	// Each piece begins where the one before it ended: a line with a gap would not be judged at all.
	let from = strayed(segments[0]?.from ?? [0, 0], by);
	const drawn = segments.map((segment) => {
		const ends = { from, to: strayed(segment.to, by) };
		from = ends.to;
		if (!('leaving' in segment)) return ends;
		return { ...ends, leaving: strayed(segment.leaving, by), arriving: strayed(segment.arriving, by) };
	});
	return { kind: 'line', segments: drawn };
};

interface Case {
	readonly method: Method;
	readonly step: string;
	readonly draft: Draft;
	readonly placement: Placement;
}

const casesOf = (method: Method): readonly Case[] =>
	DEMO_BODIES.flatMap(({ body }) => {
		const draft = draftOf(method, body);
		return method.steps.flatMap(({ name }) =>
			Array.from({ length: PLACEMENTS }, (_, i): Case => {
				const by = STRAYS_MM[i % STRAYS_MM.length] ?? 0;
				return { method, step: name, draft, placement: placementNear(draft, name, by) };
			})
		);
	});

const shuffled = (cases: readonly Case[]): readonly Case[] =>
	cases
		.map((each) => ({ each, order: chance() }))
		.sort((a, b) => a.order - b.order)
		.map(({ each }) => each);

/** How long one step's check takes, over all steps of all lessons, the demo bodies and random placements. */
export const checkingFigures = (): readonly Figure[] => {
	const cases = shuffled([backBlock(), lessonMethod('10-the-sheet')].flatMap(casesOf));
	const times = cases.map(({ method, step, draft, placement }) => {
		const start = performance.now();
		const { answer } = check(method, step, draft, placement);
		const took = performance.now() - start;
		if (answer !== 'right' && answer !== 'wrong') throw new Error(`${step} was answered "${answer}"`);
		return { took, step };
	});
	const warm = times.slice(WARM_UP).map(({ took }) => took);
	const share = warm.filter((took) => took < GOAL_MS).length / warm.length;
	const ms = (part: number): string => quantile(warm, part).toFixed(3);
	return [
		{
			name: "a step's check",
			figure: `${(share * 100).toFixed(1)} % under ${GOAL_MS} ms (half under ${ms(0.5)}, 95 % under ${ms(0.95)}, longest ${ms(1)} ms; ${warm.length} checks)`,
			goal: `${GOAL_SHARE * 100} % under ${GOAL_MS} ms`,
			met: share >= GOAL_SHARE
		}
	];
};
