import { between } from '#geometry/point.ts';
import { slip } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import type { KindMissteps } from './kind-missteps.ts';

/** A part mirrored on a fold: left where it was, or brought only as far as the fold. */
export const mirrorMissteps: KindMissteps<'mirror'> = ({ move, fold }, { scope, right }) => {
	const start = scope.point(move);
	return [
		{
			note: 'unmoved',
			prior: PRIORS.unmoved,
			place: start,
			slips: [slip('notFolded', { point: move, fold })]
		},
		{
			note: 'fraction:half-for-whole',
			prior: PRIORS.toFold,
			place: between(start, right, 1 / 2),
			slips: [slip('toFold', { fold })]
		}
	];
};
