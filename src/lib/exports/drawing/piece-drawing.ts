import type { Speech } from '#shared/speech/speech.ts';
import { mm, radians, type Mm } from '#shared/units.ts';
import { buttonStrokes } from '#garment/buttons.ts';
import type { PieceEdge } from '#garment/edges.ts';
import type { Meeting } from '#garment/meetings.ts';
import { arrowHead, cutStrokes, grainStrokes, notchStrokes, outwardAt } from '#garment/piece-lines.ts';
import { dartMiddle, dartTips, foldStrokes, gatherStroke, mouthNotches } from '#garment/piece-signs.ts';
import type { Piece } from '#garment/piece.ts';
import type { WearReport } from '#garment/wear.ts';
import { arcPath } from '#geometry/arc.ts';
import {
	boundsOf,
	pathSamples,
	pathEnd,
	pathStart,
	polyline,
	endDirection,
	startDirection,
	type Bounds,
	type Path
} from '#geometry/path.ts';
import { at, distance, opposite, type SheetPoint } from '#geometry/point.ts';
import { grown, wordsBounds, type Drawing, type Stroke, type Words } from './drawing.ts';
import { bothSides, frameOf, wordsAbout, wordsBeside, type Room } from './line-words.ts';
import { meetsAny, within, writingAt, writingIn } from './writing.ts';

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

/** The line along which a check of wear that fails was made, with an arrow at each end. */
const wearStrokes = ({ place }: WearReport): readonly Path[] => {
	const [begins, ends] = place ? [startDirection(place.path), endDirection(place.path)] : [];
	if (!place || !begins || !ends) return [];
	const { path } = place;
	return [path, arrowHead(pathStart(path), begins), arrowHead(pathEnd(path), opposite(ends))];
};

const pieceStrokes = (piece: Piece, failing: readonly WearReport[]): readonly Stroke[] => {
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
		),
		...strokes('wear', failing.flatMap(wearStrokes))
	];
};

/** What writing keeps clear of: all that is drawn inside a piece. */
const INSIDE: ReadonlySet<Stroke['kind']> = new Set([
	'grain',
	'mark',
	'dart',
	'drill',
	'button',
	'gather',
	'wear'
]);

/**
 * A room that fills: each word that is written in it is one more line to keep clear of. Words keep clear of `joints` too, where
 * pages are joined, if they can.
 */
const fillingRoom = (outline: Path, lines: readonly Path[], joints: readonly Path[]) => {
	const sampled = (path: Path) => pathSamples(path, STEP);
	const taken = [...lines];
	const [ring, within, between] = [sampled(outline), lines.map(sampled), joints.map(sampled)];
	return {
		taken,
		/** Finds a place and takes it; one across a joint only where the words must stand there. */
		write: (find: (room: Room) => Words | undefined, must = true): readonly Words[] => {
			const clear = find({ ring, lines: [...within, ...between] });
			const words = clear ?? (must && joints.length > 0 ? find({ ring, lines: within }) : undefined);
			if (!words) return [];
			taken.push(frameOf(words));
			within.push(sampled(frameOf(words)));
			return [words];
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
		.flatMap(({ path, title }) =>
			write((room) =>
				wordsBeside(
					paper.edgeOnFold({ title }),
					path,
					(runs) => [opposite(outwardAt(piece.outline, runs))],
					room
				)
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

/** What fails, and its number, at the line along which it was measured. */
const wearMarks = (
	failing: readonly WearReport[],
	speech: Speech,
	write: ReturnType<typeof fillingRoom>['write']
): readonly Words[] =>
	failing.flatMap(({ kind, label, value, place }) =>
		place && value !== undefined
			? write((room) =>
					wordsBeside(speech.words.wear.mark({ kind, label, value }), place.path, bothSides, room)
				)
			: []
	);

/** Edges that are sewn to nothing, and are called by their own names. */
const NAMED: ReadonlySet<PieceEdge['kind']> = new Set(['opening', 'hem']);

/** What a piece's edges are sewn to, along each that has the room; the names of the edges that have. */
const edgeWords = (
	piece: Piece,
	meetings: readonly Meeting[],
	speech: Speech,
	write: ReturnType<typeof fillingRoom>['write']
): { readonly words: readonly Words[]; readonly told: ReadonlySet<string> } => {
	const found = piece.edges.map(({ name, path, gathered, kind, title }) => {
		const text =
			meetingWords(name, meetings, speech) || (NAMED.has(kind) ? speech.words.pattern.edge({ title }) : '');
		const sides = (runs: Parameters<typeof bothSides>[0]) => [opposite(outwardAt(piece.outline, runs))];
		const words =
			text === ''
				? []
				: write((room) => wordsBeside(text, path, sides, room, gathered ? GATHERED : 0), false);
		return { name, words };
	});
	return {
		words: found.flatMap(({ words }) => words),
		told: new Set(found.filter(({ words }) => words.length > 0).map(({ name }) => name))
	};
};

/** The rectangle that lines of writing take up. */
const blockBounds = (words: readonly Words[]): Bounds =>
	boundsOf(
		[],
		words.map(wordsBounds).flatMap(({ left, top, right, bottom }) => [at(left, top), at(right, bottom)])
	);

/** Where a piece lies on a sheet, as lines of its own drawing: the joints of pages, frames of other pieces, and what of the sheet is printed. */
export interface OnSheet {
	readonly joints: readonly Path[];
	readonly others: readonly Path[];
	readonly sheet: Bounds | undefined;
}
const ALONE: OnSheet = { joints: [], others: [], sheet: undefined };

/** How closely places beside a piece are tried, and the white that words keep from its outline there. */
const BESIDE_STEP: Mm = mm(4);
const CLEAR: Mm = mm(5);

/** Writing beside a piece: nearest to `start` in a rectangle where it lies neither over the piece nor across a joint of pages, if there is such a place. */
const placedBeside = (
	block: readonly Words[],
	start: SheetPoint,
	whole: Bounds,
	lines: readonly (readonly SheetPoint[])[],
	ring: readonly SheetPoint[]
): SheetPoint | undefined => {
	const box = blockBounds(block);
	const [wide, high] = [box.right - box.left, box.bottom - box.top];
	const count = (room: number): number => Math.max(0, Math.floor(room / BESIDE_STEP) + 1);
	const columns = count(whole.right - whole.left - wide);
	return Array.from({ length: columns * count(whole.bottom - whole.top - high) }, (_, i) =>
		at(whole.left + (i % columns) * BESIDE_STEP, whole.top + Math.floor(i / columns) * BESIDE_STEP)
	)
		.sort((a, b) => distance(a, start) - distance(b, start))
		.find(({ x, y }) => {
			const there = { left: mm(x), top: mm(y), right: mm(x + wide), bottom: mm(y + high) };
			return !meetsAny(grown(there, CLEAR), lines) && !within(ring, at(x + wide / 2, y + high / 2));
		});
};

/** How far from a piece the words beside it may be moved to make way for a joint of pages. */
const FURTHEST: Mm = mm(200);

/**
 * Writing beside a piece that begins at `start`, or on a sheet as near to that as it lies across no joint of pages and over no other piece;
 * undefined where there is no such place.
 */
const writingBeside = (
	texts: readonly string[],
	start: SheetPoint,
	outline: Path,
	{ joints, others, sheet }: OnSheet
): readonly Words[] | undefined => {
	const first = writingAt(texts, start);
	if (!sheet) return first;
	const lines = [...joints, ...others].map((path) => pathSamples(path, STEP));
	const box = blockBounds(first);
	const isOnSheet = box.right <= sheet.right && box.bottom <= sheet.bottom;
	if (isOnSheet && !meetsAny(box, lines)) return first;
	const ring = pathSamples(outline, STEP);
	const near = grown(boundsOf([outline]), FURTHEST);
	const whole = {
		left: mm(Math.max(near.left, sheet.left)),
		top: mm(Math.max(near.top, sheet.top)),
		right: mm(Math.min(near.right, sheet.right)),
		bottom: mm(Math.min(near.bottom, sheet.bottom))
	};
	const free = placedBeside(first, start, whole, [...lines, ring], ring);
	return free && writingAt(texts, at(start.x + free.x - box.left, start.y + free.y - box.top));
};

/** The words of a piece that has no room for them: beside it, to its right where it is tall, else under it, with a leader to it. */
const besidePiece = (
	piece: Piece,
	texts: readonly string[],
	around: OnSheet
): { readonly words: readonly Words[]; readonly leader: Path } | undefined => {
	const { left, top, right, bottom } = boundsOf([piece.cutting.outline]);
	const isTall = bottom - top > right - left;
	const start = isTall ? at(right + BESIDE, top) : at(left, bottom + BESIDE);
	const words = writingBeside(texts, start, piece.cutting.outline, around);
	if (!words) return undefined;
	const box = blockBounds(words);
	const ring = pathSamples(piece.outline, STEP);
	const leaders = [
		at(box.left - 1, box.top + 2),
		at(box.left + 2, box.top - 1),
		at(box.right + 1, box.top + 2),
		at(box.left + 2, box.bottom + 1)
	].flatMap((from) => ring.map((to) => ({ from, to, long: distance(from, to) })));
	const { from, to } = leaders.reduce((best, each) => (each.long < best.long ? each : best));
	return { words, leader: polyline(from, to) };
};

/**
 * A piece as it is printed: cutting line, stitching line, fold with its bracket, grain, notches, marks, darts, gathers
 * and marked points, each named, what every edge is sewn to, and its own words. `words` are the lines of writing, the
 * piece's name first; of `wear` what fails on this piece is drawn; where it has no room for them they stand beside it. None lies across a joint of pages, if there
 * is room elsewhere.
 */
export const pieceDrawing = (
	piece: Piece,
	words: readonly string[],
	speech: Speech,
	meetings: readonly Meeting[] = [],
	around: OnSheet = ALONE,
	wear: readonly WearReport[] = []
): Drawing => {
	const { joints } = around;
	const failing = wear.filter(({ state, place }) => state === 'fails' && place?.piece === piece.key);
	const drawn = pieceStrokes(piece, failing);
	const lines = drawn.filter(({ kind }) => INSIDE.has(kind)).map(({ path }) => path);
	const { taken, write } = fillingRoom(piece.outline, lines, joints);
	const small = [...wearMarks(failing, speech, write), ...smallWords(piece, speech, write)];
	const own = [...taken];
	const along = edgeWords(piece, meetings, speech, write);
	const untold = meetings.filter(({ edge }) => !along.told.has(edge));
	const { garments } = speech.words;
	const hasSelvedge = small.some(({ text }) => text === garments.selvedge);
	const texts = hasSelvedge ? words : [...words, garments.arrowToSelvedge];
	const inPiece = (some: readonly string[], clearOf: readonly Path[]) =>
		writingIn(some, piece.outline, clearOf);
	const whole = inPiece([...texts, ...meetingLines(piece, untold, speech)], [...taken, ...joints]);
	if (whole) return { name: piece.name, strokes: drawn, words: [...whole, ...small, ...along.words] };
	const all = [...texts, ...meetingLines(piece, meetings, speech)];
	const alone = inPiece(all, [...own, ...joints]);
	const beside = alone ? undefined : besidePiece(piece, all, around);
	const within = alone ?? (beside ? undefined : inPiece(all, own));
	if (within) return { name: piece.name, strokes: drawn, words: [...within, ...small] };
	const { words: told, leader } = beside ??
		besidePiece(piece, all, ALONE) ?? { words: [], leader: piece.outline };
	const name =
		inPiece(words.slice(0, 1), [...own, ...joints]) ??
		inPiece([String(piece.number)], joints) ??
		inPiece([String(piece.number)], []) ??
		[];
	return {
		name: piece.name,
		strokes: [...drawn, { kind: 'leader', path: leader }],
		words: [...name, ...small, ...told]
	};
};
