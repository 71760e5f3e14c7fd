import { mm, radians, type Mm } from '#shared/units.ts';
import { greatestDistance } from '#geometry/apart.ts';
import { isClockwise } from '#geometry/area.ts';
import {
	followedBy,
	mirroring,
	movedBy,
	pathMovedBy,
	REST,
	shifting,
	turning,
	type Motion
} from '#geometry/motion.ts';
import {
	chained,
	endDirection,
	pathEnd,
	pathReversed,
	pathStart,
	pointAtLength,
	startDirection,
	type Path
} from '#geometry/path.ts';
import { directionTo, moved, opposite, squareTo, type Direction, type SheetPoint } from '#geometry/point.ts';
import { neighbour, type Chain, type EdgesOfPieces, type End, type Link } from './chains.ts';
import type { Pattern } from './pattern.ts';
import type { Notch, Piece, PieceEdge } from './piece.ts';
import type { RunReport, SeamReport } from './seams.ts';

/** A notch where it lies once its piece is laid. */
export interface LaidNotch {
	readonly at: SheetPoint;
	/** Into the piece. */
	readonly inward: Direction;
	readonly style: Notch['style'];
}

/** A piece laid against what it is sewn to. */
export interface LaidPiece {
	readonly piece: Piece;
	readonly side: 'first' | 'second';
	/** From the place where it is drafted to the place where it lies. */
	readonly motion: Motion;
	/** Its edges in the seam where they lie, each run as the seam goes. */
	readonly lines: readonly Path[];
	readonly notches: readonly LaidNotch[];
	/** Whether it is the other half of a piece on the fold, of which one half is drafted. */
	readonly otherHalf: boolean;
}

/** One end of a seam as it is sewn there: what runs on across it, on either side. */
export interface SewnEnd {
	readonly end: End;
	readonly run: RunReport;
	readonly at: SheetPoint;
	/** The direction in which the seam leaves this end. */
	readonly along: Direction;
	/** For each side its outline, and the edge that comes to the seam here, where they lie. */
	readonly sides: readonly { readonly outline: Path; readonly crossing: Path }[];
}

/** The greatest distance between two stitching lines. */
export interface Gap {
	/** Laid edge to edge, as they are drawn. */
	readonly flat: Mm;
	/** Laid flat or one over the other, whichever is less: nothing where both have one shape. */
	readonly shape: Mm;
}

/** Two sides of a seam laid edge to edge, as they will be sewn, and where they do not agree. */
export interface EdgeToEdge {
	readonly report: SeamReport;
	readonly laid: readonly LaidPiece[];
	/** The end of the seam on each side; they lie apart where one is longer. */
	readonly firstEnd: SheetPoint;
	readonly secondEnd: SheetPoint;
	/** How far the two stitching lines part; nothing where one of the sides is no single line, or ends before the other. */
	readonly gap: Gap | undefined;
	readonly ends: readonly SewnEnd[];
}

/** A place, and the way in which a line goes there. */
interface Way {
	readonly at: SheetPoint;
	readonly along: Direction;
}

/** The edges of one piece that follow each other in a chain. */
interface Part {
	readonly piece: Piece;
	readonly links: readonly Link[];
	/** The edges where they are drafted, each run as the seam goes. */
	readonly lines: readonly [Path, ...Path[]];
	/** 1 where the piece lies on the side of squareTo(direction of the seam), else -1. */
	readonly inside: 1 | -1;
	readonly length: Mm;
	readonly otherHalf: boolean;
}

/** The motion that takes one way to another; mirrored, what lay on one side of it comes to lie on the other. */
const aligning = (from: Way, to: Way, mirrored: boolean): Motion => {
	const { dx, dy } = from.along;
	const angle = Math.atan2(dx * to.along.dy - dy * to.along.dx, dx * to.along.dx + dy * to.along.dy);
	const onLine = mirrored ? mirroring(from.at, moved(from.at, from.along, mm(1))) : REST;
	return followedBy(followedBy(onLine, turning(from.at, radians(angle))), shifting(from.at, to.at));
};

const edgeOf = (piece: Piece, { edge }: Link): PieceEdge | undefined =>
	piece.edges.find(({ name }) => name === edge);

/** An edge run as the seam goes. */
const lineOf = (piece: Piece, link: Link): readonly Path[] => {
	const path = edgeOf(piece, link)?.path;
	return path ? [link.reversed ? pathReversed(path) : path] : [];
};

const insideOf = (piece: Piece, { reversed }: Link): 1 | -1 =>
	isClockwise(piece.outline) === reversed ? -1 : 1;

/** A chain in parts of one piece each; a piece on the fold whose edge comes twice is laid once for each half. */
const partsOf = (chain: Chain, pieces: readonly Piece[]): readonly Part[] => {
	const groups: [Link, ...Link[]][] = [];
	for (const link of chain) {
		const group = groups.at(-1);
		const goesOn = group?.[0].piece === link.piece && group.every(({ edge }) => edge !== link.edge);
		if (group && goesOn) group.push(link);
		else groups.push([link]);
	}
	return groups.flatMap((links, i): Part[] => {
		const piece = pieces.find(({ key }) => key === links[0].piece);
		const [line, ...lines] = piece ? links.flatMap((link) => lineOf(piece, link)) : [];
		if (!piece || !line) return [];
		const length = links.reduce((sum, link) => sum + (edgeOf(piece, link)?.length ?? 0), 0);
		const again = groups
			.slice(0, i)
			.some(([{ piece: key, edge }]) => key === piece.key && edge === links[0].edge);
		return [
			{
				piece,
				links,
				lines: [line, ...lines],
				inside: insideOf(piece, links[0]),
				length: mm(length),
				otherHalf: again
			}
		];
	});
};

/** Where a part begins, and its chord's direction; the direction of its beginning where it comes back to where it began. */
const wayOf = ({ lines }: Part): Way | undefined => {
	const from = pathStart(lines[0]);
	const along = directionTo(from, pathEnd(lines.at(-1) ?? lines[0])) ?? startDirection(lines[0]);
	return along && { at: from, along };
};

const inwardAt = ({ path, length }: PieceEdge, along: Mm, clockwise: boolean): Direction | undefined => {
	const [before, after] = [Math.max(0, along - 0.5), Math.min(length, along + 0.5)];
	const [from, to] = [pointAtLength(path, mm(before)), pointAtLength(path, mm(after))];
	const runs = from && to && directionTo(from, to);
	return runs && (clockwise ? squareTo(runs) : opposite(squareTo(runs)));
};

const turnedBy = ({ a, b, c, d }: Motion, { dx, dy }: Direction): Direction => ({
	dx: a * dx + b * dy,
	dy: c * dx + d * dy
});

const notchesOf = ({ piece, links }: Part, motion: Motion, seam: string): readonly LaidNotch[] =>
	piece.notches.flatMap((notch) => {
		const edge = piece.edges.find(({ name }) => name === notch.edge);
		if (notch.seam !== seam || !edge || links.every((link) => link.edge !== notch.edge)) return [];
		const inward = inwardAt(edge, notch.along, isClockwise(piece.outline));
		return inward
			? [{ at: movedBy(motion, notch.at), inward: turnedBy(motion, inward), style: notch.style }]
			: [];
	});

const laidPart = (part: Part, motion: Motion, side: LaidPiece['side'], seam: string): LaidPiece => ({
	piece: part.piece,
	side,
	motion,
	lines: part.lines.map((line) => pathMovedBy(motion, line)),
	notches: notchesOf(part, motion, seam),
	otherHalf: part.otherHalf
});

/** Parts end to end: the first where it is drafted, each next where the one before ends, along the same way. */
const endToEnd = (parts: readonly Part[]): readonly Motion[] => {
	const [first] = parts;
	const way = first && wayOf(first);
	if (!way) return [];
	let at = way.at;
	return parts.map((part) => {
		const own = wayOf(part);
		const motion = own
			? aligning(own, { at, along: way.along }, part.inside !== first.inside)
			: shifting(pathStart(part.lines[0]), at);
		at = movedBy(motion, pathEnd(part.lines.at(-1) ?? part.lines[0]));
		return motion;
	});
};

const wholeLength = (parts: readonly Part[]): number => parts.reduce((sum, { length }) => sum + length, 0);

/** The place at a share of the length of lines that follow each other. */
const placeAt = (lines: readonly Path[], lengths: readonly Mm[], share: number): SheetPoint | undefined => {
	let left = share * lengths.reduce((sum, length) => sum + length, 0);
	for (const [i, line] of lines.entries()) {
		const whole = lengths[i] ?? 0;
		if (left <= whole || i === lines.length - 1) return pointAtLength(line, mm(Math.min(left, whole)));
		left -= whole;
	}
	return undefined;
};

/** Parts laid against lines: each begins where its share of the seam begins, and lies on the other side. */
const against = (parts: readonly Part[], base: readonly Path[], lengths: readonly Mm[], inside: 1 | -1) => {
	const whole = wholeLength(parts);
	let from = 0;
	return parts.map((part): Motion => {
		const to = from + part.length;
		const [start, end] = [placeAt(base, lengths, from / whole), placeAt(base, lengths, to / whole)];
		from = to;
		const own = wayOf(part);
		if (!own || !start || !end) return REST;
		const along = directionTo(start, end) ?? (base[0] && startDirection(base[0])) ?? own.along;
		return aligning(own, { at: start, along }, part.inside === inside);
	});
};

/** A link at one end of a chain, as it comes to the seam's end there. */
interface ArrivingLink {
	readonly piece: Piece;
	readonly way: Way;
	readonly inside: 1 | -1;
	readonly crossing: Path;
}

const arriving = (
	pieces: readonly Piece[],
	edges: EdgesOfPieces,
	chain: Chain,
	end: End
): ArrivingLink | undefined => {
	const link = chain.at(end === 'start' ? 0 : -1);
	const piece = pieces.find(({ key }) => key === link?.piece);
	const [line] = link && piece ? lineOf(piece, link) : [];
	if (!link || !piece || !line) return undefined;
	const own: End = link.reversed ? (end === 'start' ? 'end' : 'start') : end;
	const crossing = neighbour(edges, link, own)?.path;
	const along = end === 'start' ? startDirection(line) : endDirection(line);
	if (!crossing || !along) return undefined;
	const at = end === 'start' ? pathStart(line) : pathEnd(line);
	return { piece, way: { at, along }, inside: insideOf(piece, link), crossing };
};

/** One end of a seam, the first side where it lies, the second so that both edges go the same way just there. */
const sewnEnd = (
	{ pieces, runs }: SewnTogether,
	report: SeamReport,
	end: End,
	laid: Motion
): readonly SewnEnd[] => {
	const edges = Object.fromEntries(pieces.map((piece) => [piece.key, piece.edges]));
	const run = runs.find(({ run: name }) => 'label' in name && name.label === report.runs[end]);
	const first = arriving(pieces, edges, report.chains.first, end);
	const second = arriving(pieces, edges, report.chains.second, end);
	if (!run || !first || !second) return [];
	const onto = aligning(second.way, first.way, first.inside === second.inside);
	const sideOf = ({ piece, crossing }: ArrivingLink, motion: Motion): SewnEnd['sides'][number] => ({
		outline: pathMovedBy(motion, piece.outline),
		crossing: pathMovedBy(motion, crossing)
	});
	const along = turnedBy(laid, first.way.along);
	return [
		{
			end,
			run,
			at: movedBy(laid, first.way.at),
			along: end === 'start' ? along : opposite(along),
			sides: [sideOf(first, laid), sideOf(second, followedBy(onto, laid))]
		}
	];
};

/** What of a pattern is needed to lay its pieces edge to edge. */
export type SewnTogether = Pick<Pattern, 'pieces' | 'seams' | 'runs'>;

/** Two lines of one shape lie on each other laid edge to edge (a neckline and its band), or one over the other (two side seams). */
const gapBetween = (laid: readonly LaidPiece[]): Gap | undefined => {
	const lineOn = (side: LaidPiece['side']): Path | undefined =>
		chained(laid.filter((each) => each.side === side).flatMap(({ lines }) => lines));
	const [first, second] = [lineOn('first'), lineOn('second')];
	if (!first || !second) return undefined;
	const flat = greatestDistance(first, second).away;
	const chord = directionTo(pathStart(second), pathEnd(second));
	if (!chord) return { flat, shape: flat };
	const over = pathMovedBy(mirroring(pathStart(second), pathEnd(second)), second);
	return { flat, shape: mm(Math.min(flat, greatestDistance(first, over).away)) };
};

/**
 * Lays the two sides of a seam edge to edge, as they will be sewn and opened out, right sides up: their beginnings meet and their
 * chords run alike, a piece mirrored where both would else lie on one side. The side in fewer parts lies as it is drafted.
 * Undefined where there is no such seam, or this body lacks a side of it.
 */
export const edgeToEdge = (pattern: SewnTogether, seam: string): EdgeToEdge | undefined => {
	const report = pattern.seams.find(({ name }) => name === seam);
	if (!report) return undefined;
	const { first, second } = report.chains;
	const [one, other] = [partsOf(first, pattern.pieces), partsOf(second, pattern.pieces)];
	const onFirst = one.length <= other.length;
	const [still, led] = onFirst ? [one, other] : [other, one];
	const [base] = still;
	if (!base || led.length === 0) return undefined;
	const resting = endToEnd(still);
	const lay = (parts: readonly Part[], motions: readonly Motion[], side: LaidPiece['side']): LaidPiece[] =>
		parts.map((part, i) => laidPart(part, motions[i] ?? REST, side, seam));
	const stillLaid = lay(still, resting, onFirst ? 'first' : 'second');
	const lines = stillLaid.flatMap((each) => each.lines);
	const lengths = still.flatMap(({ piece, links }) =>
		links.map((link) => edgeOf(piece, link)?.length ?? mm(0))
	);
	const ledLaid = lay(led, against(led, lines, lengths, base.inside), onFirst ? 'second' : 'first');
	const laid = onFirst ? [...stillLaid, ...ledLaid] : [...ledLaid, ...stillLaid];
	const endOf = (side: LaidPiece['side']): SheetPoint => {
		const last = laid
			.filter((each) => each.side === side)
			.at(-1)
			?.lines.at(-1);
		return pathEnd(last ?? base.lines[0]);
	};
	const firsts = laid.filter(({ side }) => side === 'first');
	const ends = [['start', firsts[0]] as const, ['end', firsts.at(-1)] as const];
	return {
		report,
		laid,
		firstEnd: endOf('first'),
		secondEnd: endOf('second'),
		gap: report.ease < 0 ? undefined : gapBetween(laid),
		ends: ends.flatMap(([end, part]) => sewnEnd(pattern, report, end, part?.motion ?? REST))
	};
};
