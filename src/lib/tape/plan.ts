import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isCorner, isGiven, stepMakes, stepNeeds } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { Choice, howMany } from './choose.ts';
import { pinnedFrom, type Pair } from './net.ts';
import type { Sheet } from './read.ts';

/** Which distances of a draft are taken by tape, and in which order. */

/** A tape of the sewing room is 150 cm long. */
const REACH: Mm = mm(1500);
/** Points that lie nearer than this to one another are one pencil mark to a tape. */
const ONE_MARK: Mm = mm(5);
/** A point that is nearer than this to the origin shows no direction. */
const SHOWS: Mm = mm(100);

/** A distance to be taken: which one it is in order, and between which points. */
export interface Taking {
	readonly from: string;
	readonly to: string;
	/** What it should read. */
	readonly length: Mm;
}

/** All that is taken of one draft. */
export interface Plan {
	/** The points by name, in the order of drafting, those that are given before all. */
	readonly points: readonly string[];
	readonly sheet: Sheet;
	/** In order: whoever has come so far has pinned down what the distances up to there reach. None where the draft cannot be taken so. */
	readonly takings: readonly Taking[];
	/** As few would pin the points down, if no reading were ever wrong. */
	readonly least: number;
	/** Points that lie too near another to be measured by themselves. */
	readonly tooNear: readonly string[];
}

/** The points that are measured: those that are asked, and the given ones that they are drawn from. */
const pointsOf = ({ steps }: Method, { points }: Pick<Drafted, 'points'>): readonly string[] => {
	const own = steps.filter((step) => stepMakes(step) === 'point' && step.name in points);
	const asked = own.filter((step) => !isGiven(step));
	const lies = (step: Step): boolean => isCorner(step) || step.kind === 'traced';
	const given = own.filter(lies);
	const needed = given.filter(({ name }) => asked.some((step) => stepNeeds(step).includes(name)));
	// A draft that starts from drawn lines alone is measured from all that was traced for it.
	const from = needed.length > 0 && needed.length + asked.length > 3 ? needed : given;
	return [...from, ...asked].map(({ name }) => name);
};

/** The points that show how the sheet is turned: what is given, or else what lies straight down or across from the corner. */
const showing = (given: number, should: readonly SheetPoint[]): readonly number[] => {
	const [origin] = should;
	const all = [...should.keys()].filter((i) => {
		const place = should[i];
		return i > 0 && origin && place && distance(origin, place) >= SHOWS;
	});
	const others = all.filter((i) => i < given);
	if (others.length > 0) return others;
	return all.filter((i) => {
		const place = should[i];
		if (!place || !origin) return false;
		return Math.min(Math.abs(place.x - origin.x), Math.abs(place.y - origin.y)) <= SAME_PLACE;
	});
};

/** The pairs in an order in which each point is pinned down as soon as it can be, earlier ones first, with all that is then measured at it. */
const inOrder = (pairs: readonly Pair[], count: number): readonly Pair[] => {
	const begins = pairs
		.filter(({ from }) => from === 0)
		.map((first) => pinnedFrom(first, pairs, count))
		.toSorted((a, b) => b.length - a.length);
	const order = begins[0] ?? [];
	const rank = (point: number): number => order.indexOf(point);
	const later = ({ from, to }: Pair): number => Math.max(rank(from), rank(to));
	const earlier = ({ from, to }: Pair): number => Math.min(rank(from), rank(to));
	return pairs.toSorted((a, b) => later(a) - later(b) || earlier(a) - earlier(b));
};

/** Which distances of a draft are taken. */
export const planOf = (method: Method, draft: Pick<Drafted, 'points'>): Plan => {
	const all = pointsOf(method, draft).flatMap((name) => {
		const at = draft.points[name];
		return at ? [{ name, at }] : [];
	});
	const apart = all.filter(({ at }, i) =>
		all.slice(0, i).every((other) => distance(at, other.at) >= ONE_MARK)
	);
	const points = apart.map(({ name }) => name);
	const should = apart.map(({ at }) => at);
	const given = points.filter((name) =>
		method.steps.some((step) => step.name === name && isGiven(step))
	).length;
	const sheet = { should, origin: 0, showing: showing(given, should) };
	const shown = sheet.showing.length > 0 ? sheet.showing : [...points.keys()];
	const far = (i: number): number => (should[0] && should[i] ? distance(should[0], should[i]) : 0);
	const held = { origin: 0, axis: shown.reduce((most, i) => (far(i) > far(most) ? i : most), 0) };
	const chosen = points.length < 3 ? [] : new Choice(should, held, REACH).chosen();
	return {
		points,
		sheet,
		takings: inOrder(chosen, points.length).flatMap(({ from, to }) => {
			const [a, b] = [apart[from], apart[to]];
			return a && b ? [{ from: a.name, to: b.name, length: distance(a.at, b.at) }] : [];
		}),
		least: howMany(points.length).least,
		tooNear: all.filter((each) => !apart.includes(each)).map(({ name }) => name)
	};
};
