import { english } from '../support/speech.ts';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BadInput, ruleWords } from '#shared/bad-input.ts';
import { mm, radians } from '#shared/units.ts';
import { polyline } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { Drawing } from '#exports/drawing/drawing.ts';
import { alignmentPlaces, CHECK_SIDES } from '#exports/pdf/page-words.ts';
import { patternPdf, type PdfOptions } from '#exports/pdf/pattern-pdf.ts';
import { planPages } from '#exports/sheets/page-plan.ts';
import { drawingsSvg } from '#exports/svg/drawings-svg.ts';
import { OVERLAP, PAGE_MARGIN, PAPERS, SHEETS, type Paper } from '#exports/sheets/tiles.ts';
import { joinedBy, measuredSquares, middleOf } from './joined-pages.ts';
import { askOf, firstWords, isInk, rasters, runsInRow, type Raster } from './raster.ts';

const paperOf = (id: string): Paper => {
	const paper = [...PAPERS, ...SHEETS].find((each) => each.id === id);
	if (!paper) throw new Error(`no paper ${id}`);
	return paper;
};
const FONT = new Uint8Array(
	readFileSync('node_modules/@fontsource/literata/files/literata-latin-400-normal.woff')
);
const options = (paper: string, more: Partial<PdfOptions> = {}): PdfOptions => ({
	paper: paperOf(paper),
	title: 'A trial',
	about: ['For nobody.'],
	speech: english,
	font: FONT,
	date: new Date('2026-01-02T03:04:05Z'),
	...more
});

/** A slanting line and a curve-free frame over several pages, with ends that are known. */
const LINE: readonly [SheetPoint, SheetPoint] = [at(20, 30), at(420, 330)];
const TRIAL: Drawing = {
	name: 'trial',
	strokes: [
		{ kind: 'line', path: polyline(...LINE) },
		{ kind: 'cutting', path: polyline(at(0, 0), at(460, 0), at(460, 380), at(0, 380)), closed: true }
	],
	words: [{ text: 'Ñandú, ½', at: at(60, 200), middle: false, size: mm(6), turn: radians(0) }]
};

describe('the check squares, as poppler renders them', () => {
	it.each(['a4', 'letter', 'a3'])('on %s: 100 mm and 4 inches, within 0.1 mm', async (id) => {
		const [page] = rasters(await patternPdf([TRIAL], options(id)), 300, 1, 1);
		if (!page) throw new Error('no page');
		measuredSquares(page).forEach((side, i) => {
			expect(Math.abs(side - (CHECK_SIDES[i] ?? NaN))).toBeLessThan(0.1);
		});
	});
});

describe('tiled pages', () => {
	it('joined again by their own marks, a length across the joins is true within 0.2 mm', async () => {
		const { tiles } = planPages([TRIAL], paperOf('a4'));
		expect(tiles.length).toBeGreaterThan(5);
		const pages = rasters(await patternPdf([TRIAL], options('a4')), 200, 2);
		const joined = joinedBy(pages, tiles);
		expect(joined.size).toBe(tiles.length);
		const origin = tiles[0];
		if (!origin) throw new Error('no page');
		// The frame's left and right edge, each measured on its own page and carried over to the first.
		const edge = (column: number, row: number): number => {
			const tile = tiles.find(
				(each) =>
					each.left <= column &&
					column <= each.left + each.width &&
					each.top <= row &&
					row <= each.top + each.height
			);
			const i = tile ? tiles.indexOf(tile) : -1;
			const page = pages[i];
			const base = joined.get(tile?.name ?? '');
			if (!tile || !page || !base) throw new Error('no such place');
			const y = Math.round((row - tile.top + PAGE_MARGIN) * page.perMm);
			const about = (column - tile.left + PAGE_MARGIN) * page.perMm;
			const run = runsInRow(page, y, Math.round(about - 12), Math.round(about + 12))[0];
			if (!run) throw new Error('no ink there');
			return middleOf(run) / page.perMm + base.x;
		};
		expect(Math.abs(edge(460, 200) - edge(0, 200) - 460)).toBeLessThan(0.2);
	});

	it('every page shares marks with its neighbours, in the strip that they have in common', () => {
		const { every } = planPages([TRIAL], paperOf('a4'));
		const [first] = every;
		const right = every.find(({ name }) => name === 'A2');
		if (!first || !right) throw new Error('no pages');
		const own = alignmentPlaces(first).filter(({ x }) => x > first.left + first.width - OVERLAP);
		const theirs = alignmentPlaces(right).filter(({ x }) => x < right.left + OVERLAP);
		expect(own.length).toBe(2);
		expect(theirs).toEqual(own);
	});

	it('no ink is lost at a page edge: the pages together are the whole sheet', async () => {
		const { tiles, bounds } = planPages([TRIAL], paperOf('a4'));
		const dpi = 72;
		const pages = rasters(await patternPdf([TRIAL], options('a4')), dpi, 2);
		const [sheet] = rasters(await patternPdf([TRIAL], options('a0')), dpi, 2);
		if (!sheet) throw new Error('no sheet');
		const lost: string[] = [];
		let inked = 0;
		const near = (page: Raster, x: number, y: number): boolean =>
			[-1, 0, 1].some((dx) => [-1, 0, 1].some((dy) => isInk(page, x + dx, y + dy)));
		for (let y = 0; y < sheet.height; y++) {
			for (let x = 0; x < sheet.width; x++) {
				const [across, down] = [
					x / sheet.perMm - PAGE_MARGIN + bounds.left,
					y / sheet.perMm - PAGE_MARGIN + bounds.top
				];
				if (
					across > bounds.right ||
					down > bounds.bottom ||
					across < bounds.left + 1 ||
					down < bounds.top + 1
				)
					continue;
				if (!isInk(sheet, x, y)) continue;
				inked++;
				const shown = tiles.some((tile, i) => {
					const page = pages[i];
					const [left, top] = [across - tile.left, down - tile.top];
					if (!page || left < 0 || top < 0 || left > tile.width || top > tile.height) return false;
					return near(
						page,
						Math.round((left + PAGE_MARGIN) * page.perMm),
						Math.round((top + PAGE_MARGIN) * page.perMm)
					);
				});
				if (!shown) lost.push(`${across.toFixed(1)},${down.toFixed(1)}`);
			}
		}
		expect(inked).toBeGreaterThan(2000);
		expect(lost).toEqual([]);
	});

	it('pages without ink are left out, and shown as such', async () => {
		const corner: Drawing = {
			name: 'corner',
			strokes: [{ kind: 'line', path: polyline(at(0, 0), at(500, 0), at(500, 500)) }],
			words: []
		};
		const { tiles, every, blank } = planPages([corner], paperOf('a4'));
		expect(blank.length).toBeGreaterThan(1);
		expect(tiles.length + blank.length).toBe(every.length);
		const text = firstWords(await patternPdf([corner], options('a4')));
		for (const name of blank) expect(text).toContain(`(${name})`);
		expect(text).not.toContain('(A1)');
	});
});

describe('the file', () => {
	it('is sound, embeds its typeface and keeps its words', async () => {
		const bytes = await patternPdf([TRIAL], options('a4'));
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax or stream encoding errors found');
		const fonts = askOf('pdffonts', bytes).split('\n').slice(2).filter(Boolean);
		expect(fonts).toHaveLength(1);
		expect(fonts[0]).toMatch(/ yes \w+ +yes /);
		expect(askOf('pdfinfo', bytes)).toMatch(/Page size: +595\.276 x 841\.89 pts \(A4\)/);
	});

	it('the same input gives the same bytes', async () => {
		const [once, again] = [
			await patternPdf([TRIAL], options('a4')),
			await patternPdf([TRIAL], options('a4'))
		];
		expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true);
		const later = await patternPdf([TRIAL], options('a4', { date: new Date(0) }));
		expect(Buffer.from(once).equals(Buffer.from(later))).toBe(false);
	});

	it('nothing to print is told as such', async () => {
		const told = await patternPdf([], options('a4')).catch((error: unknown) => error);
		expect(told instanceof BadInput && ruleWords(told, english)).toContain('there is nothing to print');
		expect(() => drawingsSvg([{ name: 'a draft', strokes: [], words: [] }], 'a draft')).toThrow(BadInput);
	});

	it('signs that the typeface lacks do not break it', async () => {
		const odd = { ...TRIAL, words: [{ ...TRIAL.words[0], text: '“Ŵ” / \\ 🪡 '.repeat(30) }] } as Drawing;
		expect(askOf('qpdf', await patternPdf([odd], options('a4', { title: '🪡/"\\' })), '--check')).toContain(
			'No syntax'
		);
	});
});
