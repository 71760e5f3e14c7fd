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
	/** Where readings agree, or nearly, on a point that lies far off: the one that alone may lead there instead. It counts. */
	readonly perhaps?: Perhaps | undefined;
}

/** Readings of which one may be wrong, and the points that lie far off if none is. */
export interface Perhaps extends Doubted {
	readonly points: readonly number[];
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
const SUSPECTS = 6;
/** As many other sides are tried at a time, the likeliest first. */
const ELSEWHERE = 30;
/** What each reading that is taken for wrong must take off the misses' squares at least: more than the worst of plain ones does. */
const GAIN = 10;
/** How unlikely it is that a reading is wrong, and off by just so much: one in a hundred is, by any of a hundred amounts. */
const MISREAD = Math.log(100 * 100);
/** Where a point would otherwise lie far off, a reading that is so unlikely to be wrong is told beside that: it is soon measured again. */
const PERHAPS = Math.log(100);
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

const wantedOf = (points: readonly number[], should: readonly SheetPoint[]): readonly SheetPoint[] =>
	points.flatMap((point) => should[point] ?? []);

/** Where readings put some points, from several beginnings; undefined where they leave something open. */
const laidOn = (
	points: readonly number[],
	begun: readonly (readonly SheetPoint[])[],
	readings: readonly Reading[],
	{ should, origin, showing }: Sheet,
	error: number
): Laid | undefined => {
	const [own, begin] = [among(readings, points), points.indexOf(origin)];
	const wanted = wantedOf(points, should);
	const first = bestOf(begun, own, begin, error);
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
	// Where they should be comes first: what leaves open on which side a point lies, puts it there.
	return laidOn(points, [wantedOf(points, sheet.should), places], readings, sheet, error);
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

/** Beyond so many times its error a reading counts for less and less, where the others are to say what is wrong. */
const TRUSTED = 3;
/** As many rounds settle what counts for how much. */
const ROUNDS = 6;

/** The readings that miss most where those that agree put the points: what misses counts for the less, the more it does (Cauchy's weights). */
const outliers = (
	readings: readonly Reading[],
	wanted: readonly SheetPoint[],
	{ points, solution: { held } }: Laid,
	error: number
): readonly Reading[] => {
	const own = among(readings, points);
	const missOf = (each: Reading, at: readonly SheetPoint[]): number =>
		Math.abs(lengthOf(each, at) - each.length);
	let places = wanted;
	for (let round = 0; round < ROUNDS; round++) {
		const weighed = own.map((each) => ({
			...each,
			times: (each.times ?? 1) / (1 + (missOf(each, places) / (TRUSTED * error)) ** 2)
		}));
		const found = settled(places, weighed, held, error);
		if (!found) break;
		({ places } = found);
	}
	return readings
		.flatMap((reading) => {
			const [each] = among([reading], points);
			return each ? [{ reading, far: missOf(each, places) }] : [];
		})
		.toSorted((a, b) => b.far - a.far)
		.slice(0, SUSPECTS)
		.map(({ reading }) => reading);
};

/** Whether it was read once: what was read twice alike is not taken for misread. */
const isOnce = ({ times = 1 }: Reading): boolean => times < 2;

/** What may be misread: what misses most where the readings put the points, where these would lie without a fault, and where those that agree put them. */
const suspects = (
	readings: readonly Reading[],
	sheet: Sheet,
	all: Laid,
	error: number
): readonly Reading[] => {
	const { points } = all;
	const wanted = wantedOf(points, sheet.should);
	const { origin, axis } = all.solution.held;
	const begun = settled(wanted, among(readings, points), { origin, axis }, error);
	const other = begun && missing(readings, { points, solution: begun });
	const suspected = [...missing(readings, all), ...(other ?? []), ...outliers(readings, wanted, all, error)];
	return [...new Set(suspected)].filter(isOnce);
};

/** What is left without one of the readings. */
interface Left {
	readonly reading: Reading;
	readonly laid: Laid;
	/** What the others say that it should read. */
	readonly told: number;
	readonly unlikely: number;
}

/** What is left without each of some readings, the likeliest first; those are left out that are as the others say. */
const leftBy = (
	suspected: readonly Reading[],
	layWithout: (reading: Reading) => Laid | undefined,
	sheet: Sheet,
	error: number
): readonly Left[] =>
	suspected
		.flatMap((reading) => {
			const laid = layWithout(reading);
			if (!laid) return [];
			const told = toldBy(laid, reading);
			if (Math.abs(told - reading.length) < NAMED * error) return [];
			return [{ reading, laid, told, unlikely: unlikely(laid, sheet) }];
		})
		.toSorted((a, b) => a.unlikely - b.unlikely);

/** What is left when each suspect in turn is taken for wrong, the likeliest first. */
const without = (readings: readonly Reading[], sheet: Sheet, all: Laid, error: number): readonly Left[] =>
	leftBy(
		suspects(readings, sheet, all, error),
		(reading) => {
			const left = readings.filter((each) => each !== reading);
			const begun = [wantedOf(all.points, sheet.should), all.solution.places];
			return laidOn(all.points, begun, left, sheet, error);
		},
		sheet,
		error
	);

/** The likeliest misreading, with those that are about as likely. */
const doubtedOf = (best: Left, others: readonly Left[]): Doubted => {
	const alike = others.filter((each) => each.unlikely - best.unlikely < PLAIN);
	const of = [best, ...alike].slice(0, MOST_TOLD);
	return { readings: of.map(({ reading }) => reading), told: of.map(({ told }) => told) };
};

/** Where a point of a solution may lie instead, on the other side of something, so that its own readings agree better. */
const elsewhere = (
	i: number,
	readings: readonly Reading[],
	wanted: readonly SheetPoint[],
	{ places, held }: Solution
): readonly { readonly other: SheetPoint; readonly worse: number }[] => {
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
		.filter((other) => distance(place, other) > FAR / 3)
		.map((other) => ({ other, worse: miss(other) - miss(place) }))
		.filter(({ worse }) => worse < 3 * FAR);
};

/** The same with points on the other side of their neighbours, where their readings then agree: they were drawn there. */
const otherSide = (readings: readonly Reading[], sheet: Sheet, begun: Laid, error: number): Laid => {
	let laid = begun;
	for (let turn = 0; turn < MOST_MISREAD && !fits(laid); turn++) {
		const { points, solution } = laid;
		const own = among(readings, points);
		const wanted = wantedOf(points, sheet.should);
		const [better] = [...points.keys()]
			.flatMap((i) => elsewhere(i, own, wanted, solution).map((each) => ({ ...each, i })))
			.toSorted((a, b) => a.worse - b.worse)
			.slice(0, ELSEWHERE)
			.flatMap(({ other, i }) => {
				const tried = solution.places.map((each, k) => (k === i ? other : each));
				return laidOn(points, [tried], readings, sheet, error) ?? [];
			})
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
		const doubt = doubtedOf(best, others);
		doubted.push(doubt);
		used = used.filter((reading) => !doubt.readings.includes(reading));
		const { points, solution } = best.laid;
		const left = laidOn(points, [solution.places], used, sheet, error) ?? laidBy(used, sheet, error);
		if (!left) break;
		laid = left;
	}
	return { laid, doubted };
};

/** The points that lie far from where they should. */
const farOut = ({ points, solution: { places } }: Laid, { should }: Sheet): readonly number[] =>
	points.filter((point, i) => {
		const [place, right] = [places[i], should[point]];
		return place !== undefined && right !== undefined && distance(place, right) > FAR;
	});

/** The reading that alone may lead to points that lie far out; undefined where none does, so that they were drawn there. */
const perhaps = (
	readings: readonly Reading[],
	sheet: Sheet,
	all: Laid,
	error: number
): Perhaps | undefined => {
	const points = farOut(all, sheet);
	if (points.length === 0) return undefined;
	const [best, ...others] = without(readings, sheet, all, error).filter(({ laid }) => fits(laid));
	if (!best || best.unlikely + PERHAPS >= unlikely(all, sheet)) return undefined;
	const still = farOut(best.laid, sheet);
	return { ...doubtedOf(best, others), points: points.filter((point) => !still.includes(point)) };
};

/** Where readings leave no place at all, as when one side of a triangle is longer than both others: which of them is too long, or too short. */
const withoutPlace = (readings: readonly Reading[], sheet: Sheet, error: number): Said => {
	const { points } = begunWith(readings, sheet.should, sheet.origin);
	if (points.length < 3) return { laid: undefined, doubted: [] };
	const [best, ...others] = leftBy(
		readings.filter(isOnce),
		(reading) => {
			const left = readings.filter((each) => each !== reading);
			const laid = laidBy(left, sheet, error);
			return laid?.points.length === points.length && fits(laid) ? laid : undefined;
		},
		sheet,
		error
	);
	if (!best) return { laid: undefined, doubted: [] };
	const doubt = doubtedOf(best, others);
	const left = readings.filter((each) => !doubt.readings.includes(each));
	return { laid: laidBy(left, sheet, error), doubted: [doubt] };
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
	if (!begun) return withoutPlace(readings, sheet, error);
	if (fits(begun)) return { laid: begun, doubted: [], perhaps: perhaps(readings, sheet, begun, error) };
	const all = otherSide(readings, sheet, begun, error);
	const { laid, doubted } = withoutMisread(readings, sheet, begun, error);
	const fewer = unlikely(laid, sheet) + MISREAD * doubted.length < unlikely(all, sheet);
	// Several together must explain much more than the worst of plain readings do.
	const gains = laid.solution.misses * GAIN ** doubted.length <= begun.solution.misses;
	const explained = fits(laid) && fewer && (gains || doubted.length === 1);
	return explained
		? { laid, doubted }
		: { laid: all, doubted: [], perhaps: perhaps(readings, sheet, all, error) };
};
