import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { english, speechFor } from '../support/speech.ts';
import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { pathData, pathLength } from '#geometry/path.ts';
import { pieceWords } from '#garment/words.ts';
import { dxfFile, safeName } from '#exports/dxf/dxf.ts';
import { LAYERS } from '#exports/dxf/layers.ts';
import { lengthOf as pathDataLength } from '../cli/pattern-here.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';

interface Vertex {
	readonly x: number;
	readonly y: number;
}
interface Entity {
	readonly type: string;
	readonly layer: string;
	readonly shape?: boolean;
	readonly vertices?: readonly Vertex[];
	readonly position?: Vertex;
	readonly text?: string;
}
interface Read {
	readonly blocks: Readonly<Record<string, { readonly entities: readonly Entity[] }>>;
	readonly entities: readonly (Entity & { readonly name: string })[];
}

const pattern = madeFor(garmentOf('course-dress'), bodyOf('heron'));
const FILE = dxfFile(
	pattern.pieces.map((piece) => ({ piece, words: pieceWords(piece, 'Heron', english) })),
	'The course dress for Heron',
	english
);
/** The file as an independent parser reads it. */
const READ = new DxfParser().parseSync(FILE) as unknown as Read;

const lengthOf = (vertices: readonly Vertex[], closed: boolean): number => {
	const ring = closed ? [...vertices, vertices[0] ?? { x: 0, y: 0 }] : vertices;
	return ring.reduce((sum, each, i) => {
		const before = ring[i - 1];
		return before ? sum + Math.hypot(each.x - before.x, each.y - before.y) : sum;
	}, 0);
};

/** How far a place lies from a ring of chords. */
const fromRing = (ring: readonly Vertex[], { x, y }: Vertex): number =>
	Math.min(
		...ring.map((a, i) => {
			const b = ring[(i + 1) % ring.length] ?? a;
			const whole = (b.x - a.x) ** 2 + (b.y - a.y) ** 2 || 1;
			const share = Math.min(1, Math.max(0, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / whole));
			return Math.hypot(x - a.x - share * (b.x - a.x), y - a.y - share * (b.y - a.y));
		})
	);

const onLayer = (block: string, layer: number, type: string): readonly Entity[] =>
	READ.blocks[block]?.entities.filter((each) => each.layer === String(layer) && each.type === type) ?? [];

describe('a drawing file of the dress, read by an independent parser', () => {
	it('has a block for each piece, each set in once', () => {
		const names = pattern.pieces.map(({ name }) => safeName(name));
		expect(Object.keys(READ.blocks)).toEqual(names);
		expect(READ.entities.map(({ type, name }) => [type, name])).toEqual(
			names.map((name) => ['INSERT', name])
		);
	});

	it.each(pattern.pieces)(
		'$name: boundary and stitching line are as long as the piece says, within 0.1 mm',
		(piece) => {
			const block = safeName(piece.name);
			const [boundary] = onLayer(block, LAYERS.boundary, 'POLYLINE');
			const [sewn] = onLayer(block, LAYERS.sewLines, 'POLYLINE');
			expect(boundary?.shape).toBe(true);
			expect(
				Math.abs(lengthOf(boundary?.vertices ?? [], true) - pathLength(piece.cutting.outline))
			).toBeLessThan(0.1);
			expect(Math.abs(lengthOf(sewn?.vertices ?? [], true) - pathLength(piece.outline))).toBeLessThan(0.1);
		}
	);

	it.each(pattern.pieces)(
		'$name: fold, grain, notches, drill holes, gathers, words and names are on their layers',
		(piece) => {
			const block = safeName(piece.name);
			expect(onLayer(block, LAYERS.mirror, 'LINE')).toHaveLength(piece.fold === undefined ? 0 : 1);
			expect(onLayer(block, LAYERS.grain, 'LINE')).toHaveLength(1);
			const strokes = piece.notches.reduce((sum, { style }) => sum + (style === 'double' ? 2 : 1), 0);
			expect(onLayer(block, LAYERS.notches, 'POINT')).toHaveLength(strokes);
			expect(onLayer(block, LAYERS.drills, 'POINT')).toHaveLength(
				piece.drills.length + (piece.buttons?.at.length ?? 0)
			);
			const names = [LAYERS.drills, LAYERS.internal].map((layer) =>
				onLayer(block, layer, 'TEXT').map(({ text }) => text)
			);
			expect(names[0]).toEqual(piece.drills.map(({ label }) => label));
			expect(names[1]).toEqual([
				...piece.marks.map(({ label }) => label),
				...piece.darts.map(({ name }) => name)
			]);
			const inner = piece.marks.length + 3 * piece.darts.length + (piece.buttons?.holes.length ?? 0);
			const gathered = piece.edges.filter((edge) => edge.gathered).length;
			expect(onLayer(block, LAYERS.internal, 'POLYLINE')).toHaveLength(inner + gathered);
			const words = onLayer(block, LAYERS.boundary, 'TEXT').map(({ text }) => text);
			expect(words[0]).toBe(`${piece.number} ${piece.name}`);
			expect(words.at(-1)).toBe('UNITS: METRIC');
		}
	);

	it('y runs up: the hem of the skirt lies below its waist', () => {
		const [sewn] = onLayer('SKIRT', LAYERS.sewLines, 'POLYLINE');
		const ys = sewn?.vertices?.map(({ y }) => y) ?? [];
		expect(Math.min(...ys)).toBeCloseTo(-640, 0);
	});

	it('the same input gives the same text, of plain ASCII with CR LF', () => {
		expect(FILE).toMatch(/^[\x20-\x7E\r\n]*$/);
		expect(FILE.replaceAll('\r\n', '')).not.toContain('\n');
	});
});

describe.each(DEMO_BODIES)('the dress for $body.name', ({ body }) => {
	const { pieces } = madeFor(garmentOf('course-dress'), body);
	const read = new DxfParser().parseSync(
		dxfFile(
			pieces.map((piece) => ({ piece, words: pieceWords(piece, body.name, english) })),
			body.name,
			english
		)
	) as unknown as Read;
	const outlineOn = (block: string, layer: number): readonly Vertex[] =>
		read.blocks[block]?.entities.find((each) => each.layer === String(layer) && each.type === 'POLYLINE')
			?.vertices ?? [];

	it('outlines are as long as another program measures them, within 0.1 mm', () => {
		for (const piece of pieces) {
			const block = safeName(piece.name);
			const pairs = [
				[LAYERS.boundary, piece.cutting.outline],
				[LAYERS.sewLines, piece.outline]
			] as const;
			for (const [layer, outline] of pairs) {
				// Lengths of the curves by bezier-js.
				const length = pathDataLength(pathData(outline, 6));
				const off = lengthOf(outlineOn(block, layer), true) - length;
				expect(Math.abs(off), `${block} ${layer}`).toBeLessThan(0.1);
			}
		}
	});

	it('every notch lies on the boundary', () => {
		for (const piece of pieces) {
			const block = safeName(piece.name);
			const ring = outlineOn(block, LAYERS.boundary);
			const notches =
				read.blocks[block]?.entities.filter(({ layer }) => layer === String(LAYERS.notches)) ?? [];
			for (const { position } of notches)
				expect(fromRing(ring, position ?? { x: NaN, y: NaN }), block).toBeLessThan(0.06);
		}
	});

	it('the pieces lie beside one another, none over another', () => {
		const boxes = read.entities.map(({ name, position }) => {
			const xs = outlineOn(name, LAYERS.boundary).map(({ x }) => x + (position?.x ?? NaN));
			return [Math.min(...xs), Math.max(...xs)] as const;
		});
		boxes.slice(1).forEach(([left], i) => {
			expect(left).toBeGreaterThan(boxes[i]?.[1] ?? NaN);
		});
	});
});

describe('the dress in Spanish', () => {
	const spanish = lessonCourse('es').garment('course-dress');
	if (!spanish) throw new Error('no dress');
	const speech = speechFor('es');
	const file = dxfFile(
		madeFor(spanish, bodyOf('heron')).pieces.map((piece) => ({
			piece,
			words: pieceWords(piece, 'Heron', speech)
		})),
		spanish.name,
		speech
	);

	it('names its code page, each sign a byte of it, and its letters are read back as they are', () => {
		expect(file).toContain('$DWGCODEPAGE\r\n  3\r\nANSI_1252\r\n');
		expect(file).toMatch(/^[\x20-\x7E\r\n\u00A1-\u00FF]*$/);
		const bytes = Buffer.from(Uint8Array.from(file, (sign) => sign.charCodeAt(0)));
		const read = new DxfParser().parseSync(new TextDecoder('windows-1252').decode(bytes)) as unknown as Read;
		const texts = Object.values(read.blocks).flatMap(({ entities }) => entities.map(({ text }) => text));
		expect(texts).toContain('1 Delantero del corpiño');
		expect(texts).toContain('El hilo va a lo largo de la línea marcada «Centro delantero»');
		expect(texts).toContain('Al bies: los hilos cruzan la pieza a 45 grados');
		expect(texts.join(' ')).not.toContain('?');
	});
});

describe('names that any reader takes', () => {
	it.each([
		['Front bodice', 'FRONT_BODICE'],
		['Peça “costas” / 2', 'PECA_COSTAS_2'],
		['🪡', 'PIECE'],
		['x'.repeat(300), 'X'.repeat(31)]
	])('%j is %j', (name, safe) => {
		expect(safeName(name)).toBe(safe);
	});
});
