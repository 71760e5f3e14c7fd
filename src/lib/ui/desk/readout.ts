import { mm, radians } from '#shared/units.ts';
import { UNWRITTEN } from '#shared/tolerances.ts';
import type { Slant } from '#shared/speech/en/desk.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';

/** How a way lies to the nearest of the four square ways; undefined between places that are one. */
const slantOf = (from: SheetPoint, to: SheetPoint): Slant | undefined => {
	const [x, y] = [to.x - from.x, to.y - from.y].map((each) => (Math.abs(each) < UNWRITTEN ? 0 : each));
	if (x === undefined || y === undefined || (x === 0 && y === 0)) return undefined;
	const steep = Math.abs(y) >= Math.abs(x);
	return {
		straight: steep ? (y > 0 ? 'down' : 'up') : x > 0 ? 'across' : 'in',
		off: radians(Math.atan(steep ? Math.abs(x / y) : Math.abs(y / x)))
	};
};

/** "22.2 cm from O, straight down": the live distance and direction from the point that a step starts from. */
export const fromOrigin = (point: string, from: SheetPoint, to: SheetPoint, speech: Speech): string => {
	const says = speech.words.desk;
	const way = slantOf(from, to);
	return way ? says.from({ far: mm(distance(from, to)), point, way }) : says.at({ point });
};
