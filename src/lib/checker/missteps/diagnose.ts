import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import type { Placement } from '#shared/placement.ts';
import { NotDrafted, type Drafted } from '#drafting/evaluate.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { pathOfPlacement, pointOfPlace } from '../placed.ts';
import { diagnoseTyped } from './diagnose-typed.ts';
import { diagnoseLine } from './line-missteps.ts';
import { NO_DIAGNOSIS, type Diagnosis } from './misstep.ts';
import { passes, standOf } from './stand.ts';
import { weighed } from './weigh.ts';

type PointPlacement = Extract<Placement, { kind: 'point' }>;

const diagnosePoint = (
	method: Method,
	step: Step,
	body: Body,
	drafted: Drafted,
	{ at, typed }: PointPlacement,
	truth: Drafted | undefined
): Diagnosis => {
	const placed = pointOfPlace(at);
	const [stand, other] = [standOf(method, step, body, drafted), truth && standOf(method, step, body, truth)];
	if (!stand || passes(stand, placed)) return NO_DIAGNOSIS;
	const fromTyped = typed?.form === 'distance' ? diagnoseTyped(stand, typed, placed) : undefined;
	return fromTyped ?? weighed(placed, stand, other);
};

/**
 * What probably went wrong at a step that was placed wrongly. `drafted` holds the points and lines that
 * the learner works from: the true ones, or the learner's own; then `truth` holds the true ones, from which the mark may have been
 * worked as well. A typed sum is compared with the wrong
 * rules' own, else the place is weighed against where each would lead. No guess is given for a right
 * placement, where nothing explains it well, or where `drafted` lacks what the step starts from.
 */
export const diagnose = (
	method: Method,
	stepName: string,
	body: Body,
	drafted: Drafted,
	placement: Placement,
	truth?: Drafted
): Diagnosis => {
	const step = stepNamed(method, stepName);
	try {
		return placement.kind === 'point'
			? diagnosePoint(method, step, body, drafted, placement, truth)
			: diagnoseLine(method, step, body, drafted, pathOfPlacement(placement));
	} catch (error) {
		if (error instanceof NotDrafted || error instanceof BadInput) return NO_DIAGNOSIS;
		throw error;
	}
};
