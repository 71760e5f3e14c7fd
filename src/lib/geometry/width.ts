import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { pathEnd, pathMapped, pathStart, polyline, type Path } from './path.ts';
import { at, between, type SheetPoint } from './point.ts';
import { segmentPoint, turningParameters, type Segment } from './segment.ts';

/** A dart by its two legs, each between the mouth and the tip where they meet. */
export interface ClosedDart {
	readonly legs: readonly [Path, Path];
	readonly tip: SheetPoint;
}

/** Halvings after which a parameter has no more digits to win. */
const HALVINGS = 60;

/** The parts of a segment along which it only rises or only falls, by the parameters of their ends. */
const monotoneEnds = (segment: Segment): readonly number[] => {
	if (segment.kind === 'straight') return [0, 1];
	const { from, leaving, arriving, to } = segment;
	const turns = turningParameters(from.y, leaving.y, arriving.y, to.y).filter((t) => t > 0 && t < 1);
	return [0, ...turns.sort((a, b) => a - b), 1];
};

const crossingBetween = (segment: Segment, from: number, to: number, level: Mm): number | undefined => {
	const isBelow = (t: number): boolean => segmentPoint(segment, t).y >= level;
	const below = isBelow(from);
	// An end on the level counts as below it, so that a corner there is crossed once.
	if (below === isBelow(to)) return undefined;
	if (segment.kind === 'straight') {
		const { from: a, to: b } = segment;
		return between(a, b, (level - a.y) / (b.y - a.y)).x;
	}
	let [low, high] = [from, to];
	for (let round = 0; round < HALVINGS; round++) {
		const middle = (low + high) / 2;
		if (isBelow(middle) === below) low = middle;
		else high = middle;
	}
	return segmentPoint(segment, high).x;
};

/** How far across each place lies where a path crosses a level, from the centre outward. */
export const levelCrossings = (path: Path, level: Mm): readonly number[] =>
	path
		.flatMap((segment) => {
			const ends = monotoneEnds(segment);
			return ends.slice(1).flatMap((to, i) => crossingBetween(segment, ends[i] ?? 0, to, level) ?? []);
		})
		.sort((a, b) => a - b);

/** A level across an outline, from where it is met first to where last; undefined where it is not met. */
export const levelAcross = (outline: Path, level: Mm): Path | undefined => {
	const crossings = levelCrossings(outline, level);
	const [inner, outer] = [crossings[0], crossings.at(-1)];
	return inner === undefined || outer === undefined
		? undefined
		: polyline(at(inner, level), at(outer, level));
};

/** The end of a leg that is not the tip. */
const mouthEnd = (leg: Path, tip: SheetPoint): SheetPoint => {
	const [start, end] = [pathStart(leg), pathEnd(leg)];
	return Math.hypot(start.x - tip.x, start.y - tip.y) > Math.hypot(end.x - tip.x, end.y - tip.y)
		? start
		: end;
};

const angleFrom = (tip: SheetPoint, { x, y }: SheetPoint): number => Math.atan2(y - tip.y, x - tip.x);

/** Whether a dart lies across the sheet rather than up and down it. */
const isSideways = ({ legs, tip }: ClosedDart): boolean => {
	const mouth = between(mouthEnd(legs[0], tip), mouthEnd(legs[1], tip), 0.5);
	return Math.abs(mouth.x - tip.x) > Math.abs(mouth.y - tip.y);
};

/**
 * Where a level that runs out from the centre leaves a piece whose sideways dart is sewn shut: it comes to the one leg, and goes on from
 * the other in the cloth that is sewn there, which is turned about the tip. Undefined where it does not meet the dart.
 */
const endBeyondDart = (outline: Path, { legs, tip }: ClosedDart, level: Mm): number | undefined => {
	const met = legs.map((leg) => levelCrossings(leg, level)[0]);
	const [first = Infinity, second = Infinity] = met;
	const place = Math.min(first, second);
	// Where both legs are met at the tip, the level passes beside the dart.
	if (place === Infinity || Math.max(first, second) <= tip.x + SAME_PLACE) return undefined;
	const [near, far] = first <= second ? legs : ([legs[1], legs[0]] as const);
	const by = angleFrom(tip, mouthEnd(near, tip)) - angleFrom(tip, mouthEnd(far, tip));
	const [sin, cos] = [Math.sin(by), Math.cos(by)];
	const turned = pathMapped(outline, ({ x, y }) => ({
		x: mm(tip.x + (x - tip.x) * cos - (y - tip.y) * sin),
		y: mm(tip.y + (x - tip.x) * sin + (y - tip.y) * cos)
	}));
	return levelCrossings(turned, level).find((x) => x > place);
};

/** What a hair's change of level moves a crossing by is far less, unless a corner is reached there. */
const JUMP = mm(0.1);

/**
 * Where a level enters an outline and where it leaves it. A corner that it only touches, as an upper edge or an underarm, is not crossed
 * by it: it is looked for a hair below.
 */
const endsAcross = (outline: Path, level: Mm): readonly [number | undefined, number | undefined] => {
	const [found, below] = [level, mm(level + SAME_PLACE)].map((each) => levelCrossings(outline, each));
	const [inner, outer] = [found?.[0], found?.at(-1)];
	const [innerBelow, outerBelow] = [below?.[0], below?.at(-1)];
	if (inner === undefined || outer === undefined) return [innerBelow, outerBelow];
	return [inner, outerBelow !== undefined && outerBelow > outer + JUMP ? outerBelow : outer];
};

/**
 * How wide an outline is at a level, its darts sewn shut: an upright dart takes off what lies between its legs there, and behind a sideways
 * one the level goes on in the cloth that it is sewn to. Nothing where the outline does not reach the level.
 * `outline` holds the darts' mouths too.
 */
export const widthAtLevel = (outline: Path, darts: readonly ClosedDart[], level: Mm): Mm => {
	const [inner, outer] = endsAcross(outline, level);
	if (inner === undefined || outer === undefined) return mm(0);
	const [across, upright] = [darts.filter(isSideways), darts.filter((each) => !isSideways(each))];
	const end = across.flatMap((dart) => endBeyondDart(outline, dart, level) ?? [])[0] ?? outer;
	const taken = upright.reduce((sum, { legs: [one, other] }) => {
		const [a, b] = [levelCrossings(one, level)[0], levelCrossings(other, level)[0]];
		return a === undefined || b === undefined ? sum : sum + Math.abs(b - a);
	}, 0);
	return mm(end - inner - taken);
};
