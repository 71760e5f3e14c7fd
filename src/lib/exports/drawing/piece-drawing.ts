import { mm, radians, type Mm } from '#shared/units.ts';
import { cutStrokes, grainLine, grainStrokes, notchStrokes } from '#garment/piece-lines.ts';
import type { Piece } from '#garment/piece.ts';
import { boundsOf, pathLength, pointAtLength, polyline, type Path } from '#geometry/path.ts';
import { at, between, directionTo, type SheetPoint } from '#geometry/point.ts';
import type { Drawing, Stroke, Words } from './drawing.ts';

/** Heights of writing: the piece's name, and everything else. */
const NAME_SIZE: Mm = mm(7);
const TEXT_SIZE: Mm = mm(4);
/** Writing lines stand this much of their height apart. */
const LEADING = 1.5;
/** Half the length of a drill mark's cross. */
const CROSS: Mm = mm(4);
/** How far inside a fold its words stand. */
const INSIDE: Mm = mm(6);

const cross = ({ x, y }: SheetPoint): readonly Path[] => [
	polyline(at(x - CROSS, y), at(x + CROSS, y)),
	polyline(at(x, y - CROSS), at(x, y + CROSS))
];

const strokes = (kind: Stroke['kind'], paths: readonly Path[]): readonly Stroke[] =>
	paths.map((path) => ({ kind, path }));

/** A turn that never writes upside down: 90 degrees either way at the most. */
const readable = (angle: number): number => {
	const half = Math.PI / 2;
	if (angle > half) return angle - Math.PI;
	return angle <= -half ? angle + Math.PI : angle;
};

/** Words along a line, at its middle, a little to its inner side. */
const wordsAlong = (text: string, path: Path, size: Mm): readonly Words[] => {
	const half = mm(pathLength(path) / 2);
	const [middle, next] = [pointAtLength(path, half), pointAtLength(path, mm(half + 1))];
	const way = middle && next && directionTo(middle, next);
	if (!middle || !way) return [];
	const turn = readable(Math.atan2(way.dy, way.dx));
	const place = at(middle.x + Math.sin(turn) * size * 0.4, middle.y - Math.cos(turn) * size * 0.4);
	return [{ text, at: place, middle: true, size, turn: radians(turn) }];
};

/** Lines of writing under one another, the first larger, about a place. */
const block = (lines: readonly string[], { x, y }: SheetPoint): readonly Words[] => {
	const height = NAME_SIZE + (lines.length - 1) * TEXT_SIZE * LEADING;
	return lines.map((text, i) => ({
		text,
		at: at(x, y - height / 2 + (i === 0 ? NAME_SIZE : NAME_SIZE + i * TEXT_SIZE * LEADING)),
		middle: true,
		size: i === 0 ? NAME_SIZE : TEXT_SIZE,
		turn: radians(0)
	}));
};

/** Where a piece's writing stands: beside its grain line, at a third of the piece's height. */
const writingPlace = (piece: Piece): SheetPoint => {
	const { left, right } = boundsOf([piece.outline]);
	const [from, to] = grainLine(piece);
	const place = between(from, to, 0.35);
	return at((left + right) / 2, place.y);
};

const foldWords = (piece: Piece): readonly Words[] => {
	const fold = piece.edges.find(({ name }) => name === piece.fold);
	if (!fold) return [];
	return wordsAlong('fold', fold.path, TEXT_SIZE).map((words) => ({
		...words,
		at: at(words.at.x + INSIDE, words.at.y)
	}));
};

/**
 * A piece as it is printed: cutting line, stitching line, fold, grain, notches, marks, darts and drill points, with
 * its name and words. `words` are the lines of writing, the piece's name first.
 */
export const pieceDrawing = (piece: Piece, words: readonly string[]): Drawing => ({
	name: piece.name,
	strokes: [
		...cutStrokes(piece).map((stroke) => ({ kind: 'cutting' as const, ...stroke })),
		...strokes(
			'stitching',
			piece.edges.filter(({ kind }) => kind !== 'fold').map(({ path }) => path)
		),
		...strokes(
			'fold',
			piece.edges.filter(({ kind }) => kind === 'fold').map(({ path }) => path)
		),
		...strokes('grain', grainStrokes(piece)),
		...strokes(
			'notch',
			piece.notches.flatMap((notch) => notchStrokes(piece, notch))
		),
		...strokes(
			'mark',
			piece.marks.map(({ path }) => path)
		),
		...strokes(
			'dart',
			piece.darts.flatMap(({ legs }) => legs)
		),
		...strokes(
			'drill',
			piece.drills.flatMap((drill) => cross(drill.at))
		)
	],
	words: [
		...block(words, writingPlace(piece)),
		...foldWords(piece),
		...piece.marks.flatMap(({ label, path }) => wordsAlong(label, path, TEXT_SIZE))
	]
});
