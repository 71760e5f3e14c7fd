import type { Body } from '#shared/body.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { At, Typed } from './desk.ts';
import type { Answer } from './heron.ts';

/** Each handle of a curve as it is typed: how far across and down it lies from its own end. */
const offsetsOf = (path: Path): readonly At[] =>
	path.flatMap((segment) => {
		if (segment.kind !== 'cubic') return [];
		const { from, leaving, arriving, to } = segment;
		const offset = (end: SheetPoint, handle: SheetPoint): At => [handle.x - end.x, handle.y - end.y];
		return [offset(from, leaving), offset(to, arriving)];
	});

/** What is typed for a step that is worked rightly; undefined for one that this draft does not have. */
export const typedFor = (step: Step, { points, lines }: Draft): Typed | undefined => {
	const [point, line] = [points[step.name], lines[step.name]];
	if (point) return { point: [point.x, point.y] };
	if (!line) return undefined;
	const end = line.path.at(-1)?.to;
	if (step.kind === 'level' && end) return { end: [end.x, end.y], sum: (line.length / 10).toFixed(2) };
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

/** What is put down with the mouse for a step that is worked rightly; undefined for one that this draft does not have. */
export const pointedAt = (step: Step, { points, lines }: Draft): Answer | undefined => {
	const [point, path] = [points[step.name], lines[step.name]?.path];
	if (point) return { point: [point.x, point.y] };
	const last = path?.at(-1);
	if (!path || !last) return undefined;
	if (step.kind === 'level') return { end: [last.to.x, last.to.y], sum: '' };
	if (step.kind === 'straight') {
		const [first, end] = [step.through[0], step.through.at(-1)];
		return first && end ? { ends: [first, end] } : undefined;
	}
	const at = ({ x, y }: SheetPoint): At => [x, y];
	return {
		handles: path.flatMap((each) => (each.kind === 'cubic' ? [at(each.leaving), at(each.arriving)] : []))
	};
};
