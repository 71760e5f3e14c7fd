import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { chanceOf } from '#practice/chance.ts';
import { drawingBounds, markerBounds, wordsBounds } from '#exports/drawing/drawing.ts';
import { worksheetDrawing, worksheetPdf } from '#exports/pdf/worksheet.ts';
import { planPages } from '#exports/sheets/page-plan.ts';
import { PAGE_MARGIN, type Tile } from '#exports/sheets/tiles.ts';
import { boundsOf } from '#geometry/path.ts';
import { CHECK_LINE, WORKSHEET_IDS } from '#photograph/marker-places.ts';
import { lookedAt, readingOf } from '#photograph/reading.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { askOf, rasters, type Raster } from '../exports/raster.ts';
import { fileOptions, paperOf } from '../exports/sheet-options.ts';
import { bodyOf } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';
import { developed, seenBy } from './camera.ts';
import { GOOD, heldOver } from './pictures.ts';
import { sceneOf, SHEET, type Place, type Scene } from './scene.ts';
import { below, placeErrors } from './sheet-pictures.ts';

const workOf = (method = backBlock(), body = bodyOf('heron'), speech = english) => ({
	method,
	body,
	draft: draftOf(method, body),
	speech
});

describe('a worksheet at full size', () => {
	it.each(
		['a4', 'letter', 'a3', 'a0', 'roll-60'].flatMap((paper) =>
			[backBlock(), frontBlock()].flatMap((method) =>
				(['cm', 'in'] as const).map((unit) => [paper, method.id, unit, method] as const)
			)
		)
	)(
		'on %s, %s, in %s: has six markers clear of grid and words, each whole on one page',
		(id, _, unit, method) => {
			const paper = paperOf(id);
			const drawing = worksheetDrawing(workOf(method, bodyOf('heron'), speechFor('en', unit)), 1, paper);
			const markers = drawing.markers?.map(markerBounds) ?? [];
			expect(markers).toHaveLength(WORKSHEET_IDS.length);
			const grid = boundsOf(drawing.strokes.map(({ path }) => path));
			const { every } = planPages([drawing], paper);
			for (const marker of markers) {
				// A cell of white about it, of eight across.
				const clear = (other: typeof grid): boolean =>
					other.right < marker.left - 5 ||
					other.left > marker.right + 5 ||
					other.bottom < marker.top - 5 ||
					other.top > marker.bottom + 5;
				expect(clear(grid)).toBe(true);
				for (const words of drawing.words) expect(clear(wordsBounds(words)), words.text).toBe(true);
				// A page lies over those before it, from its left and its upper edge on, and has the joint's marks in its first 10 mm.
				const cut = ({ left, top }: Tile): boolean =>
					(left > drawingBounds(drawing).left && left > marker.left - 10 && left < marker.right + 5) ||
					(top > drawingBounds(drawing).top && top > marker.top - 10 && top < marker.bottom + 5);
				expect(every.filter(cut)).toEqual([]);
			}
		}
	);

	it('made smaller has none: a photograph of it cannot be held against the draft', () => {
		expect(worksheetDrawing(workOf(), 1 / 2, paperOf('a4')).markers).toBeUndefined();
	});

	it('has a check line as long as it is asked for', () => {
		const { strokes, words } = worksheetDrawing(workOf(), 1, paperOf('a4'));
		const lines = strokes.filter(({ kind }) => kind === 'line').map(({ path }) => boundsOf([path]));
		expect(lines.some(({ left, right }) => Math.abs(right - left - CHECK_LINE.worksheet) < 1e-9)).toBe(true);
		expect(words.map(({ text }) => text).join(' ')).toContain('This line should measure 10 cm');
	});
});

/** Dots of a page in each of the scene's, either way: squares are filled to whole dots, so that a marker comes out a dot too large. */
const FINER = 3;
const PER_MM = 6;

/** How light each of the scene's dots is on a page, of 255. */
const softened = ({ width, height, grey }: Raster) => {
	const [across, down] = [Math.floor(width / FINER), Math.floor(height / FINER)];
	const light = Float32Array.from({ length: across * down }, (_, i) => {
		const from = Math.floor(i / across) * FINER * width + (i % across) * FINER;
		let sum = 0;
		for (let y = 0; y < FINER; y++) for (let x = 0; x < FINER; x++) sum += grey[from + y * width + x] ?? 255;
		return sum / FINER ** 2;
	});
	return { across, down, light };
};

/** Lays a printed page on the table, a later one over an earlier: what is printed within its margins, and white beyond those that are not cut off. */
const laid = (
	scene: Scene,
	page: Raster,
	{ left, top, cuts }: Tile,
	[right, down]: readonly number[]
): void => {
	const { across, light } = scene.dots;
	const soft = softened(page);
	const from = (edge: Tile['cuts'][number]): number =>
		cuts.includes(edge) ? Math.round(PAGE_MARGIN * PER_MM) : 0;
	const put = (place: number, shift: number, start: number): number =>
		Math.round((place + shift - PAGE_MARGIN - start) * PER_MM);
	const [column, row] = [put(left, right ?? 0, scene.left), put(top, down ?? 0, scene.top)];
	for (let y = from('top'); y < soft.down; y++)
		for (let x = from('left'); x < soft.across; x++)
			light[(row + y) * across + column + x] = 30 + ((soft.light[y * soft.across + x] ?? 255) / 255) * 195;
};

describe('a worksheet that was printed, taped together and photographed', () => {
	it('is read by its markers, though its pages are a millimetre off', async () => {
		const work = workOf();
		const paper = paperOf('a4');
		const drawing = worksheetDrawing(work, 1, paper);
		const { tiles, bounds } = planPages([drawing], paper);
		const bytes = await worksheetPdf(work, { ...fileOptions('Worksheet'), share: 1, worked: false });
		const last = Number(/Pages: +(\d+)/.exec(askOf('pdfinfo', bytes))?.[1]);
		const pages = rasters(bytes, 25.4 * PER_MM * FINER, last - tiles.length + 1, last);
		const bare = sceneOf([], [], { perMm: PER_MM });
		// In the middle of the sheet that the camera is held over.
		const origin = {
			x: (SHEET.width - (bounds.left + bounds.right)) / 2,
			y: (SHEET.height - (bounds.top + bounds.bottom)) / 2
		};
		const scene = { ...bare, left: bare.left - origin.x, top: bare.top - origin.y };
		const chance = chanceOf(1, 'tape');
		for (const [i, tile] of tiles.entries()) {
			const page = pages[i];
			if (!page) throw new Error('each tile has a page');
			laid(scene, page, tile, i === 0 ? [0, 0] : [2 * chance.fraction() - 1, 2 * chance.fraction() - 1]);
		}
		const camera = heldOver(GOOD, chanceOf(2, 'taped'), { width: 2250, height: 3000 });
		const picture = developed(bare, camera, GOOD.film, chanceOf(3, 'taped'));
		const reading = readingOf(
			lookedAt(picture, () => undefined),
			1
		);
		if (!reading) throw new Error('the picture was not read');
		expect(reading.rectified.lying).toHaveLength(WORKSHEET_IDS.length);
		expect(reading.warnings).not.toContain('bulge');
		const places: readonly Place[] = Array.from({ length: 5 * 9 }, (_, i) => ({
			x: origin.x + bounds.left + 60 + (i % 5) * 50,
			y: origin.y + bounds.top + 60 + Math.floor(i / 5) * 80
		}));
		const errors = placeErrors(
			reading.rectified.view,
			places.map((place) => ({ place, picture: seenBy(camera, place) }))
		);
		// Half of what is asked for; a pixel of this picture is 0.32 mm, and pages are laid to a sixth of one.
		expect(below(0.95, errors)).toBeLessThan(0.25);
		expect(reading.rectified.residual).toBeLessThan(mm(0.05));
	});
});
