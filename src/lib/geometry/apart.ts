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
	/**
	 * The least of x, of -x, of y and of -y on the whole chain, then on each half of it, then on each half of those, down to
	 * a few chords: the halves of number n are 2n + 1 and 2n + 2.
	 */
	readonly boxes: Float64Array;
}

/** Chords that are not halved any more. */
const FEW = 8;

/** Works the box of the places from one to another, both included, and of all its halves. */
const fillBoxes = (
	places: readonly SheetPoint[],
	boxes: Float64Array,
	box: number,
	from: number,
	to: number
): void => {
	const hold = (side: number, least = Infinity): void => {
		boxes[4 * box + side] = Math.min(boxes[4 * box + side] ?? least, least);
	};
	boxes.fill(Infinity, 4 * box, 4 * box + 4);
	if (to - from <= FEW) {
		for (let i = from; i <= to; i++) {
			const { x, y } = places[i] ?? at(0, 0);
			hold(0, x);
			hold(1, -x);
			hold(2, y);
			hold(3, -y);
		}
		return;
	}
	const middle = (from + to) >> 1;
	fillBoxes(places, boxes, 2 * box + 1, from, middle);
	fillBoxes(places, boxes, 2 * box + 2, middle, to);
	for (const half of [8 * box + 4, 8 * box + 8])
		for (let side = 0; side < 4; side++) hold(side, boxes[half + side]);
};

const chainOf = (path: Path, most?: number): Chain => {
	const places = pathSamples(path, SAMPLE_STEP, most);
	const along = new Float64Array(places.length);
	for (let i = 1; i < places.length; i++) {
		const [a, b] = [places[i - 1], places[i]];
		if (a && b) along[i] = (along[i - 1] ?? 0) + distance(a, b);
	}
	// As many halvings as leave few chords in each part, and a box for each part.
	const halvings = Math.max(0, Math.ceil(Math.log2(places.length / FEW)));
	const boxes = new Float64Array(4 * 2 ** (halvings + 1));
	fillBoxes(places, boxes, 0, 0, places.length - 1);
	return { places, along, boxes };
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

/** Taken off the distance that may be passed over, so that rounding passes over nothing nearer. */
const ROUNDING = 1e-9;
/** No place is nearer than this, so that a search goes on to the end. */
const NEVER_ENOUGH: Mm = mm(-1);

/** A search for the place of a chain that is nearest to another: the best so far, and its squared distance. */
interface Search {
	readonly p: SheetPoint;
	readonly chain: Chain;
	/** The squared distance at which the search may end. */
	readonly target: number;
	best: SheetPoint;
	least: number;
}

/** Looks at the chords from one place to another. */
const lookAlong = (search: Search, from: number, to: number): void => {
	const { p, chain } = search;
	for (let chord = from; chord < to; chord++) {
		const a = chain.places[chord] ?? p;
		const b = chain.places[chord + 1] ?? a;
		const share = nearestShare(p, a, b);
		const x = a.x + share * (b.x - a.x);
		const y = a.y + share * (b.y - a.y);
		const gap = (x - p.x) ** 2 + (y - p.y) ** 2;
		if (gap < search.least) {
			search.best = at(x, y);
			search.least = gap;
		}
	}
};

/** The squared distance from a place to a box of a chain; nothing within it. */
const toBox = ({ p, chain: { boxes } }: Search, box: number): number => {
	const across = Math.max((boxes[4 * box] ?? 0) - p.x, 0, p.x + (boxes[4 * box + 1] ?? 0));
	const down = Math.max((boxes[4 * box + 2] ?? 0) - p.y, 0, p.y + (boxes[4 * box + 3] ?? 0));
	return across * across + down * down;
};

/** Looks in the nearer half of a part of a chain, then in the other, each only where its box is nearer than the best so far. */
const lookIn = (search: Search, box: number, from: number, to: number): void => {
	if (to - from <= FEW) {
		lookAlong(search, from, to);
		return;
	}
	const middle = (from + to) >> 1;
	const [one, other] = [2 * box + 1, 2 * box + 2];
	const [gapOne, gapOther] = [toBox(search, one), toBox(search, other)];
	const isOpen = (gap: number): boolean => gap < search.least && search.least > search.target;
	if (gapOne <= gapOther && isOpen(gapOne)) lookIn(search, one, from, middle);
	if (isOpen(gapOther)) lookIn(search, other, middle, to);
	if (gapOne > gapOther && isOpen(gapOne)) lookIn(search, one, from, middle);
};

/**
 * The nearest place on a chain, looked for first at its chord number `start`. The search ends early with any place no
 * further away than `enough`.
 */
const nearestOnChain = (p: SheetPoint, chain: Chain, start = 0, enough = NEVER_ENOUGH): Near => {
	const best = chain.places[0] ?? p;
	const least = (best.x - p.x) ** 2 + (best.y - p.y) ** 2;
	const search: Search = { p, chain, target: enough < 0 ? -1 : enough * enough, best, least };
	const last = chain.places.length - 1;
	lookAlong(search, start, Math.min(start + 1, last));
	if (search.least > search.target) lookIn(search, 0, 0, last);
	return { point: search.best, away: mm(Math.sqrt(search.least)) };
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
