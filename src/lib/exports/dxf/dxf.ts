import type { Speech } from '#shared/speech/speech.ts';
import { mm, type Mm } from '#shared/units.ts';
import { grainLine, notchStrokes } from '#garment/piece-lines.ts';
import { dartMiddle, gatherStroke, mouthNotches } from '#garment/piece-signs.ts';
import type { Piece } from '#garment/piece.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { flattened, flattenedParts } from '#geometry/flatten.ts';
import { pathMovedBy, shifting } from '#geometry/motion.ts';
import { boundsOf, pathEnd, pathStart, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { LAYERS } from './layers.ts';

/** How far a chord may lie from its curve. */
const FLATTENING: Mm = mm(0.05);

/** A group code and its value, each on a line of its own: so a drawing file of release 12 is written (from memory). */
type Group = readonly [code: number, value: string | number];

/** Decimals of a length: a thousandth of a millimetre. */
const length = (value: number): string => (Math.round(value * 1000) / 1000 + 0).toFixed(3);
/** A drawing file's y runs up, the sheet's down. */
const place = ({ x, y }: SheetPoint, shift = 0): readonly Group[] => [
	[10 + shift, length(x)],
	[20 + shift, length(-y)],
	[30 + shift, length(0)]
];

/** Names of blocks and layers hold letters, digits, $, - and _ in release 12, 31 at the most. */
const LONGEST_NAME = 31;
/** A name that any reader of release 12 takes: accents taken off, other signs made `_`, cut to length. */
export const safeName = (name: string): string =>
	name
		.normalize('NFD')
		.replace(/[\u0300-\u036F]/g, '')
		.replace(/[^A-Za-z0-9$_-]+/g, '_')
		.replace(/^_+|_+$/g, '')
		.slice(0, LONGEST_NAME)
		.toUpperCase() || 'PIECE';

/** Letters that no accent can be taken off. */
const SPELT: Readonly<Record<string, string>> = { œ: 'oe', Œ: 'OE', ł: 'l', Ł: 'L' };

/** Signs that Western European languages need beside ASCII, each one byte in the code page of Windows 1252. */
const WESTERN = '\u00A1\u00AB\u00BB\u00BF\u00C0-\u00D6\u00D8-\u00F6\u00F8-\u00FF';
const FOREIGN = new RegExp(`[^\\x20-\\x7E${WESTERN}]+`, 'gu');
/** The name of that code page. Readers fall back on it, so that it is named only where a file leans on it. */
const CODE_PAGE: readonly Group[] = [
	[9, '$DWGCODEPAGE'],
	[3, 'ANSI_1252']
];

const spelt = (signs: string, degrees: string): string =>
	signs
		.replace(/[\u2018\u2019]/g, "'")
		.replace(/[\u201C\u201D\u2033]/g, '"')
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.replace(/[\u2013\u2014\u2212]/g, '-')
		.replace(/\u2044/g, '/')
		.replace(/\u00D7/g, 'x')
		.replace(/\u00B0/g, ` ${degrees}`)
		.replace(/[^\x20-\x7E]/gu, (sign) => SPELT[sign] ?? '?');

/** Text in the signs of Windows 1252 that every reader shows: letters as they are, fractions as 1/2, others without their accents. */
const plainText = (text: string, { words: { paper } }: Speech): string =>
	text
		.normalize('NFC')
		.replace(/(\d)(?=[\u00BC-\u00BE\u2150-\u215E])/g, '$1 ')
		.replace(FOREIGN, (signs) => spelt(signs, paper.degrees));

const polylineOf = (places: readonly SheetPoint[], layer: number, closed: boolean): readonly Group[] => [
	[0, 'POLYLINE'],
	[8, layer],
	[66, 1],
	[10, '0.000'],
	[20, '0.000'],
	[30, '0.000'],
	[70, closed ? 1 : 0],
	...places.flatMap((each): readonly Group[] => [[0, 'VERTEX'], [8, layer], ...place(each)]),
	[0, 'SEQEND'],
	[8, layer]
];

const lineOf = (path: Path, layer: number): readonly Group[] => [
	[0, 'LINE'],
	[8, layer],
	...place(pathStart(path)),
	...place(pathEnd(path), 1)
];

const pointOf = (where: SheetPoint, layer: number): readonly Group[] => [
	[0, 'POINT'],
	[8, layer],
	...place(where)
];

const textOf = (text: string, where: SheetPoint, layer: number): readonly Group[] => [
	[0, 'TEXT'],
	[8, layer],
	...place(where),
	[40, '5.000'],
	[1, text]
];

/** The corners of an outline, and the points between them on its curves. */
const turnsAndCurves = (outline: Path): readonly Group[] =>
	flattenedParts(outline, FLATTENING).flatMap(([corner, ...others]) => [
		...(corner ? pointOf(corner, LAYERS.turnPoints) : []),
		...others.slice(0, -1).flatMap((each) => pointOf(each, LAYERS.curvePoints))
	]);

/** The closed outline without its last place, which is the first again. */
const closedPlaces = (outline: Path): readonly SheetPoint[] => flattened(outline, FLATTENING).slice(0, -1);

/** A name that stands at a place of a piece. */
interface NamedPlace {
	readonly text: string;
	readonly at: SheetPoint;
	readonly layer: number;
}

/** The names of a piece's marked points, lines and darts, where they lie. */
const namesOn = ({ drills, marks, darts }: Piece): readonly NamedPlace[] => [
	...drills.map(({ label, at: place }) => ({ text: label, at: place, layer: LAYERS.drills })),
	...marks.map(({ label, path }) => ({ text: label, at: pathStart(path), layer: LAYERS.internal })),
	...darts.map(({ name, tip }) => ({ text: name, at: tip, layer: LAYERS.internal }))
];

/** Everything of one piece, each notch where it meets the boundary: boundary, stitching line, fold, grain, notches, inner lines, gathers, drill holes, words and names. */
const pieceEntities = (
	piece: Piece,
	words: readonly string[],
	names: readonly NamedPlace[]
): readonly Group[] => {
	const fold = piece.edges.find(({ name }) => name === piece.fold);
	const [from, to] = grainLine(piece);
	return [
		...polylineOf(closedPlaces(piece.cutting.outline), LAYERS.boundary, true),
		...turnsAndCurves(piece.cutting.outline),
		...polylineOf(closedPlaces(piece.outline), LAYERS.sewLines, true),
		...(fold ? lineOf(fold.path, LAYERS.mirror) : []),
		...lineOf([{ kind: 'straight', from, to }], LAYERS.grain),
		...piece.notches.flatMap((notch) =>
			notchStrokes(piece, notch).flatMap((stroke) =>
				pointOf(nearestOnPath(piece.cutting.outline, pathEnd(stroke)), LAYERS.notches)
			)
		),
		...piece.darts
			.flatMap((dart) => mouthNotches(piece, dart))
			.flatMap((stroke) => pointOf(pathEnd(stroke), LAYERS.notches)),
		...[
			...piece.marks.map(({ path }) => path),
			...(piece.buttons?.holes ?? []),
			...piece.darts.flatMap((dart) => [...dart.legs, dartMiddle(piece, dart)]),
			...piece.edges.filter(({ gathered }) => gathered).flatMap((edge) => gatherStroke(piece, edge))
		].flatMap((path) => polylineOf(flattened(path, FLATTENING), LAYERS.internal, false)),
		...[...piece.drills.map((drill) => drill.at), ...(piece.buttons?.at ?? [])].flatMap((where) =>
			pointOf(where, LAYERS.drills)
		),
		...words.flatMap((text, i) => textOf(text, { ...from, y: mm(from.y + i * 8) }, LAYERS.boundary)),
		...names.flatMap(({ text, at: where, layer }) => textOf(text, where, layer))
	];
};

/** Names that differ, whatever they were cut to. */
const distinct = (names: readonly string[]): readonly string[] => {
	const taken = new Set<string>();
	return names.map((name) => {
		let free = name;
		for (let n = 2; taken.has(free); n++) free = `${name.slice(0, LONGEST_NAME - 3)}_${n}`;
		taken.add(free);
		return free;
	});
};

/** A piece and the lines of writing that go with it. */
export interface WrittenPiece {
	readonly piece: Piece;
	readonly words: readonly string[];
	/** The place of it that is laid on the same place of the piece before, of which it is another size. */
	readonly on?: SheetPoint;
	/** Which piece it is a size of. */
	readonly sizeOf?: string;
}

/** Room between two pieces in the drawing. */
const APART: Mm = mm(20);

/** A piece's cutting line, with the place on which its sizes are laid at the corner (0, 0). */
const laid = ({ piece, on = at(0, 0) }: WrittenPiece): Path =>
	pathMovedBy(shifting(on, at(0, 0)), piece.cutting.outline);

/** Where each block is set, so that the pieces lie in a row and none over another but for the sizes of one piece, which lie on each other. */
const sideBySide = (pieces: readonly WrittenPiece[]): readonly SheetPoint[] => {
	const whose = ({ sizeOf, piece }: WrittenPiece): string => sizeOf ?? piece.key;
	const sets = new Map<string, SheetPoint>();
	let free = 0;
	for (const name of new Set(pieces.map(whose))) {
		const { left, top, right } = boundsOf(pieces.filter((each) => whose(each) === name).map(laid));
		sets.set(name, at(free - left, -top));
		free += right - left + APART;
	}
	return pieces.map((each) => {
		const [set = at(0, 0), on = at(0, 0)] = [sets.get(whose(each)), each.on];
		return at(set.x - on.x, set.y - on.y);
	});
};

/**
 * Pieces as a drawing file of release 12, one block a piece, in millimetres, after the layer convention of ASTM D6673
 * (withdrawn 2019). The table of layers is from memory, and no conformity is promised. `title` names the whole. Each
 * sign is a byte of the file: its code below 256 (Windows 1252).
 */
export const dxfFile = (pieces: readonly WrittenPiece[], title: string, speech: Speech): string => {
	const names = distinct(pieces.map(({ piece }) => safeName(piece.name)));
	const plain = (text: string): string => plainText(text, speech);
	const about = [title, speech.words.paper.drawingFile].map(plain);
	const written = pieces.map(({ words }) => [...words.map(plain), 'UNITS: METRIC']);
	const named = pieces.map(({ piece }) =>
		namesOn(piece).map((each) => ({ ...each, text: plain(each.text) }))
	);
	const texts = [about, ...written, ...named.map((each) => each.map(({ text }) => text))];
	const isAscii = texts.every((some) => some.every((text) => /^[\x20-\x7E]*$/.test(text)));
	const groups: readonly Group[] = [
		...about.map((text): Group => [999, text]),
		[0, 'SECTION'],
		[2, 'HEADER'],
		[9, '$ACADVER'],
		[1, 'AC1009'],
		...(isAscii ? [] : CODE_PAGE),
		[9, '$MEASUREMENT'],
		[70, 1],
		[0, 'ENDSEC'],
		[0, 'SECTION'],
		[2, 'BLOCKS'],
		...pieces.flatMap(({ piece }, i): readonly Group[] => [
			[0, 'BLOCK'],
			[8, 0],
			[2, names[i] ?? 'PIECE'],
			[70, 0],
			[10, '0.000'],
			[20, '0.000'],
			[30, '0.000'],
			[3, names[i] ?? 'PIECE'],
			...pieceEntities(piece, written[i] ?? [], named[i] ?? []),
			[0, 'ENDBLK'],
			[8, 0]
		]),
		[0, 'ENDSEC'],
		[0, 'SECTION'],
		[2, 'ENTITIES'],
		...sideBySide(pieces).flatMap((set, i): readonly Group[] => [
			[0, 'INSERT'],
			[8, 0],
			[2, names[i] ?? 'PIECE'],
			...place(set)
		]),
		[0, 'ENDSEC'],
		[0, 'EOF']
	];
	return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
};
