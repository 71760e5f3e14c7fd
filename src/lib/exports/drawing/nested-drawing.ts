import type { Speech } from '#shared/speech/speech.ts';
import { mm, radians, type Mm, type Radians } from '#shared/units.ts';
import type { NestedPiece, NestedSize } from '#garment/nested.ts';
import { buttonStrokes } from '#garment/buttons.ts';
import { cutStrokes, grainStrokes, notchStrokes, outwardAt } from '#garment/piece-lines.ts';
import { mouthNotches } from '#garment/piece-signs.ts';
import { pathMovedBy, shifting, type Motion } from '#geometry/motion.ts';
import { pathEnd, pathLength, pathStart, pointAtLength, polyline, type Path } from '#geometry/path.ts';
import {
	at,
	directionTo,
	distance,
	moved,
	opposite,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import type { Drawing, Stroke, StrokeKind, Words } from './drawing.ts';
import { frameOf } from './line-words.ts';
import { writingWithin } from './writing.ts';

/** Each size has a kind of line of its own, the smallest the first. */
export const NEST_KINDS = [
	'nest1',
	'nest2',
	'nest3',
	'nest4',
	'nest5',
	'nest6',
	'nest7'
] as const satisfies readonly StrokeKind[];
/** So many sizes can be told apart on one sheet. */
export const MOST_SIZES = NEST_KINDS.length;

/** Height of a size's name along its line, and how far inside the line it stands. */
const NAME: Mm = mm(4);
const INSIDE: Mm = mm(1.4);
/** Names of neighbouring sizes stand so far apart along their lines. */
const STAGGER: Mm = mm(14);
/** How far a notch is drawn inward from its cutting line; the arms of a marked point's cross. */
const SNIP: Mm = mm(5);
const CROSS: Mm = mm(2.5);
/** Lines nearer to each other than this are one on paper. */
const ALIKE = 0.5;

/** Over so much of a line it is seen which way it runs. */
const A_LITTLE = 0.1;

const HERE = at(0, 0);

const kindOf = (i: number): (typeof NEST_KINDS)[number] => NEST_KINDS[i] ?? 'nest1';
const laying = ({ on }: NestedSize): Motion => shifting(on, HERE);

const strokes = (kind: StrokeKind, paths: readonly Path[], motion: Motion): readonly Stroke[] =>
	paths.map((path) => ({ kind, path: pathMovedBy(motion, path) }));

/** The end of a notch's stroke that lies at the cutting line: whole strokes would reach over the lines of other sizes. */
const snip = (stroke: Path): readonly Path[] => {
	const [inner, outer] = [pathStart(stroke), pathEnd(stroke)];
	const back = directionTo(outer, inner);
	return back ? [polyline(outer, moved(outer, back, mm(Math.min(SNIP, distance(inner, outer)))))] : [];
};

const crossAt = ({ x, y }: SheetPoint): readonly Path[] => [
	polyline(at(x - CROSS, y), at(x + CROSS, y)),
	polyline(at(x, y - CROSS), at(x, y + CROSS))
];

const movedPiecePath = (size: NestedSize, path: Path): Path => pathMovedBy(laying(size), path);

/** What is drawn of one size: its cutting line and darts in its own kind of line, its notches, marked points and buttons. */
const sizeStrokes = (size: NestedSize, i: number): readonly Stroke[] => {
	const { piece } = size;
	const motion = laying(size);
	const { notches, darts, drills, buttons } = piece;
	return [
		...cutStrokes(piece).map(({ path, closed }) => ({
			kind: kindOf(i),
			path: pathMovedBy(motion, path),
			closed
		})),
		...strokes(
			kindOf(i),
			darts.flatMap(({ legs }) => legs),
			motion
		),
		...strokes(
			'notch',
			[
				...notches.flatMap((notch) => notchStrokes(piece, notch)),
				...darts.flatMap((dart) => mouthNotches(piece, dart))
			].flatMap(snip),
			motion
		),
		...strokes(
			'drill',
			drills.flatMap((drill) => crossAt(drill.at)),
			motion
		),
		...strokes('button', buttons ? buttonStrokes(buttons) : [], motion)
	];
};

/** How far a place lies beside the straight way from one place to another. */
const besideWay = (from: SheetPoint, to: SheetPoint, { x, y }: SheetPoint): number => {
	const way = directionTo(from, to);
	return way ? Math.abs((x - from.x) * way.dy - (y - from.y) * way.dx) : distance(from, { x, y });
};

/** Lines drawn on the piece that lie on each other in all sizes, such as the centre front, as long as in the largest: levels that move would only hide the rest. */
const markStrokes = (sizes: readonly NestedSize[]): readonly Stroke[] => {
	const all = sizes.map((size) =>
		size.piece.marks.map(({ label, path }) => ({ label, path: movedPiecePath(size, path) }))
	);
	return (all.at(-1) ?? []).flatMap(({ label, path }): readonly Stroke[] => {
		const [from, to] = [pathStart(path), pathEnd(path)];
		const isAlike = all.every((marks) =>
			marks.some(
				(other) =>
					other.label === label &&
					[pathStart(other.path), pathEnd(other.path)].every((end) => besideWay(from, to, end) < ALIKE)
			)
		);
		return isAlike ? [{ kind: 'mark', path }] : [];
	});
};

/** The part of a cutting line beside an edge, as it lies on the sheet. */
const beside = (size: NestedSize, edge: string): Path | undefined => {
	const path = size.piece.cutting.edges.find(({ name }) => name === edge)?.path;
	return path && pathMovedBy(laying(size), path);
};

/** A place along a path, and which way it runs there. */
const placeAlong = (
	path: Path,
	length: Mm
): { readonly at: SheetPoint; readonly runs: Direction } | undefined => {
	const [place, next] = [length, mm(length + A_LITTLE)].map((each) => pointAtLength(path, each));
	const runs = place && next && directionTo(place, next);
	return runs && { at: place, runs };
};

/** How far apart neighbouring sizes lie along an edge, where they are nearest to each other at its middle; nothing where one lacks it or is too short to be written on. */
const roomAlong = (sizes: readonly NestedSize[], edge: string): number => {
	const middles = sizes.flatMap((size) => {
		const path = beside(size, edge);
		const long = path ? pathLength(path) : 0;
		return path && long > STAGGER * (sizes.length + 1) ? (placeAlong(path, mm(long / 2)) ?? []) : [];
	});
	if (middles.length < sizes.length) return 0;
	return Math.min(
		...middles.slice(1).map((each, i) => distance(each.at, middles[i]?.at ?? each.at)),
		...(middles.length === 1 ? [1] : [])
	);
};

/** Turned so that it reads from left to right. */
const readable = ({ dx, dy }: Direction): Radians => {
	const angle = Math.atan2(dy, dx);
	return radians(Math.abs(angle) > Math.PI / 2 + 1e-9 ? angle - Math.sign(angle) * Math.PI : angle);
};

/** The name of each size beside its own line, along the edge where the sizes lie furthest apart, one further along than the other. */
const sizeNames = (sizes: readonly NestedSize[]): readonly Words[] => {
	const edges = sizes[0]?.piece.edges.filter(({ kind }) => kind !== 'fold').map(({ name }) => name) ?? [];
	const [best] = edges
		.map((name) => ({ name, room: roomAlong(sizes, name) }))
		.sort((a, b) => b.room - a.room);
	if (!best || best.room === 0) return [];
	return sizes.flatMap((size, i) => {
		const path = beside(size, best.name);
		if (!path) return [];
		const along = mm(pathLength(path) / 2 + (i - (sizes.length - 1) / 2) * STAGGER);
		const place = placeAlong(path, along);
		if (!place) return [];
		const inward = opposite(outwardAt(size.piece.outline, place.runs));
		const turn = readable(place.runs);
		// The writing line is the foot of the letters: where they stand up from the line, it is nearer to it.
		const up = inward.dx * Math.sin(turn) - inward.dy * Math.cos(turn) > 0;
		const off = mm(up ? INSIDE : INSIDE + NAME * 0.75);
		return [{ text: size.name, at: moved(place.at, inward, off), middle: true, size: NAME, turn }];
	});
};

/** The fold of the largest size, which holds those of all others. */
const foldStroke = (sizes: readonly NestedSize[]): readonly Stroke[] => {
	const largest = sizes.at(-1);
	const fold = largest?.piece.edges.find(({ name }) => name === largest.piece.fold);
	return largest && fold ? [{ kind: 'fold', path: movedPiecePath(largest, fold.path) }] : [];
};

/**
 * A piece in several sizes as it is printed: each cutting line with darts and notches in a kind of line of its own and its name beside it,
 * growth lines through the same corner of all, the fold, the grain, and the words once, within the smallest.
 */
export const nestedDrawing = ({ sizes, growth }: NestedPiece, words: readonly string[]): Drawing => {
	const [smallest] = sizes;
	if (!smallest) return { name: '', strokes: [], words: [] };
	const grain = grainStrokes(smallest.piece).map((path) => movedPiecePath(smallest, path));
	const drawn = [...sizes.flatMap(sizeStrokes), ...markStrokes(sizes)];
	const names = sizeNames(sizes);
	const clearOf = [...grain, ...names.map(frameOf), ...drawn.map(({ path }) => path), ...growth];
	const outline = movedPiecePath(smallest, smallest.piece.outline);
	return {
		name: smallest.piece.name,
		strokes: [
			...drawn,
			...growth.map((path): Stroke => ({ kind: 'growth', path })),
			...foldStroke(sizes),
			...grain.map((path): Stroke => ({ kind: 'grain', path }))
		],
		words: [...writingWithin(words, outline, clearOf), ...names]
	};
};

/** Length of a sample of each line in the key, and the room of its row. */
const SAMPLE: Mm = mm(60);
const ROW: Mm = mm(8);
const WORDS: Mm = mm(4);

/** Which line is which size: a sample of each with its name, under a heading. */
export const nestKey = (names: readonly string[], { words }: Speech): Drawing => ({
	name: words.nested.key,
	strokes: names.map((_, i) => ({
		kind: kindOf(i),
		path: polyline(at(0, (i + 1) * ROW), at(SAMPLE, (i + 1) * ROW))
	})),
	words: [
		{ text: words.nested.key, at: at(0, 0), middle: false, size: WORDS, turn: radians(0) },
		...names.map((name, i) => ({
			text: words.nested.size({ name }),
			at: at(SAMPLE + WORDS, (i + 1) * ROW + WORDS / 3),
			middle: false,
			size: WORDS,
			turn: radians(0)
		}))
	]
});
