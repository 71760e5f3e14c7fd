import type { Body } from '#shared/body.ts';
import { pathLength } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { brokenRules, scopeOf, type DraftLine, type Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isDrafted, workStep } from '#drafting/steps/kinds.ts';
import { draftSoFar } from './draft-so-far.ts';

/**
 * A draft in which one point was put at `place`, and every later step was done rightly from there.
 * Undefined where that cannot be drafted, or makes a draft that the method refuses.
 */
export const followedThrough = (
	method: Method,
	body: Body,
	draft: Drafted,
	stepName: string,
	place: SheetPoint
): Drafted | undefined => {
	const before = draftSoFar(method, draft, stepName);
	const points: Record<string, SheetPoint> = { ...before.points, [stepName]: place };
	const lines: Record<string, DraftLine> = { ...before.lines };
	const drafted: Drafted = { ...before, points, lines };
	const scope = scopeOf(method, body, drafted);
	const first = method.steps.findIndex(({ name }) => name === stepName);
	for (const step of method.steps.slice(first + 1)) {
		if (!isDrafted(step, scope)) continue;
		const work = workStep(step, scope);
		if (work.kind === 'impossible') return undefined;
		if (work.kind === 'point') points[step.name] = work.point;
		else lines[step.name] = { path: work.path, length: pathLength(work.path) };
	}
	return brokenRules(method, body, drafted).length > 0 ? undefined : drafted;
};
