import { SAME_PLACE } from '#shared/tolerances.ts';
import type { FindingOf } from '#shared/verdict.ts';
import { mm, type Mm } from '#shared/units.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';

/** Whether a size keeps its tolerance. Sums of millimetres end in noise, which must cost nobody a right answer. */
export const keeps = (size: Mm, tolerance: Mm): boolean => size <= tolerance + SAME_PLACE;

/** How far, and which way, a place lies from where it should. */
export const placeFinding = (
	aspect: 'place' | 'start' | 'end',
	placed: SheetPoint,
	right: SheetPoint,
	tolerance: Mm,
	turn?: FindingOf<'place'>['turn']
): FindingOf<'place' | 'start' | 'end'> => {
	const offBy = distance(placed, right);
	return {
		aspect,
		within: keeps(offBy, tolerance),
		note: aspect,
		offBy,
		across: mm(placed.x - right.x),
		down: mm(placed.y - right.y),
		tolerance,
		...(turn && { turn })
	};
};
