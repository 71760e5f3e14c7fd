import { mm, type Mm } from '#shared/units.ts';
import { greatestDistance } from '#geometry/apart.ts';
import { chordDistance } from '#geometry/chord.ts';
import { pathEnd, pathLength, pathReversed, pathStart, polyline, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic, segmentPoint } from '#geometry/segment.ts';

/** How a line that was tapped place by place differs from the computed one. */
export interface LineDifference {
	/** Greatest distance between the two, and where on the tapped line it is. */
	readonly greatest: Mm;
	readonly where: SheetPoint;
	/** How far its ends lie from those of the computed line. */
	readonly start: Mm;
	readonly end: Mm;
	/** How much longer it is; less than nothing where it is shorter. */
	readonly longer: Mm;
	/** How much deeper it bends away from the straight way between its ends; less than nothing where it is flatter. None for a line that is straight. */
	readonly deeper: Mm | undefined;
}

/** A line bends where it leaves its chord by this: less is not drawn on purpose. */
const BENT: Mm = mm(2);

/** A smooth line through places in turn: at each it runs as its neighbours lie, and near it no further than they are (Catmull and Rom 1974, with chords' lengths). */
export const lineThrough = (first: SheetPoint, second: SheetPoint, ...rest: readonly SheetPoint[]): Path => {
	const places = [first, second, ...rest];
	if (rest.length === 0) return polyline(first, second);
	const tangent = (i: number): { readonly x: number; readonly y: number } => {
		const here = places[i] ?? first;
		const [before, after] = [places[i - 1], places[i + 1]];
		if (!before || !after) {
			// At an end: so that the curve of its last three places goes on as it comes.
			const [next, over] = before
				? [before, places[i - 2] ?? before]
				: [after ?? here, places[i + 2] ?? here];
			const [p, q] = [distance(here, next), distance(next, over)];
			const side = before ? -1 : 1;
			const slope = (axis: 'x' | 'y'): number => {
				const [one, two] = [(next[axis] - here[axis]) / p, (over[axis] - next[axis]) / q];
				return side * (one - ((two - one) * p) / (p + q));
			};
			return { x: slope('x'), y: slope('y') };
		}
		const [p, q] = [distance(before, here), distance(here, after)];
		const slope = (axis: 'x' | 'y'): number =>
			(((here[axis] - before[axis]) / p) * q + ((after[axis] - here[axis]) / q) * p) / (p + q);
		return { x: slope('x'), y: slope('y') };
	};
	const piece = (i: number): Path[number] => {
		const [from, to] = [places[i] ?? first, places[i + 1] ?? second];
		const [leaving, arriving] = [tangent(i), tangent(i + 1)];
		const third = distance(from, to) / 3;
		return cubic(
			from,
			at(from.x + leaving.x * third, from.y + leaving.y * third),
			at(to.x - arriving.x * third, to.y - arriving.y * third),
			to
		);
	};
	return [piece(0), ...places.slice(2).map((_, i) => piece(i + 1))];
};

/** How far a line leaves the straight way between its ends, at most; on which side, its sign says. */
const depthOf = (path: Path, samples: readonly SheetPoint[]): number => {
	const [from, to] = [pathStart(path), pathEnd(path)];
	const sides = samples.map((place) => {
		const turn = (to.x - from.x) * (place.y - from.y) - (to.y - from.y) * (place.x - from.x);
		return Math.sign(turn) * chordDistance(from, to, place);
	});
	return sides.reduce((most, each) => (Math.abs(each) > Math.abs(most) ? each : most), 0);
};

const placesOf = (path: Path): readonly SheetPoint[] =>
	path.flatMap((segment) => Array.from({ length: 16 }, (_, i) => segmentPoint(segment, (i + 1) / 16)));

/** Compares a tapped line with the computed one; it may have been tapped from either end. */
export const lineDifference = (tapped: Path, right: Path): LineDifference => {
	const turned =
		distance(pathStart(tapped), pathStart(right)) + distance(pathEnd(tapped), pathEnd(right)) >
		distance(pathEnd(tapped), pathStart(right)) + distance(pathStart(tapped), pathEnd(right));
	const own = turned ? pathReversed(tapped) : tapped;
	const { away: greatest, on: where } = greatestDistance(own, right);
	const [depth, wanted] = [depthOf(own, placesOf(own)), depthOf(right, placesOf(right))];
	return {
		greatest,
		where,
		start: distance(pathStart(own), pathStart(right)),
		end: distance(pathEnd(own), pathEnd(right)),
		longer: mm(pathLength(own) - pathLength(right)),
		deeper: Math.abs(wanted) < BENT ? undefined : mm(Math.sign(wanted) * depth - Math.abs(wanted))
	};
};
