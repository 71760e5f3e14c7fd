import { distance, type SheetPoint } from '#geometry/point.ts';
import { greatestOf, inverted } from './normal.ts';
import {
	lengthOf,
	pinnedFrom,
	rowOf,
	spreadOf,
	unknownsOf,
	type Held,
	type Pair,
	type Row,
	mirroredBy
} from './net.ts';

/** Which distances are taken: chosen so that the worst point's error is least, and so that a misreading is seen. */

/** How many more distances than the fewest are taken, as a share of these: what is left over shows a misreading. */
const MORE = 0.2;
/** As many distances as this at each point name the one of them that was misread: what three leave open, a fourth settles. */
const NAMES = 4;
/** With fewer at a point, a misreading there would not even be seen. */
const SHOWS = 3;
/** Tape and pencil are as wide as a good part of a shorter distance. */
const LEAST = 30;
/** The most exchanges that are made, and for each coming distance the most that are tried to go. */
const [EXCHANGES, TRIED] = [40, 4] as const;
/** A distance of which less than this is told by the others would hide its misreading: 10 cm would show as 1 cm. */
const SEEN = 0.1;
/** What a hidden misreading costs beside the worst point's error, in squares of a reading's error. */
const HIDDEN = 20;
/** What all points' errors count beside that of the worst. */
const MEAN = 0.5;

/** A distance must be so much longer or shorter on the other side, in mm, for a tape to tell the two apart; nearer sides are one. */
const TOLD_APART = 20;

/** Whether a point could as well lie on the other side of those from which it is measured. */
const isTwoSided = (point: SheetPoint, from: readonly SheetPoint[]): boolean => {
	const other = mirroredBy(point, from);
	if (distance(point, other) < TOLD_APART) return false;
	return from.every((each) => Math.abs(distance(each, other) - distance(each, point)) < TOLD_APART);
};

/** A net of distances under way: which are taken, and the inverse of their normal equations. */
interface Net {
	readonly taken: readonly number[];
	readonly inverse: Float64Array;
}

/** How many distances pin so many points down at the least, and how many are taken. */
export const howMany = (points: number): { readonly least: number; readonly most: number } => {
	const least = unknownsOf(points);
	return { least, most: Math.min(Math.floor(least * (1 + MORE)), (points * (points - 1)) / 2) };
};

/** Chooses the distances between points that lie at these places. */
export class Choice {
	readonly #places: readonly SheetPoint[];
	readonly #held: Held;
	readonly #pairs: readonly Pair[];
	readonly #rows: readonly Row[];
	readonly #size: number;

	constructor(places: readonly SheetPoint[], held: Held, reach: number) {
		this.#places = places;
		this.#held = held;
		this.#size = unknownsOf(places.length);
		this.#pairs = places.flatMap((_, from) =>
			places.slice(from + 1).flatMap((_, more): Pair[] => {
				const pair = { from, to: from + 1 + more };
				const length = lengthOf(pair, places);
				return length <= reach && length >= LEAST ? [pair] : [];
			})
		);
		this.#rows = this.#pairs.map((pair) => rowOf(pair, places, held));
	}

	/** The pairs that are measured; none where no such distances pin the points down. */
	chosen(): readonly Pair[] {
		const all = this.#begun();
		if (!all) return [];
		const { taken } = this.#exchanged(this.#thinned(all));
		return taken.flatMap((each) => this.#pairs[each] ?? []);
	}

	#begun(): Net | undefined {
		const size = this.#size;
		const matrix = new Float64Array(size * size);
		for (const { at, by } of this.#rows)
			for (const [i, row] of at.entries())
				for (const [j, column] of at.entries())
					matrix[row * size + column] = (matrix[row * size + column] ?? 0) + (by[i] ?? 0) * (by[j] ?? 0);
		const inverse = inverted(matrix, size);
		return inverse && { taken: this.#pairs.map((_, i) => i), inverse };
	}

	/** The inverse times a row, and how much of the row's own distance it tells. */
	#seen({ inverse }: Net, each: number): { readonly column: Float64Array; readonly told: number } {
		const size = this.#size;
		const { at, by } = this.#rows[each] ?? { at: [], by: [] };
		const column = new Float64Array(size);
		for (const [i, row] of at.entries()) {
			const share = by[i] ?? 0;
			for (let k = 0; k < size; k++) column[k] = (column[k] ?? 0) + share * (inverse[row * size + k] ?? 0);
		}
		return { column, told: at.reduce((sum, row, i) => sum + (by[i] ?? 0) * (column[row] ?? 0), 0) };
	}

	/** How much of a distance its net tells with it: what is less than 1 is told by the others. */
	#told({ inverse }: Net, each: number): number {
		const { at, by } = this.#rows[each] ?? { at: [], by: [] };
		let told = 0;
		for (const [i, row] of at.entries())
			for (const [j, column] of at.entries())
				told += (by[i] ?? 0) * (by[j] ?? 0) * (inverse[row * this.#size + column] ?? 0);
		return told;
	}

	/** How much greater all points' errors together become without a distance. */
	#loss(net: Net, each: number): number {
		const { column, told } = this.#seen(net, each);
		return told > 1 - 1e-6 ? Infinity : column.reduce((sum, share) => sum + share * share, 0) / (1 - told);
	}

	/** The net with one distance more, or less. Undefined where what is left pins nothing down. */
	#changed(net: Net, each: number, way: 'with' | 'without'): Net | undefined {
		const { column, told } = this.#seen(net, each);
		const by = way === 'with' ? -1 / (1 + told) : 1 / (1 - told);
		if (way === 'without' && told > 1 - 1e-6) return undefined;
		const size = this.#size;
		const inverse = Float64Array.from(net.inverse);
		for (let row = 0; row < size; row++) {
			const share = by * (column[row] ?? 0);
			if (share === 0) continue;
			for (let k = 0; k < size; k++)
				inverse[row * size + k] = (inverse[row * size + k] ?? 0) + share * (column[k] ?? 0);
		}
		const taken = way === 'with' ? [...net.taken, each] : net.taken.filter((other) => other !== each);
		return { taken, inverse };
	}

	#degrees(taken: readonly number[]): readonly number[] {
		const degrees = this.#places.map(() => 0);
		for (const each of taken) {
			const pair = this.#pairs[each];
			for (const point of pair ? [pair.from, pair.to] : []) degrees[point] = (degrees[point] ?? 0) + 1;
		}
		return degrees;
	}

	/** Whether each point is found from two that were found before it. */
	#leads(taken: readonly number[]): boolean {
		const pairs = taken.flatMap((each) => this.#pairs[each] ?? []);
		const { origin } = this.#held;
		const begins = pairs.filter(({ from, to }) => from === origin || to === origin);
		return begins.some(
			(first) => pinnedFrom(first, pairs, this.#places.length).length === this.#places.length
		);
	}

	/** How many points, or groups of such, could as well lie on the other side of those from which they are measured. */
	#unsettled(taken: readonly number[]): number {
		const pairs = taken.flatMap((each) => this.#pairs[each] ?? []);
		const single = this.#places.filter((place, point) => {
			const from = pairs.flatMap((pair) => {
				const other = pair.from === point ? pair.to : pair.to === point ? pair.from : undefined;
				return other === undefined ? [] : (this.#places[other] ?? []);
			});
			return isTwoSided(place, from);
		}).length;
		return single + this.#groups(pairs, ({ x }) => x) + this.#groups(pairs, ({ y }) => y);
	}

	/** How many groups more than one hang together only by points of the line through the origin on which many lie. */
	#groups(pairs: readonly Pair[], beside: (place: SheetPoint) => number): number {
		const origin = this.#places[this.#held.origin];
		const group = this.#places.map((place, point) =>
			origin && Math.abs(beside(place) - beside(origin)) < TOLD_APART / 2 ? -1 : point
		);
		for (const { from, to } of pairs) {
			const [a = -1, b = -1] = [group[from], group[to]];
			if (a < 0 || b < 0 || a === b) continue;
			for (const [point, each] of group.entries()) if (each === b) group[point] = a;
		}
		return Math.max(0, new Set(group.filter((each) => each >= 0)).size - 1);
	}

	/** Takes out what tells least, until no more are left than are wanted. */
	#thinned(all: Net): Net {
		const count = this.#places.length;
		const { most } = howMany(count);
		let least = Math.min(NAMES, Math.floor((2 * most) / count));
		let net = all;
		const firm = new Set<number>();
		while (net.taken.length > most) {
			const degrees = this.#degrees(net.taken);
			const spare = (each: number): boolean => {
				const { from = 0, to = 0 } = this.#pairs[each] ?? {};
				return (degrees[from] ?? 0) > least && (degrees[to] ?? 0) > least;
			};
			const [out] = net.taken
				.filter((each) => !firm.has(each) && spare(each))
				.map((each) => ({ each, loss: this.#loss(net, each) }))
				.toSorted((a, b) => a.loss - b.loss);
			if (!out && least <= SHOWS) return net;
			if (!out) {
				least -= 1;
				continue;
			}
			const left = this.#changed(net, out.each, 'without');
			const leads = net.taken.length > 2 * most || (left && this.#leads(left.taken));
			if (left && leads && this.#unsettled(left.taken) <= this.#unsettled(net.taken)) net = left;
			else firm.add(out.each);
		}
		return net;
	}

	/** What a net costs: the worst point's error, and what hides a misreading. */
	#cost(net: Net): number {
		let [worst, sum] = [0, 0];
		for (const point of this.#places.keys()) {
			const error = greatestOf(...spreadOf(point, net.inverse, this.#places, this.#held));
			worst = Math.max(worst, error);
			sum += error;
		}
		const hidden = net.taken.reduce((all, each) => all + Math.max(0, SEEN - 1 + this.#told(net, each)), 0);
		return worst + (MEAN * sum) / this.#places.length + HIDDEN * hidden;
	}

	/** Exchanges one distance for another, at the worst point or at one of those that hold the rest, for as long as that makes it better. */
	#exchanged(begun: Net): Net {
		let net = begun;
		let cost = this.#cost(net);
		for (let turn = 0; turn < EXCHANGES; turn++) {
			const better = this.#better(net, cost);
			if (!better) return net;
			net = better;
			cost = this.#cost(net);
		}
		return net;
	}

	#better(net: Net, cost: number): Net | undefined {
		const errors = this.#places.map((_, point) =>
			greatestOf(...spreadOf(point, net.inverse, this.#places, this.#held))
		);
		const ends = [errors.indexOf(Math.max(...errors)), this.#held.origin, this.#held.axis];
		const least = Math.min(...this.#degrees(net.taken));
		const unsettled = this.#unsettled(net.taken);
		const ins = this.#pairs.flatMap(({ from, to }, each) =>
			ends.some((end) => from === end || to === end) && !net.taken.includes(each) ? [each] : []
		);
		const tried = ins.flatMap((each) => {
			const more = this.#changed(net, each, 'with');
			if (!more) return [];
			const outs = more.taken
				.filter((other) => other !== each)
				.map((out) => ({ out, loss: this.#loss(more, out) }))
				.toSorted((a, b) => a.loss - b.loss)
				.slice(0, TRIED);
			return outs.flatMap(({ out }) => {
				const swapped = this.#changed(more, out, 'without');
				return swapped ? [{ swapped, cost: this.#cost(swapped) }] : [];
			});
		});
		return tried
			.filter((each) => each.cost < cost - 1e-6)
			.toSorted((a, b) => a.cost - b.cost)
			.find(
				({ swapped: { taken } }) =>
					Math.min(...this.#degrees(taken)) >= least &&
					this.#unsettled(taken) <= unsettled &&
					this.#leads(taken)
			)?.swapped;
	}
}
