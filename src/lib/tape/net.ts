import { at, directionTo, distance, type SheetPoint } from '#geometry/point.ts';

/**
 * Points and the distances between them. Distances alone leave open where the whole lies and how it is turned, so one point, the
 * origin, stays where it is and another, the axis, moves only straight to or from it.
 */
export interface Held {
	readonly origin: number;
	readonly axis: number;
}

/** Two points by their numbers, between which the tape is laid. */
export interface Pair {
	readonly from: number;
	readonly to: number;
}

/** What a distance depends on: numbers of the unknowns, and how much longer it becomes as each grows. */
export interface Row {
	readonly at: readonly number[];
	readonly by: readonly number[];
}

/** How many unknowns so many points have: two each, less where the whole lies and how it is turned. */
export const unknownsOf = (points: number): number => 2 * points - 3;

/** The numbers of a point's unknowns: across and down, one for the axis, none for the origin. */
const unknownsAt = (point: number, { origin, axis }: Held): readonly number[] => {
	if (point === origin) return [];
	// The axis has the last.
	const before = point - Number(point > origin) - Number(point > axis);
	return [2 * before, 2 * before + 1];
};

/** How the distance of a pair follows from the unknowns about where the points lie now. */
export const rowOf = ({ from, to }: Pair, places: readonly SheetPoint[], held: Held): Row => {
	const last = unknownsOf(places.length) - 1;
	const [a, b, o, x] = [places[from], places[to], places[held.origin], places[held.axis]];
	const along = a && b && directionTo(a, b);
	const axis = o && x && directionTo(o, x);
	if (!along || !axis) return { at: [], by: [] };
	const at: number[] = [];
	const by: number[] = [];
	for (const [point, sign] of [
		[from, -1],
		[to, 1]
	] as const) {
		if (point === held.axis) {
			at.push(last);
			by.push(sign * (along.dx * axis.dx + along.dy * axis.dy));
		} else if (point !== held.origin) {
			at.push(...unknownsAt(point, held));
			by.push(sign * along.dx, sign * along.dy);
		}
	}
	return { at, by };
};

/** How long a pair's distance is where the points lie now. */
export const lengthOf = ({ from, to }: Pair, places: readonly SheetPoint[]): number => {
	const [a, b] = [places[from], places[to]];
	return a && b ? distance(a, b) : NaN;
};

/** How a point may lie elsewhere, by the inverse of the normal equations: its spread across, down, and both together. */
export const spreadOf = (
	point: number,
	inverse: Float64Array,
	places: readonly SheetPoint[],
	held: Held
): readonly [xx: number, xy: number, yy: number] => {
	const size = unknownsOf(places.length);
	const of = (row: number, column: number): number => inverse[row * size + column] ?? 0;
	if (point === held.axis) {
		const [o, x] = [places[held.origin], places[held.axis]];
		const way = o && x && directionTo(o, x);
		const along = of(size - 1, size - 1);
		return way ? [along * way.dx ** 2, along * way.dx * way.dy, along * way.dy ** 2] : [0, 0, 0];
	}
	const [across = -1, down = -1] = unknownsAt(point, held);
	return across < 0 ? [0, 0, 0] : [of(across, across), of(across, down), of(down, down)];
};

/**
 * The points that distances pin down, one after the other: the first two, then each that has two distances to such. Which is
 * taken first where several could be, is said by its number.
 */
export const pinnedFrom = (first: Pair, pairs: readonly Pair[], count: number): readonly number[] => {
	const to = new Map<number, number[]>();
	for (const { from, to: other } of pairs) {
		to.set(from, [...(to.get(from) ?? []), other]);
		to.set(other, [...(to.get(other) ?? []), from]);
	}
	const pinned = new Set([first.from, first.to]);
	const waiting = new Set(Array.from({ length: count }, (_, i) => i).filter((i) => !pinned.has(i)));
	const next = (): number | undefined =>
		[...waiting].find((each) => (to.get(each) ?? []).filter((other) => pinned.has(other)).length >= 2);
	for (let each = next(); each !== undefined; each = next()) {
		pinned.add(each);
		waiting.delete(each);
	}
	return [...pinned];
};

/** Where a point lies on the other side of the line along which some others lie. */
export const mirroredBy = (point: SheetPoint, others: readonly SheetPoint[]): SheetPoint => {
	const count = Math.max(1, others.length);
	const x = others.reduce((sum, each) => sum + each.x, 0) / count;
	const y = others.reduce((sum, each) => sum + each.y, 0) / count;
	const [xx, xy, yy] = others.reduce<readonly [number, number, number]>(
		([a, b, c], each) => [a + (each.x - x) ** 2, b + (each.x - x) * (each.y - y), c + (each.y - y) ** 2],
		[0, 0, 0]
	);
	const along = Math.atan2(2 * xy, xx - yy) / 2;
	const beside = (point.y - y) * Math.cos(along) - (point.x - x) * Math.sin(along);
	return at(point.x + 2 * beside * Math.sin(along), point.y - 2 * beside * Math.cos(along));
};
