import type { SharpMarker } from './corners.ts';
import { CELLS_ACROSS } from './markers.ts';
import { lightAt, pixelsApart, type Grey } from './picture.ts';

/** How strongly a pattern must return to be one, 1 being without a change. Noise and paper stay below 0.3. */
const RETURNS = 0.5;
/** How strong it must be, of 255: what JPEG and paper leave is less. */
const STRONG = 3;
/** Distances at which a pattern may return, in pixels. JPEG's own squares return at 8. */
const FIRST = 2;

/** How a row of light goes along with itself some way on, from 1 (the same) to -1 (the contrary). */
const likeness = (row: readonly number[], shift: number): number => {
	let [both, here, there] = [0, 0, 0];
	for (let i = 0; i + shift < row.length; i++) {
		const [a, b] = [row[i] ?? 0, row[i + shift] ?? 0];
		both += a * b;
		here += a * a;
		there += b * b;
	}
	return both / Math.sqrt(here * there || 1);
};

/** What a row of light has left once its slow changes are taken away. */
const detail = (row: readonly number[]): readonly number[] => {
	const count = row.length;
	const mean = row.reduce((sum, each) => sum + each, 0) / count;
	const middle = (count - 1) / 2;
	let [top, bottom] = [0, 0];
	for (const [i, each] of row.entries()) {
		top += (i - middle) * (each - mean);
		bottom += (i - middle) ** 2;
	}
	return row.map((each, i) => each - mean - (top / bottom) * (i - middle));
};

/** Whether a row of light swings evenly: it turns against itself, and then returns. */
const swings = (row: readonly number[]): boolean => {
	const rest = detail(row);
	const strength = Math.sqrt(rest.reduce((sum, each) => sum + each * each, 0) / rest.length);
	if (strength < STRONG) return false;
	let turned = false;
	for (let shift = 1; shift < rest.length / 2; shift++) {
		const like = likeness(rest, shift);
		if (like < -0.2) turned = true;
		if (turned && shift > FIRST && shift !== 8 && like > RETURNS) return true;
	}
	return false;
};

/**
 * Whether a marker seems to be shown on a screen and not printed: the white round it swings evenly along most of its sides, as
 * the dots of a screen do against those of a camera. A screen much finer than the camera's pixels is not seen so.
 */
export const looksLikeScreen = (grey: Grey, { corners }: SharpMarker): boolean => {
	const rows = corners.map((from, i) => {
		const to = corners[(i + 1) % corners.length] ?? from;
		const length = pixelsApart(from, to);
		const out = length / CELLS_ACROSS / 2;
		const [du, dv] = [(to.u - from.u) / length, (to.v - from.v) / length];
		return Array.from({ length: Math.floor(length) }, (_, k) =>
			lightAt(grey, { u: from.u + du * k + dv * out, v: from.v + dv * k - du * out })
		);
	});
	return rows.filter((row) => row.length > 16 && swings(row)).length >= 3;
};
