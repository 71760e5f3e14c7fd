import { english, speechFor } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { boundsOf } from '#geometry/path.ts';
import { explain } from '#drafting/explain.ts';
import { draftDrawing } from '#exports/drawing/draft-drawing.ts';
import { drawingBounds } from '#exports/drawing/drawing.ts';
import { CORNER_OUT, gridDrawing, RING } from '#exports/drawing/grid-drawing.ts';
import { LINE_STYLES } from '#exports/drawing/line-styles.ts';
import { patternPdf } from '#exports/pdf/pattern-pdf.ts';
import { worksheetPdf, type WorksheetOptions } from '#exports/pdf/worksheet.ts';
import { planPages } from '#exports/sheets/page-plan.ts';
import { PAGE_MARGIN } from '#exports/sheets/tiles.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { bodyOf } from '../garment/garment-files.ts';
import { askOf, isInk, rasters, runsInRow, type Raster } from './raster.ts';
import { fileOptions, pageTexts, paperOf, placedWords, plain } from './sheet-options.ts';

const HERON = bodyOf('heron');
const METHOD = frontBlock();
const DRAFT = draftOf(METHOD, HERON);
const WORK = { method: METHOD, body: HERON, draft: DRAFT, speech: english } as const;
const options = (more: Partial<WorksheetOptions> = {}, paper = 'a4'): WorksheetOptions => ({
	...fileOptions('Worksheet', paper),
	share: 1,
	worked: true,
	...more
});

/** A grid from 0 to 20 cm across and 0 to 30 cm down, printed on one sheet, and where a place of it is in the picture. */
const BOUNDS = { left: mm(0), top: mm(0), right: mm(200), bottom: mm(300) };
const DPI = 200;
const printed = async (
	share: number
): Promise<{ page: Raster; dot: (along: number, down: number) => [number, number] }> => {
	const grid = gridDrawing(BOUNDS, english, share);
	const paper = paperOf('a0');
	const [page] = rasters(
		await patternPdf([grid], { ...options({}, 'a0'), speech: english, about: [] }),
		DPI,
		2,
		2
	);
	const [tile] = planPages([grid], paper).tiles;
	if (!page || !tile) throw new Error('no page');
	const dot = (along: number, down: number): [number, number] => [
		Math.round((along - tile.left + PAGE_MARGIN) * page.perMm),
		Math.round((down - tile.top + PAGE_MARGIN) * page.perMm)
	];
	return { page, dot };
};

describe.each([1, 1 / 2, 1 / 4])('the grid at 1 : %d, as poppler renders it', (share) => {
	// Half a centimetre at full size; a whole one where the halves would lie closer than 3 mm on paper.
	const apart = share === 1 ? 5 : 10;

	it('has dots at equal steps, true within 0.2 mm over the whole breadth, and says how far apart they are', async () => {
		const { page, dot } = await printed(share);
		const [from, y] = dot(-1, 10 * share);
		const [to] = dot(200 * share + 1, 0);
		const dots = runsInRow(page, y, from, to).map(([a, b]) => (a + b) / 2 / page.perMm);
		expect(dots).toHaveLength(200 / apart + 1);
		expect(Math.abs((dots.at(-1) ?? 0) - (dots[0] ?? 0) - 200 * share)).toBeLessThan(0.2);
		for (const [i, each] of dots.slice(1).entries())
			expect(Math.abs(each - (dots[i] ?? 0) - apart * share)).toBeLessThan(0.2);
		const said = gridDrawing(BOUNDS, english, share).words.map(({ text }) => text);
		expect(said).toContain(`From dot to dot is ${String(apart / 10)} cm of the sheet.`);
	});

	it('is ruled in dots alone: less than a thirtieth of it is ink, and every fifth centimetre is heavier', async () => {
		const { page, dot } = await printed(share);
		const [left, top] = dot(-1, -1);
		const [right, bottom] = dot(200 * share + 1, 300 * share + 1);
		let ink = 0;
		for (let y = top; y < bottom; y++) for (const [a, b] of runsInRow(page, y, left, right)) ink += b - a + 1;
		expect(ink / ((right - left) * (bottom - top))).toBeLessThan(1 / 30);
		const wide = (down: number): number => {
			const [from, y] = dot(10 * share - 1, down);
			const [run] = runsInRow(page, y, from, from + Math.round(2 * page.perMm));
			return run ? run[1] - run[0] + 1 : 0;
		};
		expect(wide(50 * share)).toBeGreaterThan(wide(60 * share));
	});

	it('has its words clear of the corner marks, however narrow it is', () => {
		const { strokes, words } = gridDrawing(BOUNDS, speechFor('en', 'in'), share);
		const marks = strokes.filter(({ kind }) => kind === 'corner').map(({ path }) => boundsOf([path]));
		const half = LINE_STYLES.corner.width / 2;
		for (const each of words) {
			const { left, top, right, bottom } = drawingBounds({ name: '', strokes: [], words: [each] });
			for (const mark of marks) {
				const across = right < mark.left - half || left > mark.right + half;
				const down = bottom < mark.top - half || top > mark.bottom + half;
				expect(across || down, each.text).toBe(true);
			}
		}
	});

	it('has corner marks of their own full size, the lower right one hollow', async () => {
		const { page, dot } = await printed(share);
		const [right, bottom] = [200 * share + CORNER_OUT, 300 * share + CORNER_OUT];
		const places = [
			[-CORNER_OUT, -CORNER_OUT, true],
			[right, -CORNER_OUT, true],
			[-CORNER_OUT, bottom, true],
			[right, bottom, false]
		] as const;
		const whole = RING + LINE_STYLES.corner.width;
		for (const [across, down, filled] of places) {
			const [x, y] = dot(across, down);
			const runs = runsInRow(page, y, dot(across - whole / 2 - 1, 0)[0], dot(across + whole / 2 + 1, 0)[0]);
			const [first, last] = [runs[0], runs.at(-1)];
			if (!first || !last) throw new Error('no mark');
			expect(Math.abs((last[1] + 1 - first[0]) / page.perMm - whole)).toBeLessThan(0.3);
			expect(Math.abs((first[0] + last[1] + 1) / 2 - x)).toBeLessThan(0.3 * page.perMm);
			expect(isInk(page, x, y)).toBe(filled);
			expect(runs).toHaveLength(filled ? 3 : 2);
		}
	});
});

describe('a worksheet', () => {
	it('says its scale on the grid and on the first page', async () => {
		for (const [share, said] of [
			[1, 'Scale 1 : 1.'],
			[1 / 2, 'Scale 1 : 2.'],
			[1 / 4, 'Scale 1 : 4.']
		] as const) {
			const pages = pageTexts(await worksheetPdf(WORK, options({ share }))).map(plain);
			expect(pages[0]).toContain(said);
			expect(pages.slice(1).some((page) => page.includes(said))).toBe(true);
			expect(pages[0]).toContain('Each side is 100 mm.');
		}
	});

	it('tells every step in turn, before the grid, with its rule and by choice its worked numbers', async () => {
		const text = async (worked: boolean): Promise<string> =>
			plain(pageTexts(await worksheetPdf(WORK, options({ worked, share: 1 / 4 }))).join(' '));
		const [bare, full] = [await text(false), await text(true)];
		for (const drafted of [bare, full]) {
			let from = 0;
			for (const step of METHOD.steps.filter(({ name }) => name in DRAFT.points || name in DRAFT.lines)) {
				const { rule } = explain(METHOD, step.name, HERON, DRAFT, english);
				from = drafted.indexOf(plain(rule), from);
				expect(from, step.name).toBeGreaterThan(0);
			}
		}
		// Half of 38.4 and the usual armhole drop of 3: 22.2.
		expect(full).toContain('19.2 + 3 = 22.2 cm');
		expect(bare).not.toContain('22.2 cm');
		expect(bare).toContain('38.4 cm');
	});

	// To a tenth of a millimetre.
	it('tells the lengths of another draft that its steps start from', async () => {
		const text = plain(pageTexts(await worksheetPdf(WORK, options({ worked: false }))).join(' '));
		const shoulder = draftOf(backBlock(), HERON).lines['shoulder']?.length ?? NaN;
		expect(text).toContain(`The back's shoulder is ${String(Math.round(shoulder * 10) / 100)} cm.`);
	});

	it.each([1, 1 / 2, 1 / 4])('at a share of %d the grid holds the whole draft', (share) => {
		const { left, top, right, bottom } = boundsOf(
			Object.values(DRAFT.lines).map(({ path }) => path),
			Object.values(DRAFT.points)
		);
		const grid = gridDrawing({ left, top, right, bottom }, speechFor('en', 'in'), share);
		const lines = boundsOf(grid.strokes.filter(({ kind }) => kind !== 'corner').map(({ path }) => path));
		expect(lines.left).toBeLessThanOrEqual(left * share);
		expect(lines.top).toBeLessThanOrEqual(top * share);
		expect(lines.right).toBeGreaterThanOrEqual(right * share);
		expect(lines.bottom).toBeGreaterThanOrEqual(bottom * share);
		expect(((lines.right - lines.left) / (25.4 * share)) % 1).toBeCloseTo(0, 6);
	});

	it('off a roll is as long as it must be, with its words on pages that can be read', async () => {
		const bytes = await worksheetPdf(WORK, options({}, 'roll-60'));
		const sizes = [...askOf('pdfinfo', bytes, '-l', '99').matchAll(/size: +([\d.]+) x ([\d.]+)/g)].map(
			([, width, height]) => [Number(width) * (25.4 / 72), Number(height) * (25.4 / 72)] as const
		);
		expect(sizes.length).toBeGreaterThan(2);
		const [width, height] = sizes.at(-1) ?? [0, 0];
		expect(width).toBeCloseTo(600, 1);
		expect(height).toBeGreaterThan(700);
		expect(height).toBeLessThan(900);
		for (const [wide] of sizes.slice(0, -1)) expect(wide).toBeCloseTo(210, 1);
	});

	it('is sound, and the same input gives the same bytes', async () => {
		const [once, again] = [await worksheetPdf(WORK, options()), await worksheetPdf(WORK, options())];
		expect(askOf('qpdf', once, '--check')).toContain('No syntax or stream encoding errors found');
		expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true);
	});
});

describe('a draft as a drawing', () => {
	const drawing = draftDrawing(METHOD, DRAFT);

	it('has the outline strongest, and each point with its name', async () => {
		const count = (kind: string): number => drawing.strokes.filter((stroke) => stroke.kind === kind).length;
		expect(count('cutting')).toBe(METHOD.outline.filter((name) => name in DRAFT.lines).length);
		expect(count('level')).toBe(
			METHOD.steps.filter(({ kind, name }) => kind === 'level' && !METHOD.outline.includes(name)).length
		);
		expect(drawing.words.map(({ text }) => text)).toEqual(Object.keys(DRAFT.points));
		const names = placedWords(
			await patternPdf([drawing], { ...options({}, 'a0'), speech: english, about: [] })
		).filter(({ page }) => page === 1);
		for (const name of Object.keys(DRAFT.points)) expect(names.map(({ text }) => text)).toContain(name);
	});

	it('its points stand on paper where the draft has them', async () => {
		const bytes = await patternPdf([drawing], { ...options({}, 'a0'), speech: english, about: [] });
		const [page] = rasters(bytes, 150, 2, 2);
		if (!page) throw new Error('no page');
		const { bounds } = planPages([drawing], paperOf('a0'));
		expect(bounds.left).toBeLessThan(drawingBounds(drawing).left);
		for (const [name, { x, y }] of Object.entries(DRAFT.points)) {
			const [across, down] = [x - bounds.left + PAGE_MARGIN, y - bounds.top + PAGE_MARGIN];
			const near = [-1, 0, 1].some((dx) =>
				[-1, 0, 1].some((dy) =>
					isInk(page, Math.floor(across * page.perMm) + dx, Math.floor(down * page.perMm) + dy)
				)
			);
			expect(near, name).toBe(true);
		}
	});
});

describe('the first page', () => {
	it('keeps every word and the map on the paper, however much there is to say', async () => {
		const about = Array.from({ length: 30 }, (_, i) => `Caution ${i}: ${'look at it again '.repeat(9)}`);
		const title = 'A very long name '.repeat(20);
		const grid = gridDrawing({ ...BOUNDS, right: mm(900) }, english);
		const bytes = await patternPdf([grid], {
			...fileOptions(title, 'letter'),
			about
		});
		const { width, height } = paperOf('letter');
		const pages = Number(/Pages: +(\d+)/.exec(askOf('pdfinfo', bytes))?.[1]);
		const printed = planPages([grid], paperOf('letter')).tiles.length;
		// A page of the grid is cut off at its edge, and what is written across that stands on both.
		const words = placedWords(bytes).filter(({ page }) => page < pages - printed);
		for (const word of words) {
			expect(word.left, word.text).toBeGreaterThan(5);
			expect(word.right, word.text).toBeLessThan(width - 5);
			expect(word.bottom, word.text).toBeLessThan(height - 2);
		}
		const read = words.filter(({ text }) => text === 'Caution').length;
		expect(read).toBe(about.length);
		const [first] = rasters(bytes, 50, 1, 1);
		if (!first) throw new Error('no page');
		const margin = Math.floor(5 * first.perMm);
		for (let y = 0; y < first.height; y++) expect(runsInRow(first, y, first.width - margin)).toEqual([]);
	});
});
