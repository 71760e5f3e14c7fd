import type { MotionFile } from '#shared/method.ts';
import { radians, type Radians } from '#shared/units.ts';
import { mirroring, REST, shifting, turning, type Motion } from '#geometry/motion.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Scope } from '../formula/value.ts';

/** The angle by which a turn about a place takes one place's direction to another's; positive from x toward y. */
export const turnAngle = (about: SheetPoint, from: SheetPoint, to: SheetPoint): Radians => {
	const [ax, ay] = [from.x - about.x, from.y - about.y];
	const [bx, by] = [to.x - about.x, to.y - about.y];
	return radians(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
};

/** The points that a motion is told by. */
export const motionNeeds = (motion: MotionFile): readonly string[] => {
	if (motion.kind === 'mirror') return motion.fold;
	return motion.kind === 'turn' ? [motion.about, motion.from, motion.to] : [motion.from, motion.to];
};

/** The motion that takes its points where they came to lie; none where this body's draft has no such step. */
export const motionIn = (motion: MotionFile, scope: Scope): Motion => {
	if (!motionNeeds(motion).every((name) => scope.has(name))) return REST;
	if (motion.kind === 'mirror') return mirroring(scope.point(motion.fold[0]), scope.point(motion.fold[1]));
	const [from, to] = [scope.point(motion.from), scope.point(motion.to)];
	if (motion.kind === 'spread') return shifting(from, to);
	const about = scope.point(motion.about);
	return turning(about, turnAngle(about, from, to));
};
