import { mm, printLength, type Mm, type Unit } from '#shared/units.ts';
import { UNWRITTEN } from '#shared/tolerances.ts';
import type { Compass } from '#shared/method.ts';
import type { SheetPoint } from '#geometry/point.ts';

/** How a direction is said after a verb: "go straight down". */
export const COMPASS_WORDS: Readonly<Record<Compass, string>> = {
	up: 'straight up',
	down: 'straight down',
	across: 'straight across',
	in: 'straight in toward the centre'
};

/** "A, B and C". */
export const listed = (names: readonly string[]): string =>
	names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** The way from one place to another in the drafter's terms: "3.6 cm across and 1.4 cm down"; "on the spot" where there is none. */
export const offsetWords = (from: SheetPoint, to: SheetPoint, unit: Unit): string => {
	const said = (length: number, ahead: string, back: string): string[] => {
		const size: Mm = mm(Math.abs(length));
		return size < UNWRITTEN ? [] : [`${printLength(size, unit)} ${length > 0 ? ahead : back}`];
	};
	const parts = [...said(to.x - from.x, 'across', 'in'), ...said(to.y - from.y, 'down', 'up')];
	return parts.length > 0 ? listed(parts) : 'on the spot';
};

/** First letter made a capital. */
export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
