import { between } from '#geometry/point.ts';
import { numberOf } from '#drafting/formula/value.ts';
import { FRACTIONS, fractionOf, fractionWeight } from '../fractions.ts';
import { slip } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import { wronglyAimed, wronglyStarted, type KindMissteps } from './kind-missteps.ts';

/** A point between two others: another share of the way, from the other end, between other points. */
export const divisionMissteps: KindMissteps<'division'> = (step, stand) => {
	const { from, to } = step;
	const [start, end, share] = [
		stand.scope.point(from),
		stand.scope.point(to),
		numberOf(step.at, stand.scope)
	];
	const right = fractionOf(share);
	return [
		...FRACTIONS.filter((wrong) => wrong.name !== right.name).map((wrong) => ({
			note: `fraction:${wrong.name}-for-${right.name}`,
			prior: PRIORS.fraction * fractionWeight(wrong, right),
			place: between(start, end, wrong.share),
			slips: [slip('share', { wrong: wrong.name, right: right.name, from, to })]
		})),
		{
			note: 'direction:opposite',
			prior: PRIORS.opposite,
			place: between(start, end, 1 - share),
			slips: [slip('fromFarEnd', { from, to })]
		},
		...wronglyStarted(from, stand, (place) => between(place, end, share)),
		...wronglyAimed(to, from, stand, (place) => between(start, place, share))
	];
};
