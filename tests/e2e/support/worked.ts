import type { Body } from '#shared/body.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { At, Typed } from './desk.ts';

/** Each handle of a curve as it is typed: how far across and down it lies from its own end. */
const offsetsOf = (path: Path): readonly At[] =>
	path.flatMap((segment) => {
		if (segment.kind !== 'cubic') return [];
		const { from, leaving, arriving, to } = segment;
		const offset = (end: SheetPoint, handle: SheetPoint): At => [handle.x - end.x, handle.y - end.y];
		return [offset(from, leaving), offset(to, arriving)];
	});

const typedFor = (step: Step, { points, lines }: Draft): Typed | undefined => {
	const [point, line] = [points[step.name], lines[step.name]];
	if (point) return { point: [point.x, point.y] };
	if (!line) return undefined;
	if (step.kind !== 'straight') return { offsets: offsetsOf(line.path) };
	const [first, last] = [step.through[0], step.through.at(-1)];
	return first && last ? { ends: [first, last] } : undefined;
};

/**
 * What a learner types who works every step of a method rightly for a body, in the method's order; steps that
 * this body does not need are left out. Throws where the body cannot be drafted.
 */
export const workedSteps = (method: Method, body: Body): ReadonlyMap<string, Typed> => {
	const evaluation = evaluate(method, body);
	if (evaluation.kind !== 'drafted') throw new Error(`${method.id} is not drafted for ${body.name}`);
	const { draft } = evaluation;
	return new Map(
		method.steps.flatMap((step): (readonly [string, Typed])[] => {
			const typed = isGiven(step) ? undefined : typedFor(step, draft);
			return typed ? [[step.name, typed]] : [];
		})
	);
};
