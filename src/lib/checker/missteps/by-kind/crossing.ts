import { workStep } from '#drafting/steps/kinds.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { slip, type Misstep, type Slip } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import type { Stand } from '../stand.ts';
import type { KindMissteps } from './kind-missteps.ts';

/** The same rule with another line in it: one place, where that line crosses at all. */
const ruledOtherwise = (
	step: StepOf<'crossing'>,
	stand: Stand,
	note: string,
	what: Slip
): readonly Misstep[] => {
	const work = workStep(step, stand.scope);
	return work.kind === 'point' ? [{ note, prior: PRIORS.notCrossed, place: work.point, slips: [what] }] : [];
};

/** Where two lines cross: left at the point that the ray runs through, or crossed by the line as it lies and not folded over. */
export const crossingMissteps: KindMissteps<'crossing'> = (step, stand) => {
	const { of, over, ray } = step;
	// At the point that the ray runs through, or at an end of the line.
	const left = [ray[1], ...of].map((from): Misstep => ({
		note: `unmoved:${from}`,
		prior: PRIORS.notCrossed,
		place: stand.scope.point(from),
		slips: [slip('notCrossed', { from, of })]
	}));
	if (!over) return left;
	const asItLies = { ...step, over: undefined };
	return [...left, ...ruledOtherwise(asItLies, stand, 'unfolded', slip('notFoldedOver', { of, fold: over }))];
};
