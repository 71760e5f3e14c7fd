import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import type { Bounds } from '#geometry/path.ts';
import { english } from '../support/speech.ts';
import {
	OVERLAP,
	PAGE_MARGIN,
	paperName,
	PAPERS,
	tilesOver,
	type Paper,
	type Tile
} from '#exports/sheets/tiles.ts';
import { draftDrawing } from '#exports/drawing/draft-drawing.ts';
import { planPages } from '#exports/sheets/page-plan.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { chances } from '../reference/random-bodies.ts';

const bounds = (left: number, top: number, right: number, bottom: number): Bounds => ({
	left: mm(left),
	top: mm(top),
	right: mm(right),
	bottom: mm(bottom)
});
const paper = (id: string): Paper => {
	const found = PAPERS.find((each) => each.id === id);
	if (!found) throw new Error(`no paper ${id}`);
	return found;
};
const names = (tiles: readonly Tile[]): string => tiles.map(({ name }) => name).join(' ');

describe('papers', () => {
	// ISO 216, as given by tables outside this program; letter is 612 by 792 points of 1/72 inch.
	it.each([
		['a4', 210, 297],
		['a3', 297, 420],
		['letter', (612 / 72) * 25.4, (792 / 72) * 25.4]
	])('%s is %d by %d mm, upright', (id, width, height) => {
		expect(paper(id).width).toBeCloseTo(width, 9);
		expect(paper(id).height).toBeCloseTo(height, 9);
	});

	it('each has a name of its own', () => {
		expect(new Set(PAPERS.map(({ id }) => id)).size).toBe(PAPERS.length);
		expect(new Set(PAPERS.map((each) => paperName(each, english))).size).toBe(PAPERS.length);
	});
});

describe('pages over a sheet, by head arithmetic on A4: 190 by 277 seen, 10 repeated', () => {
	const a4 = paper('a4');

	it('what fits on one page takes one', () => {
		for (const small of [bounds(0, 0, 0, 0), bounds(5, 5, 5.1, 5.1), bounds(-10, -20, 180, 257)])
			expect(names(tilesOver(small, a4))).toBe('A1');
	});

	it('a hair more takes two', () => {
		expect(names(tilesOver(bounds(0, 0, 190.01, 277), a4))).toBe('A1 A2');
		expect(names(tilesOver(bounds(0, 0, 190, 277.01), a4))).toBe('A1 B1');
	});

	it('two pages side by side show 370, three 550', () => {
		expect(names(tilesOver(bounds(0, 0, 370, 100), a4))).toBe('A1 A2');
		expect(names(tilesOver(bounds(0, 0, 371, 100), a4))).toBe('A1 A2 A3');
		expect(names(tilesOver(bounds(0, 0, 550, 100), a4))).toBe('A1 A2 A3');
	});

	it('go row by row, and start at the sheet’s own corner', () => {
		const tiles = tilesOver(bounds(-8, -12, 300, 500), a4);
		expect(tiles).toMatchObject([
			{ name: 'A1', left: -8, top: -12, width: 190, height: 277 },
			{ name: 'A2', left: 172, top: -12, width: 190, height: 277 },
			{ name: 'B1', left: -8, top: 255, width: 190, height: 277 },
			{ name: 'B2', left: 172, top: 255, width: 190, height: 277 }
		]);
	});

	it('are cut where they are laid over another, and say which is laid on which line', () => {
		const tiles = tilesOver(bounds(-8, -12, 300, 500), a4);
		expect(tiles.map(({ name, cuts, joins }) => ({ name, cuts, joins }))).toEqual([
			{
				name: 'A1',
				cuts: [],
				joins: [
					{ edge: 'right', page: 'A2', at: 172 },
					{ edge: 'bottom', page: 'B1', at: 255 }
				]
			},
			{ name: 'A2', cuts: ['left'], joins: [{ edge: 'bottom', page: 'B2', at: 255 }] },
			{ name: 'B1', cuts: ['top'], joins: [{ edge: 'right', page: 'B2', at: 172 }] },
			{ name: 'B2', cuts: ['left', 'top'], joins: [] }
		]);
	});

	it('a page alone has nothing to cut and nothing to join', () => {
		expect(tilesOver(bounds(0, 0, 100, 100), a4)).toMatchObject([{ cuts: [], joins: [] }]);
	});

	it('a back block takes a few pages, not many', () => {
		const drawing = draftDrawing(backBlock(), draftOf(backBlock()));
		expect(names(planPages([drawing], a4).every)).toBe('A1 A2 B1 B2 C1 C2');
		expect(names(planPages([drawing], paper('a3')).every)).toBe('A1 A2 B1 B2');
	});

	it('more than 26 rows have names of their own still', () => {
		const tiles = tilesOver(bounds(0, 0, 300, 30 * 267), a4);
		expect(new Set(tiles.map(({ name }) => name)).size).toBe(tiles.length);
		expect(names(tiles)).toContain('Z1 Z2 AA1 AA2 AB1 AB2');
	});
});

describe('any sheet on any paper', () => {
	const chance = chances(216);
	const sheets = Array.from({ length: 300 }, () => {
		const [left, top] = [(chance() - 0.5) * 400, (chance() - 0.5) * 400];
		return bounds(left, top, left + chance() ** 2 * 1600, top + chance() ** 2 * 1600);
	});
	const cases = sheets.flatMap((sheet) => PAPERS.map((on) => ({ sheet, on, tiles: tilesOver(sheet, on) })));

	const shows = ({ left, top, width, height }: Tile, x: number, y: number): boolean =>
		x >= left && x <= left + width && y >= top && y <= top + height;

	it('every place of the sheet is on some page', () => {
		for (const { sheet, tiles } of cases) {
			const place = (u: number, v: number): [number, number] => [
				sheet.left + u * (sheet.right - sheet.left),
				sheet.top + v * (sheet.bottom - sheet.top)
			];
			const places = [place(0, 0), place(1, 0), place(0, 1), place(1, 1)];
			for (let i = 0; i < 20; i++) places.push(place(chance(), chance()));
			for (const [x, y] of places)
				expect(
					tiles.some((tile) => shows(tile, x - 1e-9, y - 1e-9) || shows(tile, x, y)),
					`${x}, ${y}`
				).toBe(true);
		}
	});

	it('neighbours repeat just the overlap, and no row or column is to spare', () => {
		expect(OVERLAP).toBeGreaterThan(0);
		for (const { sheet, tiles } of cases) {
			const [lefts, tops] = [
				[...new Set(tiles.map(({ left }) => left))],
				[...new Set(tiles.map(({ top }) => top))]
			];
			expect(lefts.length * tops.length).toBe(tiles.length);
			const [first] = tiles;
			if (!first) throw new Error('no page');
			for (const [i, left] of lefts.entries())
				if (i > 0) expect((lefts[i - 1] ?? NaN) + first.width - left).toBeCloseTo(OVERLAP, 9);
			for (const [i, top] of tops.entries())
				if (i > 0) expect((tops[i - 1] ?? NaN) + first.height - top).toBeCloseTo(OVERLAP, 9);
			if (lefts.length > 1) expect((lefts.at(-2) ?? NaN) + first.width).toBeLessThan(sheet.right);
			if (tops.length > 1) expect((tops.at(-2) ?? NaN) + first.height).toBeLessThan(sheet.bottom);
		}
	});

	it('whoever cuts an edge and lays it on its dotted line has every place of the sheet once, where it belongs', () => {
		for (const { tiles } of cases) {
			const found = new Map(tiles.map((tile) => [tile.name, tile]));
			const joined = new Set<string>();
			for (const { joins, left, top, width, height } of tiles)
				for (const { edge, page, at } of joins) {
					const laid = found.get(page);
					// The cut edge of the page is the very line of the sheet that the dotted line is.
					expect(edge === 'right' ? laid?.left : laid?.top).toBeCloseTo(at, 9);
					expect(laid?.cuts).toContain(edge === 'right' ? 'left' : 'top');
					expect(edge === 'right' ? left + width - at : top + height - at).toBeCloseTo(OVERLAP, 9);
					joined.add(`${page} ${edge === 'right' ? 'left' : 'top'}`);
				}
			const cut = tiles.flatMap(({ name, cuts }) => cuts.map((edge) => `${name} ${edge}`));
			expect([...joined].sort()).toEqual(cut.sort());
		}
	});

	it('a page and its margins are the paper', () => {
		expect(PAGE_MARGIN).toBeGreaterThanOrEqual(6);
		for (const { on, tiles } of cases)
			for (const { width, height } of tiles) {
				expect(width + 2 * PAGE_MARGIN).toBeCloseTo(on.width, 9);
				expect(height + 2 * PAGE_MARGIN).toBeCloseTo(on.height, 9);
			}
	});

	it('names are row letter and column number, each once, in reading order', () => {
		for (const { tiles } of cases) {
			expect(new Set(tiles.map(({ name }) => name)).size).toBe(tiles.length);
			expect(tiles[0]?.name).toBe('A1');
			for (const [i, { name, left, top }] of tiles.entries()) {
				expect(name).toMatch(/^[A-Z]\d+$/);
				const before = tiles[i - 1];
				if (before) expect(top > before.top || (top === before.top && left > before.left)).toBe(true);
			}
		}
	});
});
