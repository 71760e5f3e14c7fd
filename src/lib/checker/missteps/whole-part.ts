import { mm } from '#shared/units.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { slip } from './misstep.ts';
import { PRIORS } from './priors.ts';
import { summandsOf, termsOf } from './terms.ts';
import type { Wide } from './wide-rule.ts';

/** What may be done to a part of a sum that is itself a sum, or a choice: left out, doubled, halved, or with the other sign. */
const PART_DONE = [
	{ how: 'leftOut', times: 0 },
	{ how: 'twice', times: 2 },
	{ how: 'half', times: 1 / 2 },
	{ how: 'otherSign', times: -1 }
] as const;

/** A part of the sum that is itself a sum left out or changed whole: what the darts take up, say. */
export const wholePart: Wide = ({ formula, whole }, { scope }) => {
	const summands = summandsOf(formula);
	return summands.length < 2
		? []
		: summands.flatMap(([part, sign]) => {
				if (termsOf(part, scope).length < 2) return [];
				const value = sign * lengthOf(part, scope);
				return PART_DONE.map(({ how, times }) => ({
					note: `part:${how}`,
					prior: PRIORS.wholePart,
					value: mm(whole + (times - 1) * value),
					slip: () => slip('wholePart', { how })
				}));
			});
};
