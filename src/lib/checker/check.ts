import { BadInput } from '#shared/bad-input.ts';
import { placementSchema, type Placement } from '#shared/placement.ts';
import { POINT_TOLERANCE, SAME_PLACE } from '#shared/tolerances.ts';
import type { Finding, Verdict } from '#shared/verdict.ts';
import { pathLength } from '#geometry/path.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { checkLine } from './check-line.ts';
import { placeFinding } from './check-point.ts';
import { pathOfPlacement, pointOfPlace } from './placed.ts';

const judged = (findings: readonly Finding[]): Verdict => ({
	answer: findings.every(({ within }) => within) ? 'right' : 'wrong',
	findings: [...findings]
});

const notValid = (because: string): Verdict => ({ answer: 'not-valid', because });

/** Judges a placement that is already known to be well formed. */
const judge = (step: Step, placement: Placement, draft: Draft): Verdict => {
	const point = draft.points[step.name];
	if (point) {
		return placement.kind === 'point'
			? judged([placeFinding('place', pointOfPlace(placement.at), point, POINT_TOLERANCE)])
			: notValid('this step asks for a point, and a line was drawn');
	}
	const line = draft.lines[step.name];
	if (!line) throw new Error(`the draft has neither a point nor a line "${step.name}"`);
	if (placement.kind !== 'line') return notValid('this step asks for a line, and a point was placed');
	const path = pathOfPlacement(placement);
	return pathLength(path) <= SAME_PLACE
		? notValid('the line begins and ends at the same place')
		: judged(checkLine(step, path, line.path));
};

/**
 * What the checker says of one step's placement, against the computed draft. Never throws: an entry
 * that is no placement is *not-valid*, nothing at all is *unfinished*, and a fault of the program's
 * own is *our-fault*, which costs the learner nothing.
 */
export const check = (method: Method, stepName: string, draft: Draft, placement: unknown): Verdict => {
	if (placement === undefined || placement === null) return { answer: 'unfinished' };
	try {
		const parsed = placementSchema.safeParse(placement);
		if (!parsed.success) {
			const issue = parsed.error.issues[0];
			return notValid(`this is not a placement: ${issue?.path.join('.') ?? ''} ${issue?.message ?? ''}`);
		}
		return judge(stepNamed(method, stepName), parsed.data, draft);
	} catch (error) {
		if (error instanceof BadInput) return notValid(error.message);
		return { answer: 'our-fault', because: error instanceof Error ? error.message : String(error) };
	}
};
