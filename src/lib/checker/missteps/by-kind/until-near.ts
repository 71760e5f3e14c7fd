import { mm, type Mm } from '#shared/units.ts';
import type { Scope } from '#drafting/formula/value.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { lengthWith, wayOf } from '#drafting/steps/until.ts';
import { alongness, directionTo, distance, moved, squareTo, type SheetPoint } from '#geometry/point.ts';

/** How far a place lies from the way that the point goes. */
export const asideOfWay = ({ from, go, about }: StepOf<'until'>, scope: Scope, place: SheetPoint): number => {
	const start = scope.point(from);
	if (about !== undefined) {
		const centre = scope.point(about);
		return Math.abs(distance(centre, place) - distance(centre, start));
	}
	const ahead = (place.x - start.x) * COMPASS[go].dx + (place.y - start.y) * COMPASS[go].dy;
	return distance(place, moved(start, COMPASS[go], mm(Math.max(0, ahead))));
};

/** How far along its way the point comes nearest to a place. */
const goneNear = ({ from, go, about }: StepOf<'until'>, scope: Scope, place: SheetPoint): Mm => {
	const start = scope.point(from);
	if (about === undefined)
		return mm((place.x - start.x) * COMPASS[go].dx + (place.y - start.y) * COMPASS[go].dy);
	const centre = scope.point(about);
	const out = directionTo(centre, start);
	const ahead = out && alongness(squareTo(out), COMPASS[go]) >= 0 ? 1 : -1;
	return mm(ahead * turnAngle(centre, start, place) * distance(centre, start));
};

/**
 * The same for places within a reach of `place` alone: the curve's length is measured at three of them, and what lies between is
 * interpolated, to a hundredth of a millimetre over a few centimetres. Some hundred lengths can be asked for at the price of three.
 */
export const placesNear = (
	step: StepOf<'until'>,
	scope: Scope,
	place: SheetPoint,
	reach: Mm
): ((wanted: Mm) => SheetPoint | undefined) => {
	const [way, middle] = [wayOf(step, scope), goneNear(step, scope, place)];
	const [least, most] = step.within;
	const tried = [-reach, 0, reach].map((off) => {
		const gone = mm(Math.min(most, Math.max(least, middle + off)));
		return { gone, length: lengthWith(step, way(gone), scope) };
	});
	return (wanted) => {
		const far = tried.reduce<number>((sum, one) => {
			const others = tried.filter((other) => other !== one);
			const share = others.reduce((all, { length }) => (all * (wanted - length)) / (one.length - length), 1);
			return sum + one.gone * share;
		}, 0);
		return Number.isFinite(far) && far >= least && far <= most ? way(mm(far)) : undefined;
	};
};
