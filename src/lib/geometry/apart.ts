import { mm, type Mm } from '#shared/units.ts';
import { pathSamples, type Path } from './path.ts';
import { at, distance, type SheetPoint } from './point.ts';

/** Step at which curves are sampled to be compared: its chord lies within 0.0025 mm of a curve of 50 mm radius. */
const SAMPLE_STEP: Mm = mm(1);
/** Samples of one path at the most: a metre of curve at the least, and three of one with even handles. A longer one is no seam, and must not hold up whoever checks it. */
const MOST_SAMPLES = 3000;
/** Samples of a path at the most that is compared with another, beside twice those of the other. */
const SPARE_SAMPLES = 500;

/** A sampled path, as the straight chords from each place to the next. */
interface Chain {
	readonly places: readonly SheetPoint[];
	/** How far along the chords each place lies. */
	readonly along: Float64Array;
}

const chainOf = (path: Path, most?: number): Chain => {
	const places = pathSamples(path, SAMPLE_STEP, most);
	const along = new Float64Array(places.length);
	for (let i = 1; i < places.length; i++) {
		const [a, b] = [places[i - 1], places[i]];
		if (a && b) along[i] = (along[i - 1] ?? 0) + distance(a, b);
	}
	return { places, along };
};

/** How far along the straight piece from `a` to `b`, 0 to 1, the place nearest to `p` lies. */
const nearestShare = (p: SheetPoint, a: SheetPoint, b: SheetPoint): number => {
	const [x, y] = [b.x - a.x, b.y - a.y];
	const size = x * x + y * y;
	return size === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / size));
};

/** The nearest place found on a chain. */
interface Near {
	readonly point: SheetPoint;
	readonly away: Mm;
}

/** The first place, going from one by steps of 1 or -1, that lies further along than `by`; past the chain's end where none does. */
const furtherAlong = ({ along }: Chain, from: number, step: 1 | -1, by: number): number => {
	const start = along[from] ?? 0;
	let [near, far] = [from, step === 1 ? along.length : -1];
	// Steps that double, then halving between the last two.
	for (let ahead = from + step, wide = 2; (far - ahead) * step > 0; ahead += step * wide, wide *= 2) {
		if (Math.abs((along[ahead] ?? 0) - start) > by) far = ahead;
		else near = ahead;
	}
	while ((far - near) * step > 1) {
		const middle = (near + far) >> 1;
		if (Math.abs((along[middle] ?? 0) - start) > by) far = middle;
		else near = middle;
	}
	return far;
};

/** Taken off the distance that may be passed over, so that rounding passes over nothing nearer. */
const ROUNDING = 1e-9;
/** No place is nearer than this, so that a search goes on to the end. */
const NEVER_ENOUGH: Mm = mm(-1);

/**
 * The nearest place on a chain, looked for outward from its chord number `start`. The search ends early with any place no
 * further away than `enough`. From a chord at some distance no place along the chain comes nearer by more than the way to
 * it, so all chords are passed over that lie too near to that one to beat the nearest so far.
 */
const nearestOnChain = (p: SheetPoint, chain: Chain, start = 0, enough = NEVER_ENOUGH): Near => {
	const { places } = chain;
	const target = enough < 0 ? -1 : enough * enough;
	let best = places[0] ?? p;
	// Squared until the end: a check of a curve tries thousands of chords.
	let least = (best.x - p.x) ** 2 + (best.y - p.y) ** 2;
	const chords = places.length - 1;
	let [up, down] = [start, start - 1];
	while ((up < chords || down >= 0) && least > target) {
		const goesUp = down < 0 || (up < chords && up - start < start - down);
		const chord = goesUp ? up : down;
		const a = places[chord] ?? p;
		const b = places[chord + 1] ?? a;
		const share = nearestShare(p, a, b);
		const x = a.x + share * (b.x - a.x);
		const y = a.y + share * (b.y - a.y);
		const gap = (x - p.x) ** 2 + (y - p.y) ** 2;
		if (gap < least) {
			best = at(x, y);
			least = gap;
		}
		const spare = gap > least ? Math.sqrt(gap) - Math.sqrt(least) - ROUNDING : 0;
		// A chord is passed over where even its far end, seen from this one's near end, is not far enough.
		if (goesUp) up = furtherAlong(chain, chord + 1, 1, spare) - 1;
		else down = furtherAlong(chain, chord, -1, spare);
	}
	return { point: best, away: mm(Math.sqrt(least)) };
};

/** The chains of paths of which a nearest place was asked for: it is asked for again, all over a piece or along a stroke. */
const CHAINS = new WeakMap<Path, Chain>();

/** The place of a path nearest to `p`, within 0.01 mm. */
export const nearestOnPath = (path: Path, p: SheetPoint): SheetPoint => {
	const chain = CHAINS.get(path) ?? chainOf(path);
	CHAINS.set(path, chain);
	return nearestOnChain(p, chain).point;
};

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

/** Marks the places of a chain that lie no further along from one than `by`, outward as far as they are not marked yet. */
const markBeside = (done: Uint8Array, { along }: Chain, from: number, by: number): void => {
	const start = along[from] ?? 0;
	for (const step of [1, -1])
		for (let i = from + step; done[i] === 0 && Math.abs((along[i] ?? 0) - start) < by; i += step) done[i] = 1;
};

/**
 * The place of a chain furthest from another chain. Places are taken far apart rather than in turn, so that a
 * great distance is met early; after that one is done with as soon as any place no further away is seen, and with it
 * all that lie so near that they cannot be further away.
 */
const furthestFrom = (chain: Chain, others: Chain): Apartness => {
	const { places } = chain;
	const count = places.length;
	const step = scatteredStep(count);
	const first = places[0] ?? at(0, 0);
	const done = new Uint8Array(count);
	let worst: Apartness = { away: mm(0), on: first, nearest: first };
	for (let i = 0; i < count; i++) {
		const index = (i * step) % count;
		const on = places[index] ?? first;
		if (done[index] === 1) continue;
		const opposite = Math.floor((index / count) * (others.places.length - 1));
		const { point: nearest, away } = nearestOnChain(on, others, opposite, worst.away);
		if (away > worst.away) worst = { away, on, nearest };
		markBeside(done, chain, index, worst.away - away - ROUNDING);
	}
	return worst;
};

/**
 * The greatest distance both ways between two paths (Hausdorff's): how far the first strays from the
 * second or leaves it uncovered, whichever is more. `on` lies on the first path, `nearest` on the second. A first path
 * that is several times as long as the second is sampled more coarsely: its distance is far too great, whatever its digits.
 */
export const greatestDistance = (first: Path, second: Path): Apartness => {
	const b = chainOf(second, MOST_SAMPLES);
	const a = chainOf(first, Math.min(MOST_SAMPLES, SPARE_SAMPLES + 2 * b.places.length));
	const [there, back] = [furthestFrom(a, b), furthestFrom(b, a)];
	return there.away >= back.away ? there : { away: back.away, on: back.nearest, nearest: back.on };
};
