import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import type { Mm } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { swungToLevel } from '#geometry/rays.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { slip } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import { wronglyStarted, wronglyWorked, type KindMissteps } from './kind-missteps.ts';

/** A length swung to a level: the length, the level, the start, the side, and straight across instead of swung. */
export const swingMissteps: KindMissteps<'swing'> = (step, stand) => {
	const { side } = step;
	const centre = stand.scope.point(step.from);
	const [length, level] = [lengthOf(step.length, stand.scope), lengthOf(step.level, stand.scope)];
	const out = side === 'outward' ? length : -length;
	const swung = (from: SheetPoint, by: Mm, depth: Mm): SheetPoint | undefined =>
		swungToLevel(from, by, depth, side);
	// A level that was left out lies at the start: that is straight across, which is told as such.
	const levels = wronglyWorked(step.level, stand, (depth) =>
		Math.abs(depth - centre.y) <= POINT_TOLERANCE ? undefined : swung(centre, length, depth)
	);
	const other = swungToLevel(centre, length, level, side === 'outward' ? 'inward' : 'outward');
	const straight = [
		{ place: at(centre.x + out, level), from: undefined },
		{ place: at(centre.x + out, centre.y), from: step.from }
	];
	return [
		...wronglyWorked(step.length, stand, (by) => swung(centre, by, level)),
		...levels,
		...wronglyStarted(step.from, stand, (from) => swung(from, length, level)),
		...straight.map(({ place, from }) => ({
			note: 'slope',
			prior: PRIORS.slope / 2,
			place,
			slips: [slip('notSwung', { from })]
		})),
		...(other
			? [
					{
						note: 'direction:opposite',
						prior: PRIORS.opposite,
						place: other,
						slips: [slip('swung', { wrong: side === 'outward' ? 'inward' : 'outward', right: side })]
					}
				]
			: [])
	];
};
