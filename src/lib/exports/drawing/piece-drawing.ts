import type { Speech } from '#shared/speech/speech.ts';
import { mm, radians, type Mm } from '#shared/units.ts';
import { cutStrokes, grainStrokes, notchStrokes } from '#garment/piece-lines.ts';
import type { Piece } from '#garment/piece.ts';
import { pathLength, pointAtLength, polyline, type Path } from '#geometry/path.ts';
import { at, directionTo, type SheetPoint } from '#geometry/point.ts';
import type { Drawing, Stroke, Words } from './drawing.ts';
import { writingWithin } from './writing.ts';

/** Height of the words along a line. */
const TEXT_SIZE: Mm = mm(4);
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

const foldWords = (piece: Piece, { words: { paper } }: Speech): readonly Words[] => {
	const fold = piece.edges.find(({ name }) => name === piece.fold);
	if (!fold) return [];
	return wordsAlong(paper.fold, fold.path, TEXT_SIZE).map((words) => ({
		...words,
		at: at(words.at.x + INSIDE, words.at.y)
	}));
};

/** What writing keeps clear of. */
const inside = (piece: Piece): readonly Path[] => [
	...grainStrokes(piece).slice(0, 1),
	...piece.marks.map(({ path }) => path),
	...piece.darts.flatMap(({ legs }) => legs),
	...piece.drills.flatMap((drill) => cross(drill.at))
];

/**
 * A piece as it is printed: cutting line, stitching line, fold, grain, notches, marks, darts and drill points, with
 * its name and words. `words` are the lines of writing, the piece's name first.
 */
export const pieceDrawing = (piece: Piece, words: readonly string[], speech: Speech): Drawing => ({
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
		...writingWithin(words, piece.outline, inside(piece)),
		...foldWords(piece, speech),
		...piece.marks.flatMap(({ label, path }) => wordsAlong(label, path, TEXT_SIZE))
	]
});
