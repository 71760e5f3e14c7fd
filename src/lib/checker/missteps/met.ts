import { BLOCK_ALLOWANCES, isChoice, type LengthAllowance } from '#shared/allowances.ts';
import { MEASUREMENT_KEYS, type MeasurementKey } from '#shared/measurements.ts';
import type { Method } from '#drafting/method.ts';

/** What whoever draws a draft has met, and may so have taken. */

/** Marks that are set before anything is measured: nobody who sets them has heard of a block. */
const isFirst = ({ measurements, uses }: Method): boolean =>
	measurements.length === 0 && Object.keys(uses).length === 0;

export const metMeasurements = (method: Method): readonly MeasurementKey[] =>
	isFirst(method) ? [] : MEASUREMENT_KEYS;

/** The lengths among a draft's allowances. */
export const metAllowances = (method: Method): readonly LengthAllowance[] => {
	const unmet = isFirst(method) ? BLOCK_ALLOWANCES : [];
	return method.allowances.filter(
		(each): each is LengthAllowance => !isChoice(each) && !unmet.some(({ key }) => key === each.key)
	);
};
