import { workStep } from '#drafting/steps/kinds.ts';
import { slip, type Misstep } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import type { KindMissteps } from './kind-missteps.ts';

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
	const work = workStep({ ...step, over: undefined }, stand.scope);
	// The line as it lies need not cross at all.
	if (work.kind !== 'point') return left;
	const unfolded = slip('notFoldedOver', { of, fold: over });
	return [...left, { note: 'unfolded', prior: PRIORS.notCrossed, place: work.point, slips: [unfolded] }];
};
