import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { placementOfPath, placeOfPoint } from '#checker/placed.ts';
import { evaluate } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { lessonMethods } from '../../lessons/lesson-files.ts';

/** The methods of the course. */
export const METHODS: readonly Method[] = [...lessonMethods().values()];

/** Every step of a method as the browser keeps it once it is drafted rightly for Heron. */
export const finishedSteps = (method: Method): Readonly<Record<string, unknown>> => {
	const [heron] = DEMO_BODIES;
	const evaluation = heron && evaluate(method, heron.body);
	if (evaluation?.kind !== 'drafted') throw new Error(`${method.id} is not drafted for the first demo body`);
	const { points, lines } = evaluation.draft;
	const right = (placement: unknown) => ({ placement, checked: true });
	return Object.fromEntries([
		...Object.entries(points).map(([name, place]) => [
			name,
			right({ kind: 'point', at: placeOfPoint(place) })
		]),
		...Object.entries(lines).map(([name, { path }]) => [name, right(placementOfPath(path))])
	]) as Readonly<Record<string, unknown>>;
};
