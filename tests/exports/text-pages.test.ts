import { beforeAll, describe, expect, it } from 'vitest';
import type { PDFFont } from '@cantoo/pdf-lib';
import { mm } from '#shared/units.ts';
import { openFile, wordsPdf } from '#exports/pdf/file.ts';
import { writable } from '#exports/pdf/operators.ts';
import { table, wrapped, type TextBlock } from '#exports/pdf/text-pages.ts';
import { askOf } from './raster.ts';
import { fileOptions, pageTexts, paperOf, placedWords, plain } from './sheet-options.ts';

let font: PDFFont;
beforeAll(async () => {
	({ font } = await openFile(fileOptions('A trial')));
});

const LONG = Array.from({ length: 900 }, (_, i) => `word${i}`).join(' ');

describe('lines', () => {
	it.each([20, 47, 160])('of %d mm are no wider, and keep every word in its turn', (width) => {
		const lines = wrapped(LONG, mm(3.4), width, font);
		for (const line of lines)
			expect(font.widthOfTextAtSize(line, 3.4), line).toBeLessThanOrEqual(width + 1e-6);
		expect(lines.join(' ')).toBe(LONG);
	});

	it('are as full as they can be: the next word never has room', () => {
		const lines = wrapped(LONG, mm(3.4), 60, font);
		for (const [i, line] of lines.slice(0, -1).entries()) {
			const next = lines[i + 1]?.split(' ')[0] ?? '';
			expect(font.widthOfTextAtSize(`${line} ${next}`, 3.4)).toBeGreaterThan(60);
		}
	});

	it('never end between a number and its fraction or its unit', () => {
		for (let width = 12; width < 80; width++) {
			const lines = wrapped('half the shoulder width + 1 3/16 = 7 9/16 + 22.2 cm', mm(3.4), width, font);
			for (const line of lines) expect(line).not.toMatch(/^(3\/16|9\/16|cm)/);
		}
	});

	it('a word wider than the line is broken, and nothing of it is lost', () => {
		const word = 'Ñ'.repeat(300);
		const lines = wrapped(`before ${word} after`, mm(3.4), 30, font);
		expect(lines.join(' ').replace(/Ñ (?=Ñ)/g, 'Ñ')).toBe(`before ${word} after`);
		for (const line of lines) expect(font.widthOfTextAtSize(line, 3.4)).toBeLessThanOrEqual(30 + 1e-6);
	});

	it('even where not one sign has room, signs made of two halves stay whole', () => {
		expect(wrapped('🪡🪡ab', mm(3.4), 0, font)).toEqual(['🪡', '🪡', 'a', 'b']);
		expect(wrapped('', mm(3.4), 0, font)).toEqual(['']);
	});
});

describe('signs', () => {
	it('a fraction is set as one, so that 1 9/16 is not read as 19/16', () => {
		expect(writable('1 9/16″ + 3/8', font)).toBe('1 9\u204416″ + 3\u20448');
		expect(writable('31/12/2026 and 1/7', font)).toBe('31/12/2026 and 1/7');
	});

	it('those that the typeface lacks are taken apart, or stood in for', () => {
		expect(writable('Ŵren', font)).toBe('Wren');
		expect(writable('37⅛', font)).toBe('37 1\u20448');
		expect(writable('n\u0303', font)).toBe('ñ');
		expect(writable('🪡', font)).toBe('?');
	});
});

describe('pages', () => {
	const pdf = (blocks: readonly TextBlock[], paper = 'a4') => wordsPdf(blocks, fileOptions('A trial', paper));

	it('a text longer than a page goes on over the pages, and no word is lost or off the paper', async () => {
		const bytes = await pdf([{ kind: 'text', text: `${LONG} ${LONG} ${LONG}` }]);
		const pages = pageTexts(bytes);
		expect(pages.length).toBeGreaterThan(1);
		const read = plain(pages.join(' ').replace(/page \d+ of \d+/g, ''));
		expect(read).toBe(`${LONG} ${LONG} ${LONG}`);
		const { width, height } = paperOf('a4');
		for (const word of placedWords(bytes)) {
			expect(word.left).toBeGreaterThan(10);
			expect(word.right).toBeLessThan(width - 10);
			expect(word.top).toBeGreaterThan(5);
			expect(word.bottom).toBeLessThan(height - 5);
		}
	});

	it('each has its number', async () => {
		const pages = pageTexts(await pdf([{ kind: 'text', text: `${LONG} ${LONG} ${LONG}` }]));
		for (const [i, page] of pages.entries()) expect(page).toContain(`page ${i + 1} of ${pages.length}`);
	});

	it('a heading never stands last: it goes on with what it leads', async () => {
		for (let rows = 25; rows < 45; rows++) {
			const before = Array.from({ length: rows }, (_, i): TextBlock => ({
				kind: 'text',
				text: `line ${i}`
			}));
			const pages = pageTexts(
				await pdf([...before, { kind: 'heading', text: 'Heading' }, { kind: 'text', text: 'Led' }], 'letter')
			);
			const of = (word: string): number => pages.findIndex((page) => page.includes(word));
			expect(of('Heading'), `${rows} rows`).toBe(of('Led'));
		}
	});

	it('a table has its headings on every page, once, and every row', async () => {
		const rows = Array.from({ length: 120 }, (_, i) => [`row${i}`, 'x'.repeat(i % 50)]);
		const pages = pageTexts(await pdf(table(['First', 'Second'], [0.5, 0.5], rows)));
		expect(pages.length).toBeGreaterThan(2);
		for (const page of pages) expect(page.match(/First/g)).toHaveLength(1);
		expect(pages.join(' ').match(/row\d+/g)).toEqual(rows.map(([name]) => name));
	});

	it('a file of words is sound', async () => {
		const bytes = await pdf([{ kind: 'title', text: 'Ñandú' }]);
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax or stream encoding errors found');
		expect(askOf('pdfinfo', bytes)).toMatch(/Title: +A trial/);
	});
});
