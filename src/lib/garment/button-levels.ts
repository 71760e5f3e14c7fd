import { mm, type Mm } from '#shared/units.ts';

/** From the upper edge of the opening to the first button, and from the last to the waist. Common practice, no source. */
const FIRST: Mm = mm(15);
const LAST: Mm = mm(40);
/** About how far buttons lie from each other; 70 to 90 mm is usual. */
const APART: Mm = mm(80);

/**
 * The levels of the buttons down a centre line, in millimetres: one as far below the top and one as far above the foot as is usual, one at
 * the level of the bust where that lies between, and others between them at equal distances of about 70 to 90 mm.
 */
export const buttonLevels = (top: Mm, bust: Mm, foot: Mm): readonly Mm[] => {
	const [first, last] = [top + FIRST, foot - LAST];
	if (last <= first) return [mm(first)];
	const fixed = bust > first + APART / 2 && bust < last - APART / 2 ? [first, bust, last] : [first, last];
	return [
		mm(first),
		...fixed.slice(1).flatMap((to, i) => {
			const from = fixed[i] ?? first;
			const fewest = Math.max(1, Math.floor((to - from) / APART));
			const off = (parts: number): number => Math.abs((to - from) / parts - APART);
			const count = off(fewest) <= off(fewest + 1) ? fewest : fewest + 1;
			return Array.from({ length: count }, (_, n) => mm(from + ((to - from) * (n + 1)) / count));
		})
	];
};
