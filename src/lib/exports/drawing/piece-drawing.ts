import type { Speech } from '#shared/speech/speech.ts';
import { mm, radians, type Mm } from '#shared/units.ts';
import { buttonStrokes } from '#garment/buttons.ts';
import type { PieceEdge } from '#garment/edges.ts';
import type { Meeting } from '#garment/meetings.ts';
import { cutStrokes, grainStrokes, notchStrokes, outwardAt } from '#garment/piece-lines.ts';
import { dartMiddle, dartTips, foldStrokes, gatherStroke, mouthNotches } from '#garment/piece-signs.ts';
import type { Piece } from '#garment/piece.ts';
import { arcPath } from '#geometry/arc.ts';
import { boundsOf, pathSamples, polyline, type Path } from '#geometry/path.ts';
import { at, distance, opposite, type SheetPoint } from '#geometry/point.ts';
import { wordsBounds, type Drawing, type Stroke, type Words } from './drawing.ts';
import { bothSides, frameOf, wordsAbout, wordsBeside, type Room } from './line-words.ts';
import { writingAt, writingIn } from './writing.ts';

/** Half the arms of a marked point's cross, and the ring about it: a page's own marks have a square instead. */
const CROSS: Mm = mm(4);
const RING: Mm = mm(2.5);
/** The ring at a dart's tip. */
const TIP: Mm = mm(1.2);
/** How far inside a fold its bracket stands, and how far inside an edge the sign for gathers reaches. */
const BRACKET: Mm = mm(8);
const GATHERED: Mm = mm(9);
/** White between a piece and the words that stand beside it. */
const BESIDE: Mm = mm(10);
/** How closely curves are followed round the writing. */
const STEP: Mm = mm(4);

const circle = (centre: SheetPoint, radius: Mm): Path =>
	arcPath(centre, at(centre.x + radius, centre.y), radians(2 * Math.PI));

const cross = ({ x, y }: SheetPoint): readonly Path[] => [
	polyline(at(x - CROSS, y), at(x + CROSS, y)),
	polyline(at(x, y - CROSS), at(x, y + CROSS))
];

const strokes = (kind: Stroke['kind'], paths: readonly Path[]): readonly Stroke[] =>
	paths.map((path) => ({ kind, path }));

const pieceStrokes = (piece: Piece): readonly Stroke[] => {
	const { edges, notches, marks, darts, drills } = piece;
	const isFold = ({ kind }: PieceEdge): boolean => kind === 'fold';
	const paths = (some: readonly PieceEdge[]): readonly Path[] => some.map(({ path }) => path);
	return [
		...cutStrokes(piece).map((stroke) => ({ kind: 'cutting' as const, ...stroke })),
		...strokes('stitching', paths(edges.filter((edge) => !isFold(edge)))),
		...strokes('fold', paths(edges.filter(isFold))),
		...strokes('grain', [...grainStrokes(piece), ...foldStrokes(piece, BRACKET)]),
		...strokes('notch', [
			...notches.flatMap((notch) => notchStrokes(piece, notch)),
			...darts.flatMap((dart) => mouthNotches(piece, dart))
		]),
		...strokes('mark', [...marks.map(({ path }) => path), ...darts.map((dart) => dartMiddle(piece, dart))]),
		...strokes(
			'dart',
			darts.flatMap(({ legs }) => legs)
		),
		...strokes('drill', [
			...drills.flatMap((drill) => [...cross(drill.at), circle(drill.at, RING)]),
			...darts.flatMap(dartTips).map((tip) => circle(tip, TIP))
		]),
		...strokes('button', piece.buttons ? buttonStrokes(piece.buttons) : []),
		...strokes(
			'gather',
			edges.filter(({ gathered }) => gathered).flatMap((edge) => gatherStroke(piece, edge))
		)
	];
};

/** What writing keeps clear of: all that is drawn inside a piece. */
const INSIDE: ReadonlySet<Stroke['kind']> = new Set(['grain', 'mark', 'dart', 'drill', 'button', 'gather']);

/** A room that fills: each word that is written in it is one more line to keep clear of. */
const fillingRoom = (outline: Path, lines: readonly Path[]) => {
	const taken = [...lines];
	const room = (): Room => ({
		ring: pathSamples(outline, STEP),
		lines: taken.map((path) => pathSamples(path, STEP))
	});
	return {
		taken,
		/** Finds a place and takes it. */
		write: (find: (room: Room) => Words | undefined): readonly Words[] => {
			const words = find(room());
			if (words) taken.push(frameOf(words));
			return words ? [words] : [];
		}
	};
};

/** What one edge is sewn to, in words. */
const meetingWords = (
	edge: string,
	meetings: readonly Meeting[],
	{ words: { garments } }: Speech
): string => {
	const own = meetings.filter((each) => each.edge === edge);
	return [...new Set(own.map((each) => garments.meets(each)))].join('; ');
};

/** What every edge of a piece is sewn to, a line each, where it is not written along the edge. */
export const meetingLines = (
	{ edges }: Pick<Piece, 'edges'>,
	meetings: readonly Meeting[],
	speech: Speech
): readonly string[] =>
	edges.flatMap(({ name, noun }) => {
		const meets = meetingWords(name, meetings, speech);
		return meets === '' ? [] : [speech.words.garments.edgeMeets({ edge: noun, meets })];
	});

/** The words that stand at a piece's own lines. */
const smallWords = (
	piece: Piece,
	{ words: { garments, paper } }: Speech,
	write: ReturnType<typeof fillingRoom>['write']
) => [
	...write((room) => {
		const [grain] = grainStrokes(piece);
		return grain && wordsBeside(garments.selvedge, grain, bothSides, room);
	}),
	...piece.edges
		.filter(({ name }) => name === piece.fold)
		.flatMap(({ path }) =>
			write((room) =>
				wordsBeside(paper.fold, path, (runs) => [opposite(outwardAt(piece.outline, runs))], room)
			)
		),
	...piece.drills.flatMap((drill) => write((room) => wordsAbout(drill.label, drill.at, CROSS, room))),
	...(piece.buttons?.holes.slice(0, 1) ?? []).flatMap((path) =>
		write((room) => wordsBeside(garments.buttonAndHole, path, bothSides, room))
	),
	...piece.marks.flatMap(({ label, path }) => write((room) => wordsBeside(label, path, bothSides, room))),
	...piece.darts.flatMap((dart) =>
		write((room) => wordsBeside(dart.name, dartMiddle(piece, dart), bothSides, room))
	),
	...piece.edges
		.filter(({ gathered }) => gathered)
		.flatMap(({ path }) =>
			write((room) =>
				wordsBeside(
					garments.gathered,
					path,
					(runs) => [opposite(outwardAt(piece.outline, runs))],
					room,
					GATHERED
				)
			)
		)
];

/** What a piece's edges are sewn to, along each that has the room; the names of the edges that have. */
const edgeWords = (
	piece: Piece,
	meetings: readonly Meeting[],
	speech: Speech,
	write: ReturnType<typeof fillingRoom>['write']
): { readonly words: readonly Words[]; readonly told: ReadonlySet<string> } => {
	const found = piece.edges.map(({ name, path, gathered }) => {
		const text = meetingWords(name, meetings, speech);
		const sides = (runs: Parameters<typeof bothSides>[0]) => [opposite(outwardAt(piece.outline, runs))];
		const words =
			text === '' ? [] : write((room) => wordsBeside(text, path, sides, room, gathered ? GATHERED : 0));
		return { name, words };
	});
	return {
		words: found.flatMap(({ words }) => words),
		told: new Set(found.filter(({ words }) => words.length > 0).map(({ name }) => name))
	};
};

/** The words of a piece that has no room for them: beside it, to its right where it is tall, else under it, with a leader to it. */
const besidePiece = (
	piece: Piece,
	texts: readonly string[]
): { readonly words: readonly Words[]; readonly leader: Path } => {
	const { left, top, right, bottom } = boundsOf([piece.cutting.outline]);
	const isTall = bottom - top > right - left;
	const words = writingAt(texts, isTall ? at(right + BESIDE, top) : at(left, bottom + BESIDE));
	const [first] = words;
	const start = first ? wordsBounds(first) : { left: mm(left), top: mm(bottom) };
	const from = isTall ? at(start.left - 1, start.top + 2) : at(start.left + 2, start.top - 1);
	const ring = pathSamples(piece.outline, STEP);
	const nearest = ring.reduce(
		(best, place) => (distance(place, from) < distance(best, from) ? place : best),
		ring[0] ?? from
	);
	return { words, leader: polyline(from, nearest) };
};

/**
 * A piece as it is printed: cutting line, stitching line, fold with its bracket, grain, notches, marks, darts, gathers
 * and marked points, each named, what every edge is sewn to, and its own words. `words` are the lines of writing, the
 * piece's name first; where it has no room for them they stand beside it.
 */
export const pieceDrawing = (
	piece: Piece,
	words: readonly string[],
	speech: Speech,
	meetings: readonly Meeting[] = []
): Drawing => {
	const drawn = pieceStrokes(piece);
	const lines = drawn.filter(({ kind }) => INSIDE.has(kind)).map(({ path }) => path);
	const { taken, write } = fillingRoom(piece.outline, lines);
	const small = smallWords(piece, speech, write);
	const own = [...taken];
	const along = edgeWords(piece, meetings, speech, write);
	const untold = meetings.filter(({ edge }) => !along.told.has(edge));
	const { garments } = speech.words;
	const hasSelvedge = small.some(({ text }) => text === garments.selvedge);
	const texts = hasSelvedge ? words : [...words, garments.arrowToSelvedge];
	const whole = writingIn([...texts, ...meetingLines(piece, untold, speech)], piece.outline, taken);
	if (whole) return { name: piece.name, strokes: drawn, words: [...whole, ...small, ...along.words] };
	const all = [...texts, ...meetingLines(piece, meetings, speech)];
	const alone = writingIn(all, piece.outline, own);
	if (alone) return { name: piece.name, strokes: drawn, words: [...alone, ...small] };
	const beside = besidePiece(piece, all);
	const name =
		writingIn(words.slice(0, 1), piece.outline, own) ??
		writingIn([String(piece.number)], piece.outline, []) ??
		[];
	return {
		name: piece.name,
		strokes: [...drawn, { kind: 'leader', path: beside.leader }],
		words: [...name, ...small, ...beside.words]
	};
};
