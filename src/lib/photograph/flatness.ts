import { mm, type Mm } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { Fit } from './least-squares.ts';
import { standingOf } from './standing.ts';
import { toPicture, type View } from './view.ts';

/** What places that should lie in one plane tell of how flat they do. */
export interface Flatness {
	/** How sure it is that the paper bulges: so many standard deviations beyond what flat paper would leave over. */
	readonly sure: number;
	/** How high it stands, one standard deviation, as far as these places can tell; nothing where it seems flat. */
	readonly height: Mm;
	/** The height, one standard deviation, that these places would tell from flat paper half of the time. */
	readonly seenFrom: Mm;
}

/** Beyond so many standard deviations the paper is said to bulge. Measured: flat paper comes so far in less than one picture in a hundred. */
const SURE = 3;
/** Less than this is as flat as paper lies, and is counted with every point as it is: a sheet that stands up by a millimetre. */
const STANDS_UP: Mm = mm(0.2);
/** How far apart on the sheet paper still rises together. Assumption: paper that was rolled or folded waves in hands' breadths. */
const TOGETHER: Mm = mm(200);

/** A place that was found: on the sheet, and how far from there it may have been found in the picture. */
export interface Place {
	readonly sheet: SheetPoint;
	readonly error: number;
}

/** How far each place would be seen from where it is for each millimetre that the paper stands up there, in its own errors. */
const raised = (view: View, places: readonly Place[]): readonly (readonly [number, number])[] => {
	const { foot, high } = standingOf(view);
	return places.map(({ sheet, error }) => {
		const up = at(sheet.x + (sheet.x - foot.x) / high, sheet.y + (sheet.y - foot.y) / high);
		const [from, to] = [toPicture(view, sheet), toPicture(view, up)];
		return [(to.u - from.u) / error, (to.v - from.v) / error];
	});
};

const dot = (a: readonly number[], b: readonly number[]): number => {
	let sum = 0;
	for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
	return sum;
};

/**
 * How flat the paper lies, from what a fit has left of its first observations, two for each place. What paper that bulges leaves over
 * goes together from place to place; how much of that there is, is compared with what errors of finding alone would leave (a
 * quadratic score, its distribution by two moments: Rao and Kleffe 1988; its tail by Wilson and Hilferty 1931).
 */
export const flatnessOf = (view: View, places: readonly Place[], fit: Fit): Flatness => {
	const up = raised(view, places).flat();
	const count = up.length;
	const rise = (i: number, j: number): number => {
		const [a, b] = [places[i >> 1]?.sheet, places[j >> 1]?.sheet];
		if (!a || !b) return 0;
		const apart = ((a.x - b.x) ** 2 + (a.y - b.y) ** 2) / TOGETHER ** 2;
		return (up[i] ?? 0) * (up[j] ?? 0) * Math.exp(-apart / 2);
	};
	const all = Array.from({ length: count }, (_, i) => i);
	const together = all.map((i) => all.map((j) => rise(i, j)));
	const rows = fit.rows.slice(0, count);
	const taken = rows.map((row) => fit.spread.map((each) => dot(each, row)));
	/** What errors of one leave over, after the fit has taken its share. */
	const rest = all.map((i) => all.map((j) => (i === j ? 1 : 0) - dot(taken[i] ?? [], rows[j] ?? [])));
	const both = rest.map((row) => together.map((column) => dot(row, column)));
	const left = fit.left.slice(0, count);
	const found = dot(
		left,
		together.map((row) => dot(row, left))
	);
	const mean = all.reduce((sum, i) => sum + (both[i]?.[i] ?? 0), 0);
	const square = all.reduce(
		(sum, i) =>
			sum +
			dot(
				both[i] ?? [],
				both.map((row) => row[i] ?? 0)
			),
		0
	);
	if (!(square > 1e-9)) return { sure: 0, height: mm(0), seenFrom: mm(Infinity) };
	const freedom = mean ** 2 / square;
	const sure = (Math.cbrt(found / mean) - (1 - 2 / (9 * freedom))) / Math.sqrt(2 / (9 * freedom));
	const beyond = mean * (1 - 2 / (9 * freedom) + SURE * Math.sqrt(2 / (9 * freedom))) ** 3 - mean;
	return {
		sure,
		height: mm(Math.sqrt(Math.max(0, (found - mean) / square))),
		seenFrom: mm(Math.sqrt(beyond / square))
	};
};

/** Whether it is to be said that the paper does not lie flat. */
export const bulges = ({ sure, height }: Flatness): boolean => sure > SURE && height > STANDS_UP;
