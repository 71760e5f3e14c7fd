import { TANGENT_TOLERANCE } from '#shared/tolerances.ts';
import { mm, radians, type Mm, type Radians } from '#shared/units.ts';
import { pathSamples, type Path } from '#geometry/path.ts';
import { at, between, directionTo, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic, straight } from '#geometry/segment.ts';

/** Step at which a curve's shape is looked at: fine enough for a bend as small as a finger's. */
const SHAPE_STEP: Mm = mm(4);
/** Places at the most, over four metres of curve: a longer one is no seam, and must not hold up whoever checks it. */
const MOST_PLACES = 1000;

const placesOf = (path: Path): readonly SheetPoint[] => pathSamples(path, SHAPE_STEP, MOST_PLACES);

/** How far a curve lies to either side of the straight line between its ends. */
export interface Bulge {
	/** The greatest distance to the side toward which the chord turns by a quarter from x to y, and to the other. */
	readonly one: Mm;
	readonly other: Mm;
	/** The mean distance, positive to the first side. */
	readonly mean: Mm;
}

/** How far places lie to the side of the straight way from the first to the last of them; none where they end where they start. */
const sidesOf = (places: readonly SheetPoint[]): readonly number[] => {
	const [first, last] = [places[0], places.at(-1)];
	const chord = first && last && directionTo(first, last);
	if (!chord) return [];
	return places.map(({ x, y }) => (y - first.y) * chord.dx - (x - first.x) * chord.dy);
};

/** The bulge of a path about its own chord; none for a path that ends where it starts. */
export const bulgeOf = (path: Path): Bulge => {
	const sides = sidesOf(placesOf(path));
	if (sides.length === 0) return { one: mm(0), other: mm(0), mean: mm(0) };
	return {
		one: mm(Math.max(0, ...sides)),
		other: mm(Math.max(0, ...sides.map((side) => -side))),
		mean: mm(sides.reduce((sum, side) => sum + side, 0) / sides.length)
	};
};

/** The greatest distance of a path from its own chord. */
export const depthOf = (path: Path): Mm => {
	const { one, other } = bulgeOf(path);
	return mm(Math.max(one, other));
};

/** The signed angle from one way to the next, -pi to pi. */
const turn = (a: SheetPoint, b: SheetPoint, c: SheetPoint): Radians => {
	const [x, y, u, v] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
	return radians(Math.atan2(x * v - y * u, x * u + y * v));
};

/** A turn the other way that is smaller than this is the unsteadiness of any hand. */
const LEAST_BEND: Radians = TANGENT_TOLERANCE;

/**
 * The bends of a path in turn, 1 where it turns from x toward y and -1 where it turns back, each by more than
 * LEAST_BEND. An arc has one, an S has two, a straight line none.
 */
export const bendsOf = (path: Path): readonly (1 | -1)[] => {
	const samples = placesOf(path).filter(
		(place, i, all) => i === 0 || distance(place, all[i - 1] ?? place) > 0
	);
	const bends: (1 | -1)[] = [];
	// The heading, from where the path starts; a bend begins where it has come back from its furthest by LEAST_BEND.
	let [heading, lowest, highest] = [0, 0, 0];
	samples.slice(2).forEach((c, i) => {
		heading += turn(samples[i] ?? c, samples[i + 1] ?? c, c);
		const now = bends.at(-1);
		if (now !== 1 && heading - lowest > LEAST_BEND) {
			bends.push(1);
			highest = heading;
		} else if (now !== -1 && highest - heading > LEAST_BEND) {
			bends.push(-1);
			lowest = heading;
		}
		[lowest, highest] = [Math.min(lowest, heading), Math.max(highest, heading)];
	});
	return bends;
};

/** Whether a path bends to and fro where the other does not: its bends are not among the other's, in turn. */
export const wobblesBeside = (path: Path, other: Path): boolean => {
	const allowed = bendsOf(other);
	let next = 0;
	return bendsOf(path).some((bend) => {
		while (next < allowed.length && allowed[next] !== bend) next += 1;
		next += 1;
		return next > allowed.length;
	});
};

/** Places at which two shapes are held against each other. */
const COMPARED = 32;

/** Places along a path, each as much further along it as the one before. */
const evenly = (path: Path): readonly SheetPoint[] => {
	const samples = placesOf(path);
	const run = [0];
	for (let i = 1; i < samples.length; i++) {
		const [a, b] = [samples[i - 1], samples[i]];
		run.push((run[i - 1] ?? 0) + (a && b ? distance(a, b) : 0));
	}
	const whole = run.at(-1) ?? 0;
	let i = 1;
	return Array.from({ length: COMPARED + 1 }, (_, k) => {
		const wanted = (whole * k) / COMPARED;
		while (i < samples.length - 1 && (run[i] ?? 0) < wanted) i += 1;
		const [before = 0, after = 0] = [run[i - 1], run[i]];
		const [a, b] = [samples[i - 1] ?? path[0].from, samples[i] ?? path[0].from];
		return between(a, b, after > before ? Math.min(1, (wanted - before) / (after - before)) : 0);
	});
};

/**
 * How far two shapes are apart where each has run the same share of its length: never less than the
 * checker's own distance but for the sampling, and found much faster.
 */
export const shapesApart = (a: Path, b: Path): Mm => {
	const [first, second] = [evenly(a), evenly(b)];
	return mm(Math.max(...first.map((place, i) => distance(place, second[i] ?? place))));
};

/** A path with every place of it moved. */
export const mapped = (path: Path, move: (place: SheetPoint) => SheetPoint): Path => {
	const [first, ...rest] = path.map((piece) =>
		piece.kind === 'straight'
			? straight(move(piece.from), move(piece.to))
			: cubic(move(piece.from), move(piece.leaving), move(piece.arriving), move(piece.to))
	);
	return [first ?? path[0], ...rest];
};

/** The places mirrored in the line through `a` and `b`. */
export const mirroredIn =
	(a: SheetPoint, b: SheetPoint) =>
	(place: SheetPoint): SheetPoint => {
		const way = directionTo(a, b);
		if (!way) return place;
		const along = (place.x - a.x) * way.dx + (place.y - a.y) * way.dy;
		return at(2 * (a.x + along * way.dx) - place.x, 2 * (a.y + along * way.dy) - place.y);
	};

/** The places so many times as far from the line through `a` and `b`. */
export const stretchedFrom =
	(a: SheetPoint, b: SheetPoint, times: number) =>
	(place: SheetPoint): SheetPoint =>
		between(place, mirroredIn(a, b)(place), (1 - times) / 2);

const dot = (a: readonly number[], b: readonly number[]): number =>
	a.reduce((all, side, i) => all + side * (b[i] ?? 0), 0);

/**
 * How many times as deep as another a path is, about its own chord: the share that fits it best all along; and how much of what it is
 * off that explains, as a share of the squares.
 */
export const depthBeside = (
	path: Path,
	other: Path
): { readonly times: number; readonly explains: number } => {
	const [drawn, wanted] = [sidesOf(evenly(path)), sidesOf(evenly(other))];
	const off = drawn.map((side, i) => side - (wanted[i] ?? 0));
	const [own, beside] = [dot(wanted, wanted), dot(off, wanted)];
	return { times: 1 + beside / own, explains: (beside * beside) / (own * dot(off, off)) };
};

/** The places turned by half a turn about the middle of `a` and `b`, which change places. */
export const turnedAbout = (a: SheetPoint, b: SheetPoint) => {
	const middle = between(a, b, 0.5);
	return ({ x, y }: SheetPoint): SheetPoint => at(2 * middle.x - x, 2 * middle.y - y);
};

/** The places moved, turned and scaled alike, so that `a` and `b` come to lie on `c` and `d`. */
export const carried = (a: SheetPoint, b: SheetPoint, c: SheetPoint, d: SheetPoint) => {
	const [x, y, u, v] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
	const size = x * x + y * y;
	const [cos, sin] = size === 0 ? [1, 0] : [(x * u + y * v) / size, (x * v - y * u) / size];
	return (place: SheetPoint): SheetPoint => {
		const [px, py] = [place.x - a.x, place.y - a.y];
		return at(c.x + px * cos - py * sin, c.y + px * sin + py * cos);
	};
};
