import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { doJob, type Means } from '#ui/files/do-job.ts';
import { pagesWords } from '#ui/files/file-kinds.ts';
import type { DraftJob, Job, MadeFile, PatternJob, PlanJob } from '#ui/files/job.ts';
import { dotsFor } from '#ui/files/picture.ts';
import { today } from '#ui/files/today.ts';
import { PAPERS, ROLLS, SHEETS } from '#exports/sheets/tiles.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { askOf, firstWords, wordsPages } from '../exports/raster.ts';
import { english } from '../support/speech.ts';
import { bodyOf, garmentOf } from '../garment/garment-files.ts';

const garment = garmentOf('course-dress');
const ALL = garment.pieces.map(({ key }) => key);
const heron = bodyOf('heron');
const LAID = {
	garment,
	body: heron,
	choices: { allowances: {}, edges: {} },
	pieces: ALL,
	paper: 'a4',
	scale: 'full',
	language: 'en',
	unit: 'cm'
} as const;
const DATE = new Date('2026-03-04T00:00:00Z');
const plan = (more: Partial<PlanJob> = {}): PlanJob => ({ kind: 'plan', ...LAID, ...more });
const save = (more: Partial<PatternJob> = {}): PatternJob => ({
	kind: 'pattern',
	...LAID,
	format: 'pdf',
	each: false,
	date: DATE,
	...more
});

const means = (onProgress: Means['onProgress'] = () => undefined): Means => ({
	font: () =>
		Promise.resolve(
			new Uint8Array(readFileSync('node_modules/@fontsource/literata/files/literata-latin-400-normal.woff'))
		),
	speech: () => Promise.resolve(english),
	onProgress
});
const filesOf = async (job: Job, onProgress?: Means['onProgress']): Promise<readonly MadeFile[]> => {
	const said = await doJob(job, means(onProgress));
	if (said.kind !== 'files') throw new Error(JSON.stringify(said));
	return said.files;
};
const bytesOf = async ({ content }: MadeFile): Promise<Uint8Array> =>
	new Uint8Array(await content.arrayBuffer());

describe('what the worker is sent', () => {
	it('can be copied to it: a garment, a body and choices are plain data', () => {
		expect(structuredClone(save())).toEqual(save());
	});
});

describe('a pattern as files', () => {
	it('its PDF has the pages that were counted before, after a first one, and tells each as it is done', async () => {
		const counted = await doJob(plan(), means());
		if (counted.kind !== 'pages') throw new Error(counted.kind);
		const { every, blank, lines } = counted.pages;
		expect(lines).toHaveLength(ALL.length);
		const told: string[] = [];
		const [file] = await filesOf(save(), (done, of) => told.push(`${String(done)}/${String(of)}`));
		if (!file) throw new Error('no file');
		expect(file.name).toBe('The course dress for Heron, full size, A4.pdf');
		expect(file.content.type).toBe('application/pdf');
		const printed = every.length - blank.length;
		const bytes = await bytesOf(file);
		// A first page, and pages of words that say at their foot how many they are.
		const pages = printed + 1 + wordsPages(bytes);
		expect(wordsPages(bytes)).toBeGreaterThan(0);
		expect(askOf('pdfinfo', bytes)).toMatch(new RegExp(`Pages: +${String(pages)}\\n`));
		expect(told).toEqual(Array.from({ length: printed }, (_, i) => `${String(i + 1)}/${String(printed)}`));
	});

	it('the same job gives the same bytes', async () => {
		const [[once], [twice]] = [await filesOf(save()), await filesOf(save())];
		expect(once && twice && (await bytesOf(once))).toEqual(twice && (await bytesOf(twice)));
	});

	it('each piece has a file of its own, with its number first, and one that is not chosen has none', async () => {
		const told: number[] = [];
		const files = await filesOf(
			save({ format: 'svg', each: true, pieces: ['front', 'skirt'], scale: 'half' }),
			(done) => told.push(done)
		);
		expect(files.map(({ name }) => name)).toEqual([
			'1 Front bodice, The course dress for Heron, half size.svg',
			'6 Skirt, The course dress for Heron, half size.svg'
		]);
		expect(told).toEqual([1, 2]);
		const texts = await Promise.all(files.map(({ content }) => content.text()));
		expect(texts.map((text) => text.match(/<g id="piece-\d+-[a-z-]+"><title>[^<]+/g))).toEqual([
			['<g id="piece-1-front-bodice"><title>Front bodice'],
			['<g id="piece-1-skirt"><title>Skirt']
		]);
	});

	it('files of a body with a name of 300 letters stay apart', async () => {
		const body = { ...heron, name: 'Ñ/"'.repeat(100) };
		const files = await filesOf(save({ format: 'svg', each: true, body }));
		const names = files.map(({ name }) => name);
		expect(new Set(names).size).toBe(ALL.length);
		for (const name of names) expect(name).toMatch(/^[^/"\\]{1,70}\.svg$/);
	});

	it('off a roll the map ends where the pieces do', async () => {
		const said = await doJob(plan({ paper: 'roll-90' }), means());
		if (said.kind !== 'pages') throw new Error(said.kind);
		const [only, ...others] = said.pages.every;
		expect(others).toEqual([]);
		expect(only?.height).toBeLessThan(2500);
	});
});

describe('what cannot be had', () => {
	it.each([
		['no piece is chosen', save({ pieces: [] }), 'no piece is chosen'],
		['a paper that is not there', save({ paper: 'a5' }), 'there is no paper "a5"'],
		[
			'a body without its hip',
			plan({ body: { ...heron, measurements: { ...heron.measurements, hip: undefined } } }),
			'Heron lacks the hip'
		],
		[
			'a body whose back length cannot be',
			save({ body: { ...heron, measurements: { ...heron.measurements, backLength: mm(200) } } }),
			'nothing can be drafted for Heron yet: '
		]
	])('%s: is refused in plain words', async (_, job, words) => {
		const said = await doJob(job, means());
		expect(said.kind).toBe('refused');
		expect(said.kind === 'refused' && said.words).toContain(words);
		expect(said.kind === 'refused' && said.words).not.toMatch(/undefined|\bbackLength\b|Error/);
	});

	it('a typeface that does not come is our fault', async () => {
		const said = await doJob(save(), { ...means(), font: () => Promise.reject(new Error('not there')) });
		expect(said).toEqual({ kind: 'our-fault', told: 'not there' });
	});
});

describe('a draft as sheets', () => {
	const job = (more: Partial<DraftJob>): DraftJob => ({
		kind: 'draft',
		sheet: 'draft',
		method: backBlock(),
		body: heron,
		paper: 'a4',
		scale: 'full',
		worked: false,
		language: 'en',
		unit: 'cm',
		date: DATE,
		...more
	});

	it.each([
		['draft', 'The back block for Heron, full size, A4.pdf', 'The back block'],
		['worksheet', 'Worksheet, The back block for Heron, full size, A4.pdf', 'Worksheet, The back block'],
		['rules', 'Rule sheet, The back block for Heron.pdf', 'Rule sheet, The back block']
	] as const)('%s', async (sheet, name, title) => {
		const [file] = await filesOf(job({ sheet }));
		expect(file?.name).toBe(name);
		expect(file && firstWords(await bytesOf(file))).toContain(title);
	});

	it('a smaller draft says so in its name and on its first page, and a rule sheet has no scale', async () => {
		const [half] = await filesOf(job({ scale: 'half' }));
		expect(half?.name).toBe('The back block for Heron, half size, A4.pdf');
		expect(half && firstWords(await bytesOf(half))).toContain('half size');
		const [rules] = await filesOf(job({ sheet: 'rules', scale: 'half' }));
		expect(rules?.name).toBe('Rule sheet, The back block for Heron.pdf');
	});
});

describe('small things', () => {
	it('a picture is as fine as a canvas can hold, and never finer than 4 dots to the millimetre', () => {
		expect(dotsFor(mm(400), mm(600))).toBe(4);
		// 1500 by 1200 mm hold 16 million dots at 2.98 dots to the millimetre.
		expect(dotsFor(mm(1500), mm(1200))).toBeCloseTo(2.9, 9);
		// 5300 mm at 1.5 dots are 7950 of 8192 dots.
		expect(dotsFor(mm(300), mm(5300))).toBeCloseTo(1.5, 9);
	});

	it('the number of pages is said in a sentence', () => {
		const [a4] = PAPERS;
		const [a0] = SHEETS;
		const [roll] = ROLLS;
		if (!a4 || !a0 || !roll) throw new Error('papers');
		expect(pagesWords(23, a4, english)).toMatch(/^23 pages of A4, after a first one/);
		expect(pagesWords(1, a4, english)).toMatch(/^1 page of A4/);
		expect(pagesWords(2, a0, english)).toMatch(/^2 sheets of A0/);
		expect(pagesWords(1, roll, english)).toMatch(/^1 sheet off a roll 60 cm wide/);
	});

	it("today is the day of the maker's own clock", () => {
		expect(today(new Date(2026, 0, 31, 23, 59)).toISOString()).toBe('2026-01-31T00:00:00.000Z');
		expect(today(new Date(2026, 0, 31, 0, 1)).toISOString()).toBe('2026-01-31T00:00:00.000Z');
	});
});
