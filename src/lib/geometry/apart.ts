import { mm, type Mm } from '#shared/units.ts';
import { pathSamples, type Path } from './path.ts';
import { at, type SheetPoint } from './point.ts';

/** Step at which curves are sampled to be compared: its chord lies within 0.0025 mm of a curve of 50 mm radius. */
const SAMPLE_STEP: Mm = mm(1);
/** Samples of one path at the most: three metres of curve. A longer one is no seam, and must not hold up whoever checks it. */
const MOST_SAMPLES = 9000;

/** How far along the straight piece from `a` to `b`, 0 to 1, the place nearest to `p` lies. */
const nearestShare = (p: SheetPoint, a: SheetPoint, b: SheetPoint): number => {
	const [x, y] = [b.x - a.x, b.y - a.y];
	const size = x * x + y * y;
	return size === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / size));
};

/** The nearest place found on a sampled path. */
interface Near {
	readonly point: SheetPoint;
	readonly away: Mm;
}

/** No place is nearer than this, so that a search goes on to the end. */
const NEVER_ENOUGH: Mm = mm(-1);

/**
 * The nearest place on a sampled path, looked for outward from its chord number `start`. The search
 * ends early with any place no further away than `enough`. Distances stay squared until the end,
 * because a check of a curve tries some ten thousand chords.
 */
const nearestOnSamples = (
	p: SheetPoint,
	samples: readonly SheetPoint[],
	start = 0,
	enough = NEVER_ENOUGH
): Near => {
	const chords = samples.length - 1;
	const target = enough < 0 ? -1 : enough * enough;
	let best = samples[0] ?? p;
	let least = (best.x - p.x) ** 2 + (best.y - p.y) ** 2;
	for (let k = 0; k <= 2 * chords && least > target; k++) {
		const chord = start + (k % 2 === 0 ? k / 2 : -(k + 1) / 2);
		const [a, b] = [samples[chord], samples[chord + 1]];
		if (!a || !b) continue;
		const share = nearestShare(p, a, b);
		const [x, y] = [a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)];
		const gap = (x - p.x) ** 2 + (y - p.y) ** 2;
		if (gap < least) [best, least] = [at(x, y), gap];
	}
	return { point: best, away: mm(Math.sqrt(least)) };
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

const greatestCommonDivisor = (a: number, b: number): number =>
	b === 0 ? a : greatestCommonDivisor(b, a % b);

/** Step, sharing no factor with `count`, that goes through all of so many samples far apart: near the golden share. */
const scatteredStep = (count: number): number => {
	let step = Math.max(1, Math.round(count * 0.618));
	while (greatestCommonDivisor(count, step) > 1) step += 1;
	return step;
};

/**
 * The sample furthest from another sampled path. Samples are taken far apart rather than in turn, so that a
 * great distance is met early; after that a sample is done with as soon as any place no further away is seen.
 */
const furthestFrom = (samples: readonly SheetPoint[], others: readonly SheetPoint[]): Apartness => {
	const count = samples.length;
	const step = scatteredStep(count);
	const first = samples[0] ?? at(0, 0);
	let worst: Apartness = { away: mm(0), on: first, nearest: first };
	for (let i = 0; i < count; i++) {
		const index = (i * step) % count;
		const on = samples[index] ?? first;
		const opposite = Math.floor((index / count) * (others.length - 1));
		const { point: nearest, away } = nearestOnSamples(on, others, opposite, worst.away);
		if (away > worst.away) worst = { away, on, nearest };
	}
	return worst;
};

/**
 * The greatest distance both ways between two paths (Hausdorff's): how far the first strays from the
 * second or leaves it uncovered, whichever is more. `on` lies on the first path, `nearest` on the second.
 */
export const greatestDistance = (first: Path, second: Path): Apartness => {
	const sampled = (path: Path): readonly SheetPoint[] => pathSamples(path, SAMPLE_STEP, MOST_SAMPLES);
	const [a, b] = [sampled(first), sampled(second)];
	const [there, back] = [furthestFrom(a, b), furthestFrom(b, a)];
	return there.away >= back.away ? there : { away: back.away, on: back.nearest, nearest: back.on };
};
