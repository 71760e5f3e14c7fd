import type { Compass } from '#shared/method.ts';
import type { Direction } from '#geometry/point.ts';

/** The drafter's four ways on the sheet: the centre line runs down, across is outward from it. */
export const COMPASS: Readonly<Record<Compass, Direction>> = {
	up: { dx: 0, dy: -1 },
	down: { dx: 0, dy: 1 },
	across: { dx: 1, dy: 0 },
	in: { dx: -1, dy: 0 }
};
