import { mm, printLength, type Unit } from '#shared/units.ts';
import { UNWRITTEN } from '#shared/tolerances.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';

const degrees = (radians: number): string => `${Number(((radians * 180) / Math.PI).toFixed(1))}°`;

/** How a slanting way lies to the nearest of the four square ways. */
const slant = (x: number, y: number): string => {
	const steep = Math.abs(y) >= Math.abs(x);
	const straight = `straight ${steep ? (y > 0 ? 'down' : 'up') : x > 0 ? 'across' : 'in'}`;
	const off = degrees(Math.atan(steep ? Math.abs(x / y) : Math.abs(y / x)));
	return off === '0°' ? straight : `${off} off ${straight}`;
};

/** The direction from one place to another: "straight down", or how far off the nearest square way. */
const directionWords = (from: SheetPoint, to: SheetPoint): string => {
	const [x, y] = [to.x - from.x, to.y - from.y];
	if (Math.abs(x) < UNWRITTEN && Math.abs(y) < UNWRITTEN) return 'on the spot';
	if (Math.abs(x) < UNWRITTEN) return `straight ${y > 0 ? 'down' : 'up'}`;
	if (Math.abs(y) < UNWRITTEN) return `straight ${x > 0 ? 'across' : 'in'}`;
	return slant(x, y);
};

/** "22.2 cm from O, straight down": the live distance and direction from the point that a step starts from. */
export const fromOrigin = (origin: string, from: SheetPoint, to: SheetPoint, unit: Unit): string => {
	const way = directionWords(from, to);
	if (way === 'on the spot') return `at ${origin}`;
	const far = `${printLength(mm(distance(from, to)), unit)} from ${origin}`;
	return `${far}, ${way}`;
};

/** "7.2 cm across, 0 cm down": where a place lies on the sheet, counted from the corner. */
export const onSheet = ({ x, y }: SheetPoint, unit: Unit): string =>
	`${printLength(x, unit)} across, ${printLength(y, unit)} down`;
