import { describe, expect, it } from 'vitest';
import { markerSheetPdf } from '#exports/pdf/marker-sheet.ts';
import { sharpened } from '#photograph/corners.ts';
import { cornersOf, MARKER_SHEETS, printedAs, type MarkerSheet } from '#photograph/marker-places.ts';
import { findMarkers } from '#photograph/markers.ts';
import { rasters, runsInRow, type Raster } from './raster.ts';
import { fileOptions, pageTexts, paperOf, plain } from './sheet-options.ts';

const DPI = 150;
/** Fills begin and end on whole dots there: half of one at either end of the black and of its white cells, by which it is seen how wide the black came out, in millimetres. */
const OFF = 1.5 * (25.4 / DPI);

const paged = async (sheet: MarkerSheet, paper: string, number = 1) => {
	const bytes = await markerSheetPdf(sheet, { ...fileOptions('Markers'), paper: paperOf(paper) });
	const [page] = rasters(bytes, DPI, number, number);
	if (!page) throw new Error('no page');
	return { bytes, page };
};

const markersOn = ({ width, height, grey }: Raster) => {
	const picture = { width, height, light: grey };
	return findMarkers(picture, () => false).flatMap((marker) => sharpened(picture, marker) ?? []);
};

describe('a sheet of markers, as another program draws it', () => {
	it.each([
		['cards', 'a4', 4],
		['cards', 'letter', 4],
		['small-sheet', 'a4', 6],
		['small-sheet', 'letter', 6],
		['large-sheet', 'a3', 6]
	] as const)(
		'%s on %s: has its markers where they are said to be, at their size',
		async (sheet, paper, count) => {
			const { page } = await paged(sheet, paper);
			const found = markersOn(page);
			expect(found).toHaveLength(count);
			const [from] = found;
			for (const { id, corners } of found) {
				const printed = printedAs(id);
				if (!printed || !from) throw new Error('not one of ours');
				// Cards lie anywhere on their page; the markers of a sheet keep their places to the first.
				const [start, first] =
					sheet === 'cards' ? [corners[0], printed.marker] : [from.corners[0], printedAs(from.id)?.marker];
				for (const [i, own] of cornersOf(printed.marker).entries()) {
					const place = corners[i] ?? { u: NaN, v: NaN };
					expect(Math.abs((place.u - start.u) / page.perMm - own.x + (first?.at.x ?? NaN))).toBeLessThan(OFF);
					expect(Math.abs((place.v - start.v) / page.perMm - own.y + (first?.at.y ?? NaN))).toBeLessThan(OFF);
				}
			}
		}
	);

	it.each([
		['cards', 150],
		['small-sheet', 100],
		['large-sheet', 150]
	] as const)('%s: has a check line of %s mm, and says so', async (sheet, length) => {
		const { bytes, page } = await paged(sheet, sheet === 'large-sheet' ? 'a3' : 'a4');
		expect(plain(pageTexts(bytes).join(' '))).toContain(`This line should measure ${String(length / 10)} cm`);
		const runs = Array.from({ length: page.height }, (_, y) => runsInRow(page, y)).flat();
		expect(runs.some(([from, to]) => Math.abs((to - from) / page.perMm - length) < 0.5)).toBe(true);
	});

	it('has four more cards on a second page, of other markers', async () => {
		const [first, second] = [await paged('cards', 'a4'), await paged('cards', 'a4', 2)];
		const ids = [first, second].map(({ page }) => markersOn(page).map(({ id }) => id));
		expect(ids).toEqual([
			[0, 1, 2, 3],
			[4, 5, 6, 7]
		]);
		expect(plain(pageTexts(first.bytes)[1] ?? '')).toContain('Card 5');
	});

	it('is the same for the same input, and all words stay on it', async () => {
		for (const sheet of MARKER_SHEETS) {
			const [one, other] = [await paged(sheet, 'a4'), await paged(sheet, 'a4')];
			expect(Buffer.compare(one.bytes, other.bytes)).toBe(0);
		}
	});
});
