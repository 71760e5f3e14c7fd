import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { among, begunWith, heldBy, placed } from './begin.ts';
import { turned, turnOf } from './frame.ts';
import { lengthOf, mirroredBy } from './net.ts';
import { settled, spareOf, type Reading, type Solution } from './solve.ts';

/** Where the points of a draft lie by readings of which some may be wrong. */

/** The points whose distances are read. */
export interface Sheet {
	/** Where each would lie in a draft without a fault. */
	readonly should: readonly SheetPoint[];
	/** From where everything is drawn. */
	readonly origin: number;
	/** The points that show how the sheet is turned. */
	readonly showing: readonly number[];
}

/** Where some of the points lie, on the sheet. */
export interface Laid {
	/** Their numbers, in the order of the solution. */
	readonly points: readonly number[];
	readonly solution: Solution;
}

/** Readings that do not agree with the others. */
export interface Doubted {
	/** The ones of which one is wrong: only one where it is plain which. */
	readonly readings: readonly Reading[];
	/** What the others say that each should read, in mm. */
	readonly told: readonly number[];
}

/** What readings say. */
export interface Said {
	/** Undefined where they pin nothing down. */
	readonly laid: Laid | undefined;
	readonly doubted: readonly Doubted[];
}

/** As many misreadings are looked for. */
const MOST_MISREAD = 3;
/** The readings that one alone may be wrong of that are told; more would be no help. */
const MOST_TOLD = 3;
/** How much likelier one must be than another to be named alone: twenty times. */
const PLAIN = Math.log(20);
/** A drafter's slip of this size, in mm, is about as likely as none: what is much larger is the likelier misreading. */
const USUAL_SLIP = 8;
/** Beyond this, in mm, a point is simply elsewhere. */
const FAR = 60;
/** As many readings are looked at, those that miss most. */
const SUSPECTS = 10;
/** What each reading that is taken for wrong must take off the misses' squares at least: more than the worst of plain ones does. */
const GAIN = 10;
/** How unlikely it is that a reading is wrong, and off by just so much: one in a hundred is, by any of a hundred amounts. */
const MISREAD = Math.log(100 * 100);
/** A reading is named only where it is off by so many times what it may be off by. */
const NAMED = 4;

/** What the misses' squares come to at the most in 999 of 1000 cases where no reading is wrong (Wilson and Hilferty's approximation to chi-square). */
const mostMisses = (spare: number): number => {
	if (spare <= 0) return Infinity;
	const ninth = 2 / (9 * spare);
	return spare * (1 - ninth + 3.09 * Math.sqrt(ninth)) ** 3;
};

/** How far places lie from where they should, all together; one that lies very far says no more than one that lies far. */
const farFrom = (places: readonly SheetPoint[], should: readonly SheetPoint[]): number =>
	places.reduce((sum, place, i) => {
		const right = should[i];
		return sum + (right ? Math.min(FAR, distance(place, right)) : 0);
	}, 0);

/** What the readings settle on from several beginnings: the first that fits, or else the one that misses least. */
const bestOf = (
	begun: readonly (readonly SheetPoint[])[],
	readings: readonly Reading[],
	origin: number,
	error: number
): Solution | undefined => {
	let best: Solution | undefined;
	for (const places of begun) {
		const found = places.length > 1 ? settled(places, readings, heldBy(places, origin), error) : undefined;
		if (found && (!best || found.misses < best.misses)) best = found;
		if (best && best.misses <= mostMisses(best.spare)) return best;
	}
	return best;
};

/** Where readings put some points, from several beginnings; undefined where they leave something open. */
const laidOn = (
	points: readonly number[],
	begun: readonly (readonly SheetPoint[])[],
	readings: readonly Reading[],
	{ should, origin, showing }: Sheet,
	error: number
): Laid | undefined => {
	const [own, begin] = [among(readings, points), points.indexOf(origin)];
	const wanted = points.flatMap((point) => should[point] ?? []);
	const first = bestOf([...begun, wanted], own, begin, error);
	const right = should[origin];
	if (!first || !right) return undefined;
	const shown = showing.map((point) => points.indexOf(point)).filter((i) => i >= 0 && i !== begin);
	const by = shown.length > 0 ? shown : [...points.keys()];
	// Distances are alike in the mirror; which way round the paper is, whoever measures has said.
	const [nearest] = [first.places, first.places.map(({ x, y }) => at(-x, y))]
		.map((each) => {
			const { angle, axis } = turnOf(each, wanted, begin, by);
			const laid = turned(each, angle, begin, right);
			return { axis, laid, far: farFrom(laid, wanted) };
		})
		.toSorted((a, b) => a.far - b.far);
	if (!nearest || nearest.axis < 0) return undefined;
	const solution = settled(nearest.laid, own, { origin: begin, axis: nearest.axis }, error);
	return solution && { points, solution };
};

/** Where readings put all the points that they pin down one after the other; undefined where those are none. */
const laidBy = (readings: readonly Reading[], sheet: Sheet, error: number): Laid | undefined => {
	const { points, places } = begunWith(readings, sheet.should, sheet.origin);
	return laidOn(points, [places], readings, sheet, error);
};

const fits = ({ solution: { misses, spare } }: Laid): boolean => misses <= mostMisses(spare);

/** How unlikely it is that the points lie so: readings that miss, and points that lie far from where they should. */
const unlikely = ({ points, solution }: Laid, { should }: Sheet): number =>
	points.reduce((sum, point, i) => {
		const [place, right] = [solution.places[i], should[point]];
		return place && right ? sum + Math.log(1 + (distance(place, right) / USUAL_SLIP) ** 2) : sum;
	}, solution.misses / 2);

/** What a pair's distance is where the points lie. */
const toldBy = ({ points, solution }: Laid, { from, to }: Reading): number =>
	lengthOf({ from: points.indexOf(from), to: points.indexOf(to) }, solution.places);

/** The readings that miss most for what the others tell of them: a misreading is one of these. */
const missing = (readings: readonly Reading[], { points, solution }: Laid): readonly Reading[] =>
	readings
		.flatMap((reading) => {
			const [own] = among([reading], points);
			if (!own) return [];
			const spare = Math.max(1e-6, spareOf(solution, own));
			return [{ reading, far: Math.abs(lengthOf(own, solution.places) - own.length) / Math.sqrt(spare) }];
		})
		.toSorted((a, b) => b.far - a.far)
		.slice(0, SUSPECTS)
		.map(({ reading }) => reading);

/** What may be misread: what misses most where the readings put the points, and where these would lie without a fault. */
const suspects = (
	readings: readonly Reading[],
	sheet: Sheet,
	all: Laid,
	error: number
): readonly Reading[] => {
	const { points } = all;
	const wanted = points.flatMap((point) => sheet.should[point] ?? []);
	const { origin, axis } = all.solution.held;
	const begun = settled(wanted, among(readings, points), { origin, axis }, error);
	const other = begun && missing(readings, { points, solution: begun });
	return [...new Set([...missing(readings, all), ...(other ?? [])])];
};

/** What is left when each suspect in turn is taken for wrong, the likeliest first. */
const without = (readings: readonly Reading[], sheet: Sheet, all: Laid, error: number) =>
	suspects(readings, sheet, all, error)
		.flatMap((reading) => {
			const left = readings.filter((each) => each !== reading);
			const laid = laidOn(all.points, [all.solution.places], left, sheet, error);
			if (!laid) return [];
			const told = toldBy(laid, reading);
			if (Math.abs(told - reading.length) < NAMED * error) return [];
			return [{ reading, laid, told, unlikely: unlikely(laid, sheet) }];
		})
		.toSorted((a, b) => a.unlikely - b.unlikely);

/** Where a point of a solution may lie instead, on the other side of something, so that its own readings agree better. */
const elsewhere = (
	i: number,
	readings: readonly Reading[],
	wanted: readonly SheetPoint[],
	{ places, held }: Solution
): readonly SheetPoint[] => {
	const [place, middle] = [places[i], places[held.origin]?.x ?? 0];
	if (!place) return [];
	const own = readings.flatMap(({ from, to, length }) => {
		const end = from === i ? places[to] : to === i ? places[from] : undefined;
		return end ? [{ end, length }] : [];
	});
	const miss = (at: SheetPoint): number =>
		own.reduce((sum, { end, length }) => sum + Math.min(FAR, Math.abs(distance(at, end) - length)), 0);
	const others = new Map([...places.entries()].filter(([point]) => point !== i));
	const from = own.map(({ end }) => end);
	return [placed(i, readings, wanted, others), mirroredBy(place, from), at(2 * middle - place.x, place.y)]
		.flatMap((other) => other ?? [])
		.filter((other) => distance(place, other) > FAR / 3 && miss(other) < miss(place) + 3 * FAR);
};

/** The same with points on the other side of their neighbours, where their readings then agree: they were drawn there. */
const otherSide = (readings: readonly Reading[], sheet: Sheet, begun: Laid, error: number): Laid => {
	let laid = begun;
	for (let turn = 0; turn < MOST_MISREAD && !fits(laid); turn++) {
		const { points, solution } = laid;
		const own = among(readings, points);
		const wanted = points.flatMap((point) => sheet.should[point] ?? []);
		const [better] = [...points.keys()]
			.flatMap((i) =>
				elsewhere(i, own, wanted, solution).flatMap((other) => {
					const tried = solution.places.map((each, k) => (k === i ? other : each));
					return laidOn(points, [tried], readings, sheet, error) ?? [];
				})
			)
			.toSorted((a, b) => a.solution.misses - b.solution.misses);
		if (!better || better.solution.misses >= solution.misses) break;
		laid = better;
	}
	return fits(laid) ? laid : begun;
};

/** Takes the likeliest suspects for wrong, one after the other, until the others fit. */
const withoutMisread = (begun: readonly Reading[], sheet: Sheet, all: Laid, error: number) => {
	let [used, laid] = [begun, all];
	const doubted: Doubted[] = [];
	while (!fits(laid) && doubted.length < MOST_MISREAD) {
		const [best, ...others] = without(used, sheet, laid, error);
		if (!best) break;
		const alike = others.filter((each) => each.unlikely - best.unlikely < PLAIN);
		const told = [best, ...alike].slice(0, MOST_TOLD);
		doubted.push({ readings: told.map(({ reading }) => reading), told: told.map((each) => each.told) });
		used = used.filter((reading) => told.every((each) => each.reading !== reading));
		const { points, solution } = best.laid;
		const left = laidOn(points, [solution.places], used, sheet, error) ?? laidBy(used, sheet, error);
		if (!left) break;
		laid = left;
	}
	return { laid, doubted };
};

/**
 * What some readings say of where the points lie. A reading that does not agree with the others is found, and what it pinned down
 * is left to the others; where it is not plain which of several it is, none of them counts. Where no few readings explain how
 * badly all agree, all of them count: the paper or the tape is to blame.
 *
 * @param error how far a reading may be off, as a standard deviation in mm
 */
export const saidBy = (readings: readonly Reading[], sheet: Sheet, error: number): Said => {
	const begun = laidBy(readings, sheet, error);
	if (!begun || fits(begun)) return { laid: begun, doubted: [] };
	const all = otherSide(readings, sheet, begun, error);
	const { laid, doubted } = withoutMisread(readings, sheet, begun, error);
	const fewer = unlikely(laid, sheet) + MISREAD * doubted.length < unlikely(all, sheet);
	// Several together must explain much more than the worst of plain readings do.
	const gains = laid.solution.misses * GAIN ** doubted.length <= begun.solution.misses;
	const explained = fits(laid) && fewer && (gains || doubted.length === 1);
	return explained ? { laid, doubted } : { laid: all, doubted: [] };
};
