import type { Mm } from '#shared/units.ts';
import type { Path } from './path.ts';
import { distance, type SheetPoint } from './point.ts';
import { segmentPoint, type CubicSegment } from './segment.ts';

/** Places between two points of a curve at which its distance from the chord is measured. */
const PROBES = 16;
/** Halvings of a parameter step: finer than any drawing is written. */
const HALVINGS = 24;

/** How far a curve strays from the chord between two of its parameters. */
const strayed = (curve: CubicSegment, from: number, to: number): number => {
	const [a, b] = [segmentPoint(curve, from), segmentPoint(curve, to)];
	const chord = distance(a, b);
	let most = 0;
	for (let i = 1; i < PROBES; i++) {
		const p = segmentPoint(curve, from + ((to - from) * i) / PROBES);
		const off =
			chord === 0 ? distance(a, p) : Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / chord;
		most = Math.max(most, off);
	}
	return most;
};

/** The furthest parameter to which one chord may reach from `from`. */
const reach = (curve: CubicSegment, from: number, within: Mm): number => {
	if (strayed(curve, from, 1) <= within) return 1;
	let [good, bad] = [from, 1];
	for (let i = 0; i < HALVINGS; i++) {
		const middle = (good + bad) / 2;
		if (strayed(curve, from, middle) <= within) good = middle;
		else bad = middle;
	}
	return good;
};

/** The fewest chords. */
const curvePlaces = (curve: CubicSegment, within: Mm): readonly SheetPoint[] => {
	const places: SheetPoint[] = [];
	for (let from = 0; from < 1;) {
		const next = reach(curve, from, within);
		from = next <= from ? 1 : next;
		places.push(from === 1 ? curve.to : segmentPoint(curve, from));
	}
	return places;
};

/**
 * A path as a chain of straight chords that nowhere stray from it by more than `within`, with as few points as
 * chords with both ends on the curve can have. Corners and the ends of straight parts are kept exactly.
 */
export const flattened = (path: Path, within: Mm): readonly SheetPoint[] => [
	path[0].from,
	...path.flatMap((segment) => (segment.kind === 'straight' ? [segment.to] : curvePlaces(segment, within)))
];
