import { between } from '#geometry/point.ts';
import { numberOf } from '#drafting/formula/value.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { FRACTIONS, RARE_FRACTIONS, fractionOf, fractionWeight } from '../fractions.ts';
import { slip, type Part, type Slip } from '../misstep.ts';
import { aimParts, laid, laidTogether, startParts } from '../parts.ts';
import { PRIORS } from '../priors.ts';
import type { KindMissteps } from './kind-missteps.ts';

/** Shares of the way that are wrong: another one, and none or all of it where only a mark is to be explained. */
const wrongShares = (
	{ from, to }: StepOf<'division'>,
	share: number,
	wide: boolean
): readonly Part<number>[] => {
	const right = fractionOf(share);
	const shares = wide ? [...FRACTIONS, ...RARE_FRACTIONS] : FRACTIONS;
	return shares
		.filter((wrong) => wrong.name !== right.name && (wide || wrong.share <= 1))
		.map((wrong) => ({
			note: `fraction:${wrong.name}-for-${right.name}`,
			prior: PRIORS.fraction * fractionWeight(wrong, right),
			value: wrong.share,
			slip: () => slip('share', { wrong: wrong.name, right: right.name, from, to })
		}));
};

/** A point between two others: another share of the way, from the other end, between other points, any two of these. */
export const divisionMissteps: KindMissteps<'division'> = (step, stand) => {
	const { from, to } = step;
	const [start, end, share] = [
		stand.scope.point(from),
		stand.scope.point(to),
		numberOf(step.at, stand.scope)
	];
	const [starts, ends] = [startParts(from, stand), aimParts(to, from, stand)];
	const saidBetween = (a: string, b: string): Slip =>
		slip('between', { share: fractionOf(share).name, wrong: { from: a, to: b }, right: { from, to } });
	const othersFrom = startParts(from, stand, 1, (wrong) => saidBetween(wrong, to));
	const othersTo = aimParts(to, from, stand, (wrong) => saidBetween(from, wrong));
	const shares = wrongShares(step, share, stand.placed !== undefined);
	return [
		...laid(stand, shares, (wrong) => between(start, end, wrong)),
		{
			note: 'direction:opposite',
			prior: PRIORS.opposite,
			place: between(start, end, 1 - share),
			slips: [slip('fromFarEnd', { from, to })]
		},
		...laid(stand, othersFrom, (place) => between(place, end, share)),
		...laid(stand, othersTo, (place) => between(start, place, share)),
		...laidTogether(stand, starts, ends, (a, b) => between(a, b, share)),
		...laidTogether(stand, shares, ends, (wrong, b) => between(start, b, wrong)),
		...laidTogether(stand, shares, starts, (wrong, a) => between(a, end, wrong))
	];
};
