import { SAME_PLACE } from '#shared/tolerances.ts';
import { pathEnd, pathLength, pathReversed, pathStart, type Path } from '#geometry/path.ts';
import { at, between, distance, type SheetPoint } from '#geometry/point.ts';
import { segmentPoint } from '#geometry/segment.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { EdgesOfPieces } from '../chains.ts';
import type { PieceEdge } from '../edges.ts';
import type { Garment, LevelRule, PanelRule, PieceRule } from '../garment.ts';

/** What worn views are drawn from: the drafts by their short names, and the edges of the pieces. */
export interface Made {
	readonly drafts: Readonly<Record<string, Draft>>;
	readonly edges: EdgesOfPieces;
}

/** A line as places in turn. */
export type Places = readonly SheetPoint[];

/** How far apart on a line the places are taken by which it is drawn, in millimetres. */
const STEP = 12;
const HALVINGS = 18;

/** Places along a path, its ends among them. */
export const placesOn = (path: Path): Places => [
	pathStart(path),
	...path.flatMap((segment) => {
		const count = Math.max(
			segment.kind === 'straight' ? 1 : 4,
			Math.ceil(distance(segment.from, segment.to) / STEP)
		);
		return Array.from({ length: count }, (_, i) => segmentPoint(segment, (i + 1) / count));
	})
];

/** How far along a line each of its places lies. */
export const lengthsAlong = (places: Places): readonly number[] => {
	let sum = 0;
	return places.map((place, i) => (sum += i === 0 ? 0 : distance(places[i - 1] ?? place, place)));
};

/** The place so far along a line. */
const placeAlong = (places: Places, lengths: readonly number[], length: number): SheetPoint => {
	const i = Math.max(
		1,
		Math.min(
			lengths.length - 1,
			lengths.findIndex((each) => each >= length)
		)
	);
	const [from = 0, to = 0] = [lengths[i - 1], lengths[i]];
	const [a, b] = [places[i - 1], places[i]];
	if (!a || !b) return places.at(-1) ?? at(0, 0);
	return between(a, b, to > from ? Math.min(1, Math.max(0, (length - from) / (to - from))) : 1);
};

/** Where a place lies on a panel: in which span between two levels, and which shares of the way down it and of the way out. */
export interface PanelPlace {
	readonly span: number;
	readonly down: number;
	readonly out: number;
	/** How many millimetres it lies above the first level. */
	readonly above?: number;
}

/** What lies between two levels: the way down its side, and how much longer than straight across each level is sewn. */
interface Span {
	readonly upper: LevelAt;
	readonly lower: LevelAt;
	readonly side: Places;
	readonly lengths: readonly number[];
	readonly sideLength: number;
	readonly centreLength: number;
}

interface LevelAt {
	readonly centre: SheetPoint;
	readonly side: SheetPoint;
	/** The edges across at it as they run outward, darts closed, and how long they are together. */
	readonly across: readonly PieceEdge[];
	/** Its width, darts closed, over the straight way across. */
	readonly longer: number;
	readonly width: number;
	/** Whether its edges are gathered up. */
	readonly gathered: boolean;
}

/** A dart that runs up and down, by places on its legs in pairs. */
type UprightDart = readonly [Places, Places];

/** One half of a front or a back, as it was drafted. */
export interface Panel {
	readonly rule: PanelRule;
	readonly draft: Draft;
	/** The first piece, to whose edges the levels belong. */
	readonly main: PieceRule;
	readonly levels: readonly LevelAt[];
	readonly spans: readonly Span[];
	readonly darts: readonly UprightDart[];
	/** The middles of all darts, from the mouth to the tip. */
	readonly dartLines: readonly Places[];
}

/** How far along a straight way it meets a line; undefined where it does not. */
const metBy = (from: SheetPoint, to: SheetPoint, line: Places): number | undefined => {
	const [dx, dy] = [to.x - from.x, to.y - from.y];
	const aside = ({ x, y }: SheetPoint): number => dx * (y - from.y) - dy * (x - from.x);
	for (let i = 1; i < line.length; i++) {
		const [a, b] = [line[i - 1], line[i]];
		if (!a || !b) continue;
		const [before, after] = [aside(a), aside(b)];
		if (before === after || before * after > 0) continue;
		const met = between(a, b, before / (before - after));
		return ((met.x - from.x) * dx + (met.y - from.y) * dy) / Math.hypot(dx, dy);
	}
	return undefined;
};

/** How much darts take off a straight way before so far along it, and of all of it. */
const takenBy = (darts: readonly UprightDart[], from: SheetPoint, to: SheetPoint, along = Infinity): number =>
	darts.reduce((sum, [one, other]) => {
		const [a, b] = [metBy(from, to, one), metBy(from, to, other)];
		if (a === undefined || b === undefined) return sum;
		const [near, far] = [Math.min(a, b), Math.max(a, b)];
		return sum + Math.max(0, Math.min(far, along) - near);
	}, 0);

/** The straight way across a panel so far down a span. */
const rowAt = (
	{ upper, lower, side, lengths, sideLength }: Span,
	down: number
): readonly [SheetPoint, SheetPoint] => [
	between(upper.centre, lower.centre, down),
	placeAlong(side, lengths, down * sideLength)
];

/** How wide a panel is so far down a span, its darts sewn shut; at a level exactly as its edges measure. */
export const widthAt = ({ darts }: Panel, span: Span, down: number): number => {
	const [from, to] = rowAt(span, down);
	const { upper, lower } = span;
	return (
		(distance(from, to) - takenBy(darts, from, to)) * (upper.longer + (lower.longer - upper.longer) * down)
	);
};

/** Where a place of the sheet lies on a panel. */
export const placeOn = (panel: Panel, { x, y }: SheetPoint): PanelPlace => {
	const { spans, darts } = panel;
	const first = spans[0];
	if (!first) return { span: 0, down: 0, out: 0 };
	const below = (span: Span, down: number): boolean => {
		const [from, to] = rowAt(span, down);
		// Beyond the centre, what is folded under lies level.
		if (x <= 0) return y > from.y;
		return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) > 0;
	};
	if (!below(first, 0)) {
		const { centre, side, width } = first.upper;
		const out = x / width;
		return { span: 0, down: 0, out, above: centre.y + (side.y - centre.y) * out - y };
	}
	const span = spans.find((each) => !below(each, 1)) ?? spans.at(-1) ?? first;
	let [low, high] = [0, 1];
	for (let round = 0; round < HALVINGS; round++) {
		const middle = (low + high) / 2;
		if (below(span, middle)) low = middle;
		else high = middle;
	}
	const down = (low + high) / 2;
	const [from, to] = rowAt(span, down);
	const along = Math.sign(x) * distance(from, at(x, y));
	const whole = distance(from, to) - takenBy(darts, from, to);
	return { span: spans.indexOf(span), down, out: (along - takenBy(darts, from, to, along)) / whole };
};

/** Where a place of the side's own line lies on a panel; undefined for one that is not of it. */
export const sidePlace = ({ spans }: Panel, place: SheetPoint): PanelPlace | undefined => {
	for (const [span, { side, lengths, sideLength }] of spans.entries()) {
		const i = side.findIndex((each) => distance(each, place) <= SAME_PLACE);
		if (i >= 0) return { span, down: (lengths[i] ?? 0) / sideLength, out: 1 };
	}
	return undefined;
};

/** Edges one after the other, each running on from where the one before ends (or a dart was). */
const runningFrom = (start: SheetPoint, edges: readonly PieceEdge[]): readonly PieceEdge[] => {
	let end = start;
	return edges.map((edge) => {
		const turned = distance(end, pathEnd(edge.path)) < distance(end, pathStart(edge.path));
		const path = turned ? pathReversed(edge.path) : edge.path;
		end = pathEnd(path);
		return { ...edge, path };
	});
};

const edgesNamed = (edges: readonly PieceEdge[], names: readonly string[]): readonly PieceEdge[] =>
	names.flatMap((name) => edges.filter((edge) => edge.name === name));

const levelOf = (
	{ centre, side, across }: LevelRule,
	draft: Draft,
	edges: readonly PieceEdge[],
	darts: readonly UprightDart[]
): LevelAt | undefined => {
	const named = side === undefined ? undefined : draft.points[side];
	const start = centre === undefined ? named && at(0, named.y) : draft.points[centre];
	if (!start) return undefined;
	const own = runningFrom(start, edgesNamed(edges, across));
	const last = own.at(-1);
	const end = named ?? (last && pathEnd(last.path));
	if (!end) return undefined;
	const straight = distance(start, end) - takenBy(darts, start, end);
	const width = own.length > 0 ? own.reduce((sum, { length }) => sum + length, 0) : straight;
	const gathered = own.some((edge) => edge.gathered);
	return { centre: start, side: end, across: own, width, longer: width / straight, gathered };
};

/** What lies between two levels, by the edges down its side; these may begin above it and go on below it. */
const spanOf = (upper: LevelAt, lower: LevelAt, edges: readonly PieceEdge[]): Span => {
	const places: SheetPoint[] = [];
	const lengths: number[] = [];
	for (const { path } of runningFrom(upper.side, edges)) {
		const own = placesOn(path);
		// Where a dart parts the side, the jump from leg to leg is no part of its length.
		const before = lengths.at(-1) ?? 0;
		const whole = pathLength(path);
		const along = lengthsAlong(own);
		const scale = whole / (along.at(-1) || 1);
		places.push(...own);
		lengths.push(...along.map((each) => before + each * scale));
	}
	const nearest = (to: SheetPoint): number =>
		places.reduce(
			(best, place, i) => (distance(place, to) < distance(places[best] ?? place, to) ? i : best),
			0
		);
	const [from, to] = [nearest(upper.side), nearest(lower.side)];
	const start = lengths[from] ?? 0;
	const own = lengths.slice(from, to + 1).map((each) => each - start);
	return {
		upper,
		lower,
		side: places.slice(from, to + 1),
		lengths: own,
		sideLength: own.at(-1) ?? 0,
		centreLength: distance(upper.centre, lower.centre)
	};
};

/** The two legs of a dart by their corners in pairs, from its mouth or its upper tip on. */
const legsOf = (one: Path, other: Path): UprightDart => {
	const apart = (end: SheetPoint): number => distance(pathStart(one), end);
	const turned = apart(pathStart(other)) <= apart(pathEnd(other)) ? other : pathReversed(other);
	const corners = (path: Path): Places => [pathStart(path), ...path.map(({ to }) => to)];
	return [corners(one), corners(turned)];
};

const isUpright = (line: Places): boolean => {
	const [from, to] = [line[0], line.at(-1)];
	return !!from && !!to && Math.abs(to.y - from.y) > Math.abs(to.x - from.x);
};

/** The half of a front or a back that these pieces make; undefined where a body's draft lacks one of its levels. */
export const panelOf = (rule: PanelRule, garment: Garment, made: Made): Panel | undefined => {
	const main = garment.pieces.find(({ key }) => key === rule.pieces[0]);
	const draft = main && made.drafts[main.draft];
	const edges = (main && made.edges[main.key]) ?? [];
	if (!draft) return undefined;
	const legs = main.darts.flatMap(({ legs: [one, other] }) => {
		const [a, b] = [draft.lines[one], draft.lines[other]];
		return a && b ? [legsOf(a.path, b.path)] : [];
	});
	const middles = legs.map(([a, b]) => a.flatMap((place, i) => (b[i] ? [between(place, b[i], 0.5)] : [])));
	const darts = legs.filter((_, i) => isUpright(middles[i] ?? []));
	const levels = rule.levels.flatMap((each) => levelOf(each, draft, edges, darts) ?? []);
	if (levels.length < rule.levels.length) return undefined;
	const spans = levels.slice(1).flatMap((lower, i): readonly Span[] => {
		const upper = levels[i];
		const named = rule.levels[i + 1]?.edges ?? [];
		return upper ? [spanOf(upper, lower, edgesNamed(edges, named))] : [];
	});
	return { rule, draft, main, levels, spans, darts, dartLines: middles };
};
