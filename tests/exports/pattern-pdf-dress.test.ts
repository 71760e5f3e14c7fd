import { english } from '../support/speech.ts';
import { beforeAll, describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm } from '#shared/units.ts';
import { boundsOf, polyline } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { CHECK_SIDES, alignmentPlaces, roomForSquares } from '#exports/pdf/page-words.ts';
import { patternPdf } from '#exports/pdf/pattern-pdf.ts';
import { patternSheet } from '#exports/files/pattern-file.ts';
import type { Drawing } from '#exports/drawing/drawing.ts';
import { planPages, type PagePlan } from '#exports/sheets/page-plan.ts';
import { PAGE_MARGIN, type Paper, type Tile } from '#exports/sheets/tiles.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { joinedBy, measuredSquares, middleOf } from './joined-pages.ts';
import { askOf, firstWords, isInk, rasters, runsInRow, type Raster } from './raster.ts';
import { fileOptions, paperOf, plain } from './sheet-options.ts';

/** Three dots in a millimetre: pages of A4 then begin on whole dots of the sheet, 540 and 801 apart. */
const DPI = 76.2;
const PER_MM = 3;
const MARGIN = PAGE_MARGIN * PER_MM;
/** Reach of an alignment mark's arms and a little more, in millimetres. */
const MARK = 3.5;

const garment = garmentOf('course-dress');
const drawn = (body: string, paper: string): readonly Drawing[] =>
	patternSheet(garment, madeFor(garment, bodyOf(body)), { pieces: [], paper, scale: 'full', speech: english })
		.drawings;
const printed = (drawings: readonly Drawing[], paper: Paper): Promise<Uint8Array> =>
	patternPdf(drawings, { ...fileOptions('A dress'), paper, about: [] });

/** A paper that holds everything on one page. */
const wholePaper = ({ bounds }: PagePlan): Paper => ({
	id: 'whole',
	width: mm(bounds.right - bounds.left + 2 * PAGE_MARGIN + 1),
	height: mm(Math.max(420, bounds.bottom - bounds.top + 2 * PAGE_MARGIN + 1))
});

/** Whether a dot or one beside it is ink: a line on a dot's edge may fall to either side. */
const inkNear = (page: Raster, x: number, y: number): boolean =>
	isInk(page, x, y) || [-1, 0, 1].some((dx) => [-1, 0, 1].some((dy) => isInk(page, x + dx, y + dy)));

/** Which dots of a page, counted from the part of the sheet that it shows, may be its own frame, joining lines and marks. */
const furniture = (tile: Tile): ((x: number, y: number) => boolean) => {
	const marks = alignmentPlaces(tile).map((place) => [place.x - tile.left, place.y - tile.top] as const);
	const joins = tile.joins.map(({ edge, at: place }) => ({
		edge,
		at: (place - (edge === 'right' ? tile.left : tile.top)) * PER_MM
	}));
	return (x, y) =>
		joins.some((join) => Math.abs((join.edge === 'right' ? x : y) - join.at) <= 2) ||
		marks.some(([mx, my]) => Math.max(Math.abs(x / PER_MM - mx), Math.abs(y / PER_MM - my)) <= MARK);
};

/** Which dots of the whole sheet are its own check squares, which the pages of A4 have on their first one. */
const squaresOn = (drawings: readonly Drawing[], paper: Paper): ((x: number, y: number) => boolean) => {
	const place = roomForSquares(drawings, planPages(drawings, paper).tiles);
	const [wide, high] = [CHECK_SIDES[1] + 1, CHECK_SIDES[0] + CHECK_SIDES[1] + 6];
	return (x, y) => {
		if (!place) return false;
		const [right, below] = [x / PER_MM + PAGE_MARGIN - place.x, y / PER_MM + PAGE_MARGIN - place.y];
		return right > -1 && right < wide && below > -1 && below < high;
	};
};

/** The places at which a page and the same part of the whole sheet differ, and how much ink was compared. */
const differences = (
	sheet: Raster,
	page: Raster | undefined,
	tile: Tile,
	{ bounds }: PagePlan,
	squares: (x: number, y: number) => boolean
) => {
	const [left, top] = [(tile.left - bounds.left) * PER_MM, (tile.top - bounds.top) * PER_MM].map(
		Math.round
	) as [number, number];
	const own = furniture(tile);
	const [wrong, seen]: [string[], { ink: number }] = [[], { ink: 0 }];
	// Two dots inside the page's frame, which is drawn on every page but not at the same place of the sheet.
	for (let y = 2; y < tile.height * PER_MM - 2; y++) {
		for (let x = 2; x < tile.width * PER_MM - 2; x++) {
			const [sx, sy] = [x + left, y + top];
			const onPage = page !== undefined && isInk(page, x + MARGIN, y + MARGIN);
			// Most of the paper is blank on both: nothing else is asked there.
			if (!onPage && !isInk(sheet, sx + MARGIN, sy + MARGIN)) continue;
			// Beyond the whole sheet's own frame there is nothing.
			const inside =
				!squares(sx, sy) &&
				sx > 2 &&
				sy > 2 &&
				sx < (bounds.right - bounds.left) * PER_MM - 2 &&
				sy < (bounds.bottom - bounds.top) * PER_MM - 2;
			const onSheet = inside && isInk(sheet, sx + MARGIN, sy + MARGIN);
			if (onSheet) seen.ink++;
			if (onSheet && !(page && inkNear(page, x + MARGIN, y + MARGIN))) wrong.push(`lost ${x},${y}`);
			if (onPage && inside && !own(x, y) && !inkNear(sheet, sx + MARGIN, sy + MARGIN))
				wrong.push(`added ${x},${y}`);
		}
	}
	return { wrong: wrong.slice(0, 3), ink: seen.ink };
};

describe.each(DEMO_BODIES.map(({ id }) => id))('the dress for %s on A4', (id) => {
	let plan: PagePlan;
	let bytes: Uint8Array;
	let pages: readonly Raster[];
	let sheet: Raster | undefined;
	let squares: (x: number, y: number) => boolean;

	beforeAll(async () => {
		const drawings = drawn(id, 'a4');
		plan = planPages(drawings, paperOf('a4'));
		bytes = await printed(drawings, paperOf('a4'));
		pages = rasters(bytes, DPI, 2);
		[sheet] = rasters(await printed(drawings, wholePaper(plan)), DPI, 2);
		squares = squaresOn(drawings, wholePaper(plan));
	});

	it('page by page is the same picture as on one sheet, and a page that is left out has nothing on it', () => {
		expect(pages).toHaveLength(plan.tiles.length);
		let ink = 0;
		for (const tile of plan.every) {
			const i = plan.tiles.indexOf(tile);
			if (!sheet) throw new Error('no sheet');
			const found = differences(sheet, i < 0 ? undefined : pages[i], tile, plan, squares);
			expect(found.wrong, `${id} ${tile.name}`).toEqual([]);
			ink += found.ink;
		}
		expect(ink).toBeGreaterThan(30_000);
	});

	it('the check squares are 100 mm and 4 inches, within 0.1 mm, and the file is sound', () => {
		const [first] = rasters(bytes, 508, 1, 1);
		if (!first) throw new Error('no page');
		measuredSquares(first).forEach((side, i) => {
			expect(Math.abs(side - (CHECK_SIDES[i] ?? NaN))).toBeLessThan(0.1);
		});
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax or stream encoding errors found');
	});
});

/** How far from where it should be a line is looked for, in millimetres. */
const REACH = 1.5;

it('the casing, joined again over three pages by their own marks, is as wide as its piece within 0.2 mm', async () => {
	const pattern = madeFor(garment, bodyOf('heron'));
	const casing = pattern.pieces.find(({ key }) => key === 'casing');
	// A rectangle, from the fold to the line that is cut at its short end: its long edge and the end's allowance.
	const lengths = (casing?.edges ?? []).map(({ length }) => length);
	const end = casing?.edges.find(({ kind, length }) => kind !== 'fold' && length < Math.max(...lengths));
	const width = Math.max(...lengths) + (end?.allowance ?? NaN);
	const drawings = drawn('heron', 'a4');
	const drawing = drawings.find(({ name }) => name === casing?.name);
	const { tiles } = planPages(drawings, paperOf('a4'));
	const pages = rasters(await printed(drawings, paperOf('a4')), 254, 2);
	const joined = joinedBy(pages, tiles);
	const part = (kind: string) =>
		boundsOf((drawing?.strokes ?? []).filter((stroke) => stroke.kind === kind).map(({ path }) => path));
	const [fold, cut] = [part('fold'), part('cutting')];
	/** Where an upright line at so far across the sheet stands, in the first page's own millimetres. */
	const found = (x: number): { x: number; page: string } => {
		for (let y = cut.top + 1; y < cut.bottom - 1; y += 0.3) {
			const tile = tiles.find(
				({ left, top, width: wide, height }) =>
					left + 2 < x && x < left + wide - 2 && top + 2 < y && y < top + height - 2
			);
			const page = tile && pages[tiles.indexOf(tile)];
			const base = tile && joined.get(tile.name);
			if (!tile || !page || !base) continue;
			const about = x - tile.left + PAGE_MARGIN;
			const row = Math.round((y - tile.top + PAGE_MARGIN) * page.perMm);
			const [run, ...more] = runsInRow(
				page,
				row,
				Math.round((about - REACH) * page.perMm),
				Math.round((about + REACH) * page.perMm)
			);
			if (run && more.length === 0 && run[1] - run[0] < page.perMm)
				return { x: middleOf(run) / page.perMm + base.x, page: tile.name };
		}
		throw new Error(`no line at ${x}`);
	};
	const [from, to] = [found(fold.left), found(cut.right)];
	expect(from.page).not.toBe(to.page);
	expect(Math.abs(to.x - from.x - width)).toBeLessThan(0.2);
});

describe('a train of 5.3 metres', () => {
	const train: Drawing = {
		name: 'train',
		strokes: [
			{
				kind: 'cutting',
				path: polyline(at(0, 0), at(500, 0), at(500, 5300), at(0, 5300)),
				closed: true
			}
		],
		words: []
	};

	it('on a roll is cut into two sheets, none longer than a page of a PDF may be, and says so', async () => {
		const bytes = await printed([train], paperOf('roll-60'));
		const heights = [
			...askOf('pdfinfo', bytes, '-l', '9').matchAll(/Page +\d+ size: +([\d.]+) x ([\d.]+)/g)
		].map(([, , height]) => Number(height));
		expect(heights).toHaveLength(3);
		expect(Math.max(...heights)).toBeLessThanOrEqual(14_400);
		const text = plain(firstWords(bytes));
		expect(text).toContain('2 pages of a roll 60 cm wide');
		expect(text).toContain('lay it on the dotted line of its neighbour');
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax');
	});

	it('on A0 takes five sheets, one under another', () => {
		expect(planPages([train], paperOf('a0')).tiles.map(({ name }) => name)).toEqual([
			'A1',
			'B1',
			'C1',
			'D1',
			'E1'
		]);
	});
});
