import type { FindingOf } from '#shared/verdict.ts';
import { mm, type Mm } from '#shared/units.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';

/** How far, and which way, a place lies from where it should. */
export const placeFinding = (
	aspect: 'place' | 'start' | 'end',
	placed: SheetPoint,
	right: SheetPoint,
	tolerance: Mm
): FindingOf<'place' | 'start' | 'end'> => {
	const offBy = distance(placed, right);
	return {
		aspect,
		within: offBy <= tolerance,
		note: aspect,
		offBy,
		across: mm(placed.x - right.x),
		down: mm(placed.y - right.y),
		tolerance
	};
};
