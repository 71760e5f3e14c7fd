import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import type { Body } from '#shared/body.ts';
import { patternFile, type FileRequest } from '#exports/files/pattern-file.ts';
import { cutWords } from '#garment/words.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';
import { askOf } from './raster.ts';
import { pageTexts, plain } from './sheet-options.ts';

const FONT = new Uint8Array(
	readFileSync('node_modules/@fontsource/literata/files/literata-latin-400-normal.woff')
);

/** The PDF of a garment for a body. */
const printed = (
	id: string,
	more: Partial<FileRequest> = {},
	body: Body = bodyOf('heron')
): Promise<Uint8Array> => {
	const garment = garmentOf(id);
	const choices = { allowances: {}, edges: {} };
	const made = { garment, pattern: madeFor(garment, body, choices), body, choices };
	return patternFile(made, {
		...{ format: 'pdf', pieces: [], paper: 'a4', scale: 'full', speech: english },
		...{ date: new Date('2026-01-02T00:00:00Z'), dated: false, font: () => Promise.resolve(FONT) },
		...more
	});
};
/** All that pdftotext reads, white as one space. */
const textOf = (bytes: Uint8Array): string => plain(pageTexts(bytes).join(' '));

describe.each(['course-dress', 'straight-skirt', 'body-block'])('the words that go with %s', (id) => {
	it.each(['en', 'es'] as const)(
		'in %s: what to cut, to buy, to know and to do, read back',
		async (language) => {
			const speech = speechFor(language);
			const bytes = await printed(id, { speech });
			const text = textOf(bytes);
			const { paper, wear } = speech.words;
			for (const title of [
				paper.cuttingList,
				paper.whatYouNeed,
				paper.linesMean,
				paper.sewingOrder,
				wear.title
			])
				expect(text).toContain(plain(title));
			const garment = garmentOf(id);
			for (const piece of madeFor(garment, bodyOf('heron')).pieces)
				expect(text).toContain(plain(`${piece.number} ${piece.name} ${cutWords(piece, speech)}`));
			garment.order.forEach((_, i) => {
				expect(text).toContain(`${i + 1}. `);
			});
			for (const key of garment.measurements)
				expect(text).toContain(plain(speech.length(bodyOf('heron').measurements[key] ?? mm(NaN))));
			for (const kind of ['cutting', 'stitching', 'grain', 'notch'] as const)
				expect(text).toContain(plain(paper.lineMeans({ kind })));
			for (const { label } of garment.wear) expect(text).toContain(plain(label));
			expect(text).toContain(plain(paper.nothingChanged));
			expect(askOf('qpdf', bytes, '--check')).toContain('No syntax');
		}
	);
});

it('a changed number stands beside the usual one', async () => {
	const heron = bodyOf('heron');
	const longer = { ...heron, allowances: { ...heron.allowances, skirtLength: mm(700) } };
	expect(textOf(await printed('course-dress', {}, longer))).toMatch(/Skirt length 70 cm 64 cm/);
});

it('interfacing is counted with the cloth, and a casing too wide for half the cloth is told to have a seam', async () => {
	const text = textOf(await printed('course-dress'));
	expect(text).toMatch(/Interfacing 90 cm wide 0\.\d m/);
	expect(text).toMatch(/Fabric 115 cm wide \d\.\d m; with a seam in place of the fold: Casing/);
	expect(text).toMatch(/Fabric 140 cm wide \d\.\d m Fabric 150/);
	expect(textOf(await printed('sleeved-bodice'))).not.toContain('Interfacing');
});

it('what the finished garment measures stands beside the body and what is usual: the body and its room', async () => {
	// Heron's hip is 102; the skirt has 6 of ease there, and 4 to 12 are usual.
	const text = textOf(await printed('straight-skirt'));
	expect(text).toMatch(/Finished measurements Round the body Heron Finished Usual/);
	expect(text).toMatch(/Hip girth 102 cm 108 cm from 106 cm to 114 cm/);
	expect(text).toContain('common practice, from no published standard');
});

it('the day is told only where somebody said it', async () => {
	expect(textOf(await printed('body-block', { dated: true }))).toContain('Made on 2026-01-02.');
	expect(textOf(await printed('body-block'))).not.toContain('Made on');
});

it('some of the pieces alone have no pages of words; on a large sheet the words come last', async () => {
	expect(textOf(await printed('body-block', { pieces: ['front'] }))).not.toContain('Order of sewing');
	const pages = pageTexts(await printed('body-block', { paper: 'a0' }));
	expect(pages[1]).toContain('Front block');
	expect(plain(pages[2] ?? '')).toContain('Cutting list');
});

it('the same input gives the same bytes', async () => {
	const [once, again] = [await printed('straight-skirt'), await printed('straight-skirt')];
	expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true);
});
