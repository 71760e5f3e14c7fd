import { between } from '#geometry/point.ts';
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
			say: () => `You left ${move} where it was; the rule folds it over ${fold.join('–')}.`
		},
		{
			note: 'fraction:half-for-whole',
			prior: PRIORS.fraction,
			place: between(start, right, 1 / 2),
			say: () => `You stopped at the fold ${fold.join('–')}; the rule goes as far again beyond it.`
		}
	];
};
