import { mm, type Mm } from '#shared/units.ts';
import { pathSamples, type Path } from './path.ts';
import { at, distance, type SheetPoint } from './point.ts';

/** Step at which curves are sampled to be compared: its chord lies within 0.0025 mm of a curve of 50 mm radius. */
const SAMPLE_STEP: Mm = mm(1);

/** The nearest place on a straight piece. */
const nearestOnStraight = (p: SheetPoint, a: SheetPoint, b: SheetPoint): SheetPoint => {
	const [x, y] = [b.x - a.x, b.y - a.y];
	const size = x * x + y * y;
	const share = size === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / size));
	return at(a.x + share * x, a.y + share * y);
};

const nearestOnSamples = (p: SheetPoint, samples: readonly SheetPoint[]): { point: SheetPoint; away: Mm } => {
	let best = samples[0] ?? p;
	let away = distance(p, best);
	let before = best;
	for (const sample of samples) {
		const near = nearestOnStraight(p, before, sample);
		const gap = distance(p, near);
		if (gap < away) [best, away] = [near, gap];
		before = sample;
	}
	return { point: best, away };
};

/** The place of a path nearest to `p`, within 0.01 mm. */
export const nearestOnPath = (path: Path, p: SheetPoint): SheetPoint =>
	nearestOnSamples(p, pathSamples(path, SAMPLE_STEP)).point;

/** The greatest distance of one path from another, and where it lies. */
export interface Apartness {
	readonly away: Mm;
	readonly on: SheetPoint;
	readonly nearest: SheetPoint;
}

const furthestFrom = (samples: readonly SheetPoint[], others: readonly SheetPoint[]): Apartness => {
	const start = samples[0] ?? at(0, 0);
	let worst: Apartness = { away: mm(0), on: start, nearest: start };
	for (const on of samples) {
		const { point: nearest, away } = nearestOnSamples(on, others);
		if (away > worst.away) worst = { away, on, nearest };
	}
	return worst;
};

/**
 * The greatest distance both ways between two paths (Hausdorff's): how far the first strays from the
 * second or leaves it uncovered, whichever is more. `on` lies on the first path, `nearest` on the second.
 */
export const greatestDistance = (first: Path, second: Path): Apartness => {
	const [a, b] = [pathSamples(first, SAMPLE_STEP), pathSamples(second, SAMPLE_STEP)];
	const [there, back] = [furthestFrom(a, b), furthestFrom(b, a)];
	return there.away >= back.away ? there : { away: back.away, on: back.nearest, nearest: back.on };
};
