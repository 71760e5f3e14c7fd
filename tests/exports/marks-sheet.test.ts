import { describe, expect, it } from 'vitest';
import { marksSheetPdf, type MarksSheet } from '#exports/pdf/marks-sheet.ts';
import { askOf, rasters, runsInRow } from './raster.ts';
import { fileOptions, pageTexts, paperOf, placedWords, plain } from './sheet-options.ts';

const SHEET: MarksSheet = {
	learner: 'Wren',
	work: 'The back block',
	steps: [
		{ step: 'A: armhole level', answer: 'right', note: '', mark: 1 },
		{ step: 'W: waist level', answer: 'wrong', note: 'Too far down by 2 cm', mark: 0 },
		{ step: 'The shoulder', answer: 'right', note: 'from their own points', mark: 0.67 }
	],
	total: 1.67,
	outOf: 3
};
const BY_HAND: MarksSheet = {
	learner: '',
	work: 'The back block',
	steps: ['A', 'W', 'H', 'S'].map((step) => ({ step, answer: '', note: '' })),
	outOf: 4,
	empty: ['Remark']
};
const pdf = (sheet: MarksSheet) => marksSheetPdf(sheet, fileOptions('Marks'));

describe('a marks sheet', () => {
	it('has a row for each step, and the total as it was given', async () => {
		const lines = (pageTexts(await pdf(SHEET))[0] ?? '').split('\n').map(plain);
		expect(lines).toContain('A: armhole level right 1');
		expect(lines).toContain('W: waist level wrong Too far down by 2 cm 0');
		expect(lines).toContain('The shoulder right from their own points 0.67');
		expect(lines).toContain('Total out of 3 1.67');
		expect(lines).toContain('The back block. Wren');
	});

	it('to be filled in by hand has boxes at least 9 mm high, and no mark', async () => {
		const bytes = await pdf(BY_HAND);
		const text = plain(pageTexts(bytes).join(' '));
		expect(text).toContain('Name: ____');
		expect(text).toContain('Remark');
		expect(text).not.toMatch(/Total.*\b\d+ \d/);
		const [page] = rasters(bytes, 100, 1, 1);
		if (!page) throw new Error('no page');
		const ruled: number[] = [];
		for (let y = 0; y < page.height; y++)
			if (runsInRow(page, y).some(([from, to]) => to - from > page.width / 2)) ruled.push(y / page.perMm);
		expect(ruled).toHaveLength(6);
		for (const [i, y] of ruled.slice(1).entries()) expect(y - (ruled[i] ?? 0)).toBeGreaterThan(8.7);
		// Five columns have six upright rules: seen on a row of dots through an empty part of a box.
		const y = Math.round(((ruled[1] ?? 0) + 7.5) * page.perMm);
		expect(runsInRow(page, y)).toHaveLength(6);
	});

	it('names of 300 signs, quotes and emoji stay in their columns and on the paper', async () => {
		const odd = `"Wren's" <b>/\\ 🪡 ${'Ñandú'.repeat(60)}`;
		const bytes = await pdf({
			...SHEET,
			learner: odd,
			steps: [{ step: odd, answer: odd, note: odd, mark: 1 }],
			empty: ['Remark', odd]
		});
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax or stream encoding errors found');
		for (const { left, right, top, bottom } of placedWords(bytes)) {
			expect(left).toBeGreaterThan(10);
			expect(right).toBeLessThan(paperOf('a4').width - 10);
			expect(top).toBeGreaterThan(5);
			expect(bottom).toBeLessThan(paperOf('a4').height - 5);
		}
	});

	it('the same input gives the same bytes', async () => {
		expect(Buffer.from(await pdf(SHEET)).equals(Buffer.from(await pdf(SHEET)))).toBe(true);
		expect(Buffer.from(await pdf(SHEET)).equals(Buffer.from(await pdf(BY_HAND)))).toBe(false);
	});

	it('of no steps at all is a total of nothing', async () => {
		const text = plain(pageTexts(await pdf({ ...SHEET, steps: [], total: 0, outOf: 0 })).join(' '));
		expect(text).toContain('Total out of 0 0');
	});
});
