import type { CornerRule, EdgeKind } from '#shared/garment.ts';
import { PARALLEL_ERROR, SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { pathRunOn } from '#geometry/ends.ts';
import { pathMeetings } from '#geometry/kernel/meetings.ts';
import { meetingOfEnds, type PathMeeting } from '#geometry/meeting.ts';
import { mirroring, pathMovedBy } from '#geometry/motion.ts';
import { endDirection, pathEnd, pathReversed, polyline, type Path } from '#geometry/path.ts';
import {
	alongness,
	directionOf,
	directionTo,
	distance,
	moved,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import { lineMeeting } from '#geometry/rays.ts';
import { pathPart, type PathPosition } from '#geometry/section.ts';
import { segmentReversed, straight, type Segment } from '#geometry/segment.ts';

/** One of the two edges that meet at a corner, seen as coming to it. */
export interface Arm {
	readonly kind: EdgeKind;
	readonly allowance: Mm;
	/** The cutting line, run toward the corner. */
	readonly line: Path;
	/** The direction in which the edge comes to the corner. */
	readonly toward: Direction;
	/** The direction square to that, out of the piece. */
	readonly outward: Direction;
}

/** Where two edges of a piece meet. */
export interface Corner {
	readonly place: SheetPoint;
	readonly first: Arm;
	readonly second: Arm;
}

/** How much of an arm's cutting line is kept, and where it ends: straight on from its own end, if it was kept whole. */
export interface ArmEnd {
	readonly kept: PathPosition;
	readonly at: SheetPoint;
}

/** How two cutting lines are joined: the end of each, and what is drawn from the first's end to the second's. */
export interface Join {
	readonly first: ArmEnd;
	readonly second: ArmEnd;
	readonly between: readonly Segment[];
}

/** Most that a corner may reach out, in allowances (the wider of the two): beyond, a tip is too thin to be of use, and is cut off. */
const MOST_REACH = 2.5;

const wider = ({ first, second }: Corner): Mm => mm(Math.max(first.allowance, second.allowance));
const mostReach = (corner: Corner): Mm => mm(MOST_REACH * wider(corner));

const swapped = ({ place, first, second }: Corner): Corner => ({ place, first: second, second: first });
const swappedJoin = ({ first, second, between }: Join): Join => ({
	first: second,
	second: first,
	between: between.map(segmentReversed).reverse()
});

/** An arm whose cutting line is kept whole, and runs straight on to a place where that is not its end. */
const wholeTo = ({ line }: Arm, at = pathEnd(line)): ArmEnd => ({ kept: line.length, at });

/** The straight way through these places, without those that lie where the one before does. */
const straightThrough = (...places: readonly SheetPoint[]): readonly Segment[] => {
	const ways = places.map((to, i) => straight(places[i - 1] ?? to, to));
	return ways.filter(({ from, to }) => distance(from, to) > SAME_PLACE);
};

/** How the corner turns: the sine and the cosine of the angle; the sine is positive where the corner points outward. */
const turnOf = ({ first, second }: Corner): { readonly sin: number; readonly cos: number } => ({
	sin: alongness(first.toward, second.outward),
	cos: alongness(first.outward, second.outward)
});

/** Where the two cutting lines would meet, run on straight; undefined where they are parallel. */
const tipOf = ({ first, second }: Corner) =>
	lineMeeting(pathEnd(first.line), first.toward, pathEnd(second.line), second.toward);

/** Whether a cutting line arrives at its end from beyond, as it does in a bend tighter than the allowance. */
const turnsBack = ({ line, toward }: Arm): boolean => {
	const direction = endDirection(line);
	return direction !== undefined && alongness(direction, toward) < 0;
};

/**
 * Where an arm's cutting line, run on straight if need be, meets a ray that leaves the corner; undefined where it does
 * not, or further than `most` from the corner.
 */
const meetingRay = (arm: Arm, place: SheetPoint, ray: Direction, most: Mm): ArmEnd | undefined => {
	const endAt = (met: PathMeeting | undefined): ArmEnd | undefined =>
		met && { kept: met.onFirst, at: met.point };
	const met = (): readonly PathMeeting[] => pathMeetings(arm.line, polyline(place, moved(place, ray, most)));
	// In a bend tighter than the allowance the line goes beyond, and comes back to end beside the corner: it is done where it first meets the ray.
	const early = turnsBack(arm) ? endAt(met()[0]) : undefined;
	if (early) return early;
	const ahead = lineMeeting(pathEnd(arm.line), arm.toward, place, ray);
	if (!ahead || ahead.alongFirst < -SAME_PLACE) return endAt(met().at(-1));
	const near = ahead.alongSecond >= -SAME_PLACE && ahead.alongSecond <= most + SAME_PLACE;
	return near ? wholeTo(arm, ahead.point) : undefined;
};

/** Both cutting lines run on to a straight line that is square to `middle`, a direction out of the corner, and so far along it. */
const cutOff = ({ place, first, second }: Corner, middle: Direction, far: Mm): Join | undefined => {
	const end = (arm: Arm): ArmEnd | undefined => {
		const from = pathEnd(arm.line);
		const already = (from.x - place.x) * middle.dx + (from.y - place.y) * middle.dy;
		const length = (far - already) / alongness(arm.toward, middle);
		return length >= 0 ? wholeTo(arm, moved(from, arm.toward, mm(length))) : undefined;
	};
	const [one, other] = [end(first), end(second)];
	return one && other && { first: one, second: other, between: straightThrough(one.at, other.at) };
};

/** The direction out of an outward corner: to where the cutting lines would meet, or between them where they are parallel. */
const middleOf = (corner: Corner): Direction | undefined => {
	const tip = tipOf(corner);
	if (tip)
		return tip.alongFirst >= 0 && tip.alongSecond >= 0 ? directionTo(corner.place, tip.point) : undefined;
	const { first, second } = corner;
	return directionOf(first.toward.dx + second.toward.dx, first.toward.dy + second.toward.dy);
};

/**
 * The wider allowance ends square to its edge, and comes down to the narrower one's cutting line. So it is where edges run
 * on into each other, and at corners so flat that the narrower cutting line, run on, would take from the wider allowance.
 */
const stepped = (corner: Corner): Join | undefined => {
	const { place, first, second } = corner;
	if (first.allowance > second.allowance) {
		const join = stepped(swapped(corner));
		return join && swappedJoin(join);
	}
	const end = meetingRay(first, place, second.outward, second.allowance);
	const other = wholeTo(second);
	return end && { first: end, second: other, between: straightThrough(end.at, other.at) };
};

/**
 * Where the first's cutting line, which turns back, first crosses the second's, run on straight: beyond that it only comes back
 * from a bend that is tighter than the allowance.
 */
const crossedEarly = (corner: Corner): Join | undefined => {
	const { first, second } = corner;
	const onward = moved(pathEnd(second.line), second.toward, mostReach(corner));
	const [met] = pathMeetings(first.line, pathRunOn(second.line, onward));
	if (!met) return undefined;
	const kept = Math.min(met.onSecond, second.line.length);
	return { first: { kept: met.onFirst, at: met.point }, second: { kept, at: met.point }, between: [] };
};

/** The same where it is the second's that turns back; nothing where neither does. */
const crossedByBend = (corner: Corner): Join | undefined => {
	if (turnsBack(corner.first)) return crossedEarly(corner);
	const join = turnsBack(corner.second) ? crossedEarly(swapped(corner)) : undefined;
	return join && swappedJoin(join);
};

const mitred = (corner: Corner): Join | undefined => {
	const early = crossedByBend(corner);
	if (early) return early;
	const { place, first, second } = corner;
	const tip = tipOf(corner);
	const ahead = tip && tip.alongFirst >= 0 && tip.alongSecond >= 0;
	if (tip && ahead && distance(place, tip.point) <= mostReach(corner)) {
		return { first: wholeTo(first, tip.point), second: wholeTo(second, tip.point), between: [] };
	}
	if (turnOf(corner).cos > 0) return stepped(corner);
	const middle = middleOf(corner);
	return middle && cutOff(corner, middle, mostReach(corner));
};

const trimmed = (corner: Corner): Join | undefined => {
	const middle = middleOf(corner);
	return middle && cutOff(corner, middle, wider(corner));
};

const squared = (corner: Corner): Join | undefined => {
	const { place, first, second } = corner;
	const end = meetingRay(second, place, first.toward, mostReach(corner));
	if (!end) return undefined;
	const top = moved(pathEnd(first.line), first.toward, distance(place, end.at));
	return { first: wholeTo(first, top), second: end, between: straightThrough(top, end.at) };
};

/** With the fold second: the first's cutting line runs on to the fold's line, so that both halves meet there when the cloth is opened. */
const ontoFold = (corner: Corner): Join | undefined => {
	const { place, first, second } = corner;
	const end = meetingRay(first, place, second.toward, mostReach(corner));
	if (end) return { first: end, second: wholeTo(second, end.at), between: [] };
	return turnOf(corner).cos > 0 ? undefined : cutOff(corner, second.toward, mostReach(corner));
};

/** An arm's cutting line as far as it is kept, and straight on to its end. */
const lineTo = ({ line }: Arm, { kept, at }: ArmEnd): Path | undefined => {
	const part = pathPart(line, 0, kept);
	return part && distance(pathEnd(part), at) > SAME_PLACE ? pathRunOn(part, at) : part;
};

/** With the hem second: from the hem's stitching line on, the first's cutting line goes back along its own image. */
const turnedUp = (corner: Corner): Join | undefined => {
	const { place, first, second } = corner;
	const most = mostReach(corner);
	const end = meetingRay(first, place, second.toward, most);
	const line = end && lineTo(first, end);
	if (!line) return undefined;
	const hem = mirroring(place, moved(place, second.toward, mm(1)));
	const image = pathReversed(pathMovedBy(hem, line));
	const onward = endDirection(image) ?? second.outward;
	const longImage = pathRunOn(image, moved(pathEnd(image), onward, most));
	const longHem = pathRunOn(second.line, moved(pathEnd(second.line), second.toward, most));
	const [met] = pathMeetings(longImage, longHem);
	if (!met || distance(place, met.point) > most) return undefined;
	const kept = Math.min(met.onSecond, second.line.length);
	return {
		first: end,
		second: { kept, at: met.point },
		between: pathPart(longImage, 0, met.onFirst) ?? []
	};
};

/** At a corner that points into the piece the cutting lines cross, and both end there; where they do not, one is a step away. */
const crossed = (corner: Corner): Join | undefined => {
	const { place, first, second } = corner;
	const [nearest] = [...pathMeetings(first.line, second.line)].sort(
		(a, b) => distance(place, a.point) - distance(place, b.point)
	);
	const met = nearest ?? meetingOfEnds(first.line, second.line);
	if (!met) return first.allowance === second.allowance ? undefined : stepped(corner);
	return {
		first: { kept: met.onFirst, at: met.point },
		second: { kept: met.onSecond, at: met.point },
		between: []
	};
};

/** Whether the first arm is the hem of a corner that is turned up, or what stands for one: the wider allowance. */
const hemIsFirst = ({ first, second }: Corner): boolean =>
	(first.kind === 'hem') === (second.kind === 'hem')
		? first.allowance > second.allowance
		: first.kind === 'hem';

/**
 * What becomes of the allowances at a corner that points outward (common practice, no single source):
 * - mitre: both cutting lines run straight on until they meet;
 * - square: the first edge's allowance ends square to its stitching line, where that, run on, meets the next cutting line. Two
 *   such ends lie edge to edge once the first seam is sewn;
 * - trim: both are cut off square to the middle of the corner, as far from it as the wider allowance;
 * - turn-up: at a hem, the other allowance is mirrored in the hem's stitching line, so that it lies on itself when the hem is turned up.
 */
const BY_RULE: Readonly<Record<CornerRule, (corner: Corner) => Join | undefined>> = {
	mitre: mitred,
	square: squared,
	trim: trimmed,
	'turn-up': (corner) => {
		if (!hemIsFirst(corner)) return turnedUp(corner);
		const join = turnedUp(swapped(corner));
		return join && swappedJoin(join);
	}
};

const atFold = (corner: Corner): Join | undefined => {
	if (corner.second.kind === 'fold') return ontoFold(corner);
	const join = ontoFold(swapped(corner));
	return join && swappedJoin(join);
};

/** Both cutting lines kept whole, and joined through the corner itself: always possible, and where they cross a loop is left. */
export const joinedThrough = ({ place, first, second }: Corner): Join => {
	const [one, other] = [wholeTo(first), wholeTo(second)];
	return { first: one, second: other, between: straightThrough(one.at, place, other.at) };
};

/**
 * How the cutting lines of two edges are joined at their corner. A rule holds for corners that point outward; at a
 * fold there is but one way. Where a rule cannot be followed (edges that run on into each other, tips out of reach), the corner is
 * mitred, or else joined through the corner itself.
 */
export const joinAt = (corner: Corner, rule: CornerRule): Join => {
	const { first, second } = corner;
	if (distance(pathEnd(first.line), pathEnd(second.line)) <= PARALLEL_ERROR) {
		return { first: wholeTo(first), second: wholeTo(second), between: [] };
	}
	if (turnOf(corner).sin < 0) return crossed(corner) ?? joinedThrough(corner);
	const onFold = first.kind === 'fold' || second.kind === 'fold';
	const join = onFold ? atFold(corner) : (BY_RULE[rule](corner) ?? mitred(corner));
	return join ?? joinedThrough(corner);
};
