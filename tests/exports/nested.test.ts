import DxfParser from 'dxf-parser';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'csv-parse/sync';
import { bodyOfSize } from '#shared/sizes/size.ts';
import { slipWords } from '#shared/bad-input.ts';
import { mm } from '#shared/units.ts';
import { madeNest, nestDrawings, nestedFile, type MadeNest } from '#exports/files/nested-file.ts';
import { NEST_KINDS, nestedDrawing } from '#exports/drawing/nested-drawing.ts';
import { LINE_STYLES } from '#exports/drawing/line-styles.ts';
import { wordsBounds } from '#exports/drawing/drawing.ts';
import type { FileRequest } from '#exports/files/pattern-file.ts';
import { growthOf } from '#garment/growth.ts';
import { boundsOf, pathEnd, pathLength, pathStart } from '#geometry/path.ts';
import { lengthOf as pathDataLength } from '../cli/pattern-here.ts';
import { garmentOf, garments, madeFor } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';
import { askOf, wordsOf } from './raster.ts';
import { readSvg, type SvgElement } from './read-svg.ts';

const size = (name: string) => ({
	name,
	body: bodyOfSize({ table: 'women', name }, `Size ${name}`)
});
const SIZES = ['36', '38', '40', '42', '44'];
const made = (id: string, names: readonly string[] = SIZES): MadeNest =>
	madeNest(garmentOf(id), names.map(size), { allowances: {}, edges: {} }, english);
const request = (format: FileRequest['format'], more: Partial<FileRequest> = {}): FileRequest => ({
	format,
	pieces: [],
	paper: 'a0',
	scale: 'full',
	speech: english,
	date: new Date('2026-01-02T00:00:00Z'),
	dated: false,
	font: () =>
		Promise.resolve(
			new Uint8Array(readFileSync('node_modules/@fontsource/literata/files/literata-latin-400-normal.woff'))
		),
	...more
});
const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
const withId = (element: SvgElement, id: RegExp): readonly SvgElement[] => [
	...(id.test(element.attributes['id'] ?? '') ? [element] : []),
	...element.children.flatMap((child) => withId(child, id))
];

describe('kinds of line for sizes', () => {
	it('are told apart without colour: no two have the same rhythm, nor that of another line', () => {
		const rhythm = (kind: keyof typeof LINE_STYLES): string => LINE_STYLES[kind].dashes.join(' ');
		const own = NEST_KINDS.map(rhythm);
		expect(new Set(own).size).toBe(NEST_KINDS.length);
		for (const other of ['mark', 'fold', 'stitching', 'dart'] as const)
			expect(own).not.toContain(rhythm(other));
	});
});

describe('sizes laid on each other', () => {
	it('lie at the centre of the waist: there the dress fronts of all sizes have one place', () => {
		const front = made('course-dress').nest.pieces.find(({ key }) => key === 'front');
		for (const { piece, on } of front?.sizes ?? []) {
			expect(on).toEqual(piece.grain[1]);
			expect(on.x).toBe(0);
		}
	});

	it.each(garments().map(({ id }) => id))(
		'%s: growth lines begin at the smallest and end at the largest',
		(id) => {
			for (const { sizes, growth } of made(id).nest.pieces) {
				expect(growth.length).toBeGreaterThanOrEqual(3);
				const [first, last] = [sizes[0], sizes.at(-1)];
				for (const line of growth) {
					expect(line).toHaveLength(SIZES.length - 1);
					for (const [of, end] of [
						[first, pathStart(line)],
						[last, pathEnd(line)]
					] as const) {
						const bounds = of && boundsOf([of.piece.cutting.outline]);
						if (!bounds) throw new Error(id);
						expect(end.x + of.on.x).toBeGreaterThan(bounds.left - 1);
						expect(end.x + of.on.x).toBeLessThan(bounds.right + 1);
						expect(end.y + of.on.y).toBeGreaterThan(bounds.top - 1);
						expect(end.y + of.on.y).toBeLessThan(bounds.bottom + 1);
					}
				}
			}
		}
	);

	it.each(garments().map(({ id }) => id))(
		'%s: each size is named once on each piece, and no two names touch',
		(id) => {
			for (const piece of made(id).nest.pieces) {
				const { words } = nestedDrawing(piece, ['1 Piece']);
				const names = words.filter(({ text: said }) => SIZES.includes(said));
				expect(names.map(({ text: said }) => said)).toEqual(SIZES);
				const boxes = names.map(wordsBounds);
				boxes.forEach((a, i) => {
					for (const b of boxes.slice(i + 1))
						expect(a.right < b.left || b.right < a.left || a.bottom < b.top || b.bottom < a.top).toBe(true);
				});
			}
		}
	);
});

describe('how a nest grows', () => {
	it('is the difference of single patterns: each edge as long as in a pattern of that size alone', () => {
		const { edges } = growthOf(made('sleeved-bodice').nest);
		const alone = SIZES.map((name) => madeFor(garmentOf('sleeved-bodice'), size(name).body));
		for (const { piece, edge, lengths } of edges)
			expect(lengths).toEqual(
				alone.map(
					({ pieces }) =>
						pieces.find(({ key }) => key === piece)?.edges.find(({ name }) => name === edge)?.length
				)
			);
	});

	it('grows a quarter of what the hip does at the block’s hem: 4 cm a size are 1 cm', () => {
		const { edges } = growthOf(made('body-block').nest);
		const hem = edges.find(({ piece, edge }) => piece === 'back' && edge === 'hem');
		expect(hem?.growth.slice(1).map((by) => by?.toFixed(6))).toEqual(Array(4).fill('10.000000'));
	});

	it('tells nothing of an edge that a dart divides in one size alone', () => {
		const { edges } = growthOf(made('body-block').nest);
		const side = edges.find(({ piece, edge }) => piece === 'front' && edge === 'side');
		expect(side?.growth[1]).toBeUndefined();
		expect(side?.growth[2]).toBeDefined();
	});

	it.each(garments().map(({ id }) => id))('%s: every seam grows alike on both sides', (id) => {
		expect(growthOf(made(id).nest).uneven).toEqual([]);
	});

	it('names the size in which one side of a seam grows otherwise', () => {
		const { nest } = made('straight-skirt');
		const [seam] = nest.sizes[2]?.pattern.seams ?? [];
		if (!seam) throw new Error('no seam');
		const sizes = nest.sizes.map((each, i) =>
			i === 2
				? {
						...each,
						pattern: {
							...each.pattern,
							seams: each.pattern.seams.map((other) =>
								other.name === seam.name
									? {
											...other,
											secondLength: mm(other.secondLength + 5),
											difference: mm(other.difference + 5)
										}
									: other
							)
						}
					}
				: each
		);
		const { uneven } = growthOf({ ...nest, sizes });
		expect(uneven.map(({ label, from, to }) => [label, from, to])).toEqual([
			[seam.label, '38', '40'],
			[seam.label, '40', '42']
		]);
		expect((uneven[0]?.second ?? NaN) - (uneven[0]?.first ?? NaN)).toBeCloseTo(5, 1);
	});
});

describe('files of several sizes, read back', () => {
	it('SVG: each size’s front has its own group of lines with its own dashes, as long as its own cutting line', async () => {
		const dress = made('course-dress', ['38', '42']);
		const root = readSvg(text(await nestedFile(dress, request('svg'))).trim());
		const [first, second] = [1, 2].map(
			(n) => withId(root, new RegExp(`^piece-1-front-bodice-nest${String(n)}$`))[0]
		);
		expect(first?.attributes['stroke-dasharray']).toBe(LINE_STYLES.nest1.dashes.join(' '));
		expect(second?.attributes['stroke-dasharray']).toBe(LINE_STYLES.nest2.dashes.join(' '));
		expect(first?.attributes['stroke']).toBe(second?.attributes['stroke']);
		const fronts = dress.nest.pieces.find(({ key }) => key === 'front')?.sizes ?? [];
		for (const [i, group] of [first, second].entries()) {
			const drawn = pathDataLength(group?.children[0]?.attributes['d'] ?? '');
			const outline = fronts[i]?.piece.cutting.outline;
			expect(drawn).toBeCloseTo(outline ? pathLength(outline) : NaN, 1);
		}
		expect(withId(root, /front-bodice-growth$/)).toHaveLength(1);
		expect(withId(root, /^piece-\d+-sizes-nest\d$/)).toHaveLength(2);
	});

	it.each([
		['en', 'a4', /Sizes 38, 40 and 42/],
		['es', 'letter', /Tallas 38, 40 y 42/]
	] as const)(
		'PDF in %s on %s: qpdf finds no fault, and every size can be read',
		async (language, paper, says) => {
			const speech = speechFor(language);
			const straight = madeNest(
				garmentOf('straight-skirt'),
				['38', '40', '42'].map(size),
				{ allowances: {}, edges: {} },
				speech
			);
			const bytes = await nestedFile(straight, request('pdf', { paper, speech }));
			expect(askOf('qpdf', bytes, '--check')).toMatch(/No syntax or stream encoding errors/);
			const words = wordsOf(bytes);
			expect(words.replace(/\s+/g, ' ')).toMatch(says);
			for (const name of ['38', '40', '42']) expect(words).toMatch(new RegExp(`\\b${name}\\b`));
		}
	);

	it('DXF: a block for each size of each piece, the sizes set on each other at the waist', async () => {
		const dress = made('course-dress', ['38', '42']);
		const file = new TextDecoder('latin1').decode(
			await nestedFile(dress, request('dxf', { pieces: ['front', 'skirt'] }))
		);
		const read = new DxfParser().parseSync(file) as unknown as {
			readonly blocks: Readonly<Record<string, unknown>>;
			readonly entities: readonly {
				readonly name: string;
				readonly position: { readonly x: number; readonly y: number };
			}[];
		};
		expect(read.entities.map(({ name }) => name)).toEqual([
			'38_FRONT_BODICE',
			'42_FRONT_BODICE',
			'38_SKIRT',
			'42_SKIRT'
		]);
		const front = dress.nest.pieces.find(({ key }) => key === 'front');
		const waists = front?.sizes.map(({ on }, i) => {
			const set = read.entities[i]?.position ?? { x: NaN, y: NaN };
			return [(on.x + set.x).toFixed(2), (-on.y + set.y).toFixed(2)];
		});
		expect(waists?.[0]).toEqual(waists?.[1]);
		expect(Object.keys(read.blocks)).toHaveLength(4);
	});

	it('CSV: the table says what the engine measures', async () => {
		const skirts = made('circle-skirt', ['38', '42']);
		const rows = parse(text(await nestedFile(skirts, request('csv'))));
		expect(rows[0]).toEqual(['piece', 'edge', '38', '42', 'grows 42']);
		const [, row] = rows;
		const edge = skirts.nest.pieces[0]?.sizes[1]?.piece.edges[0];
		expect(Number(row?.[3])).toBeCloseTo(edge ? pathLength(edge.path) : NaN, 3);
	});
});

describe('sizes that cannot be one sheet', () => {
	const slip = (names: readonly string[]): string => {
		try {
			made('straight-skirt', names);
		} catch (error) {
			return slipWords(error as Parameters<typeof slipWords>[0], english);
		}
		return 'nothing';
	};
	it('are told', () => {
		expect(slip(['38'])).toMatch(/from two to 7 sizes that are told apart, not 1/);
		expect(slip(['32', '34', '36', '38', '40', '42', '44', '46'])).toMatch(/not 8/);
		expect(slip(['38', '38'])).toMatch(/size 38 is named twice/);
	});

	it('draw with a key at the end', () => {
		expect(nestDrawings(made('circle-skirt', ['38', '42']), request('svg')).at(-1)?.name).toBe('Sizes');
	});
});
