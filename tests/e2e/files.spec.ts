import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test, type Download, type Locator, type Page } from '@playwright/test';
import DxfParser from 'dxf-parser';
import { runCli } from '../cli/run-cli.ts';
import { askOf, firstWords, rasters, runsInRow, wordsPages } from '../exports/raster.ts';
import { expectPlain, heldUp, open } from './support/page.ts';

const MM_PER_PX = 25.4 / 96;

const DRESS = '/patterns/course-dress';
const panel = (page: Page): Locator => page.getByRole('region', { name: 'Take it to the table' });
const choose = (page: Page, name: string): Promise<void> =>
	page.getByRole('radio', { name, exact: true }).check();
const press = (page: Page, name: string): Promise<void> =>
	page.getByRole('button', { name, exact: true }).click();

/** What is saved when a button is pressed. */
const saved = async (page: Page, button: string): Promise<Download> => {
	const download = page.waitForEvent('download');
	await press(page, button);
	return download;
};
const bytesOf = async (download: Download): Promise<Buffer> => readFileSync(await download.path());
const textOf = async (download: Download): Promise<string> => (await bytesOf(download)).toString('utf8');

/** The day that it is in the browser, as the command line reads it. */
const dayIn = (page: Page): Promise<string> =>
	page.evaluate(() => {
		const now = new Date();
		const two = (part: number): string => String(part).padStart(2, '0');
		return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
	});

/** The file that the command line makes for Heron with these words. */
const byCommand = async (name: string, ...words: readonly string[]): Promise<Buffer> => {
	const to = test.info().outputPath(name);
	const heron = path.resolve('shared/bodies/heron.json');
	const run = await runCli(['export', 'course-dress', '--body', heron, '--to', to, ...words]);
	expect(run.err).toBe('');
	expect(run.code).toBe(0);
	return readFileSync(to);
};

test('the PDF on A4: the pages that were counted, a true check square, the same bytes as the command line, nothing sent', async ({
	page
}) => {
	const sent: string[] = [];
	page.on('request', (request) => {
		if (request.method() !== 'GET') sent.push(`${request.method()} ${request.url()}`);
	});
	await open(page, DRESS);
	await panel(page).scrollIntoViewIfNeeded();
	const counted = panel(page).getByText(/^\d+ pages of A4, after a first one/);
	const pages = parseInt((await counted.textContent()) ?? '', 10);
	const map = panel(page).getByRole('img', { name: /^How the pages lie together: A1, / });
	await expect(map.locator('text')).toHaveCount(pages);
	const download = await saved(page, 'Save the PDF');
	expect(download.suggestedFilename()).toBe('The course dress for Heron, full size, A4.pdf');
	await expect(panel(page).getByRole('status')).toContainText(
		'Made: The course dress for Heron, full size, A4.pdf'
	);
	const pdf = await bytesOf(download);
	const told = askOf('pdfinfo', pdf);
	// Pages of words stand between the first page and the pieces; each says how many they are.
	expect(told).toMatch(new RegExp(`Pages: +${String(pages + 1 + wordsPages(pdf))}\\n`));
	expect(told).toContain('(A4)');
	expect(firstWords(pdf)).toContain('For Heron');

	const [first] = rasters(pdf, 300, 1, 1);
	if (!first) throw new Error('the file has no page');
	const sides = Array.from({ length: Math.floor(first.height / 5) }, (_, i) =>
		runsInRow(first, i * 5)
	).flatMap((runs) => {
		const [left, right] = runs.filter(([from, to]) => to - from < 12);
		return left && right ? [(right[0] + right[1] - left[0] - left[1]) / 2 / first.perMm] : [];
	});
	// The pieces and the map have lines of other distances.
	const square = sides.filter((side) => Math.abs(side - 100) <= 0.1);
	expect(square.length).toBeGreaterThan(100);

	expect(pdf.equals(await byCommand('dress.pdf', '--date', await dayIn(page)))).toBe(true);
	expect(sent).toEqual([]);
});

test('making is stopped by Cancel, saves nothing then, and can be begun again', async ({ page }) => {
	await open(page, DRESS);
	const answer = await heldUp(page, '**/*.woff');
	const downloads: string[] = [];
	page.on('download', (download) => downloads.push(download.suggestedFilename()));
	await press(page, 'Save the PDF');
	await expect(panel(page).getByRole('status')).toHaveText('Being made …');
	await page.keyboard.press('Tab');
	await expect(page.getByRole('button', { name: 'Cancel' })).toBeFocused();
	await page.keyboard.press('Enter');
	await expect(panel(page).getByRole('status')).toHaveText('Stopped; nothing was saved.');
	await expect(page.getByRole('button', { name: 'Save the PDF' })).toBeFocused();
	answer();
	await expect.poll(() => page.workers().length).toBe(0);
	const download = await saved(page, 'Save the PDF');
	expect(askOf('pdfinfo', await bytesOf(download))).toContain('The course dress');
	expect(downloads).toEqual(['The course dress for Heron, full size, A4.pdf']);
});

test('the SVG opens in the browser at its true size, and each piece can have a file of its own', async ({
	page
}) => {
	await open(page, DRESS);
	await choose(page, 'SVG drawing');
	const whole = await saved(page, 'Save the drawing');
	expect(whole.suggestedFilename()).toBe('The course dress for Heron.svg');
	const text = await textOf(whole);
	expect(Buffer.from(text).equals(await byCommand('dress.svg'))).toBe(true);

	await page.getByLabel('A file for each piece').check();
	await page.getByText('Pieces: all 8').click();
	await page.getByRole('checkbox', { name: '8 Armhole binding' }).uncheck();
	await press(page, 'Save the drawing');
	await expect(panel(page).getByRole('status')).toContainText('7 files are made.');
	const skirt = await saved(page, '6 Skirt, The course dress for Heron.svg');

	for (const file of [text, await textOf(skirt)]) {
		await page.setContent(file);
		const fold = page.locator('[id$="skirt-fold"] path').first();
		const box = await fold.evaluate((line) => line.getBoundingClientRect().height);
		// The skirt of the dress is 64 cm long at its centre.
		expect(box * MM_PER_PX).toBeCloseTo(640, 1);
	}
	const width = await page.locator('svg').evaluate((svg) => svg.getBoundingClientRect().width);
	expect(width * MM_PER_PX).toBeCloseTo(Number(/width="([\d.]+)mm"/.exec(await textOf(skirt))?.[1]), 1);
});

test('the drawing file, the table and the data are those of the command line; only the chosen pieces are in them', async ({
	page
}) => {
	await open(page, DRESS);
	await choose(page, 'Drawing file (DXF)');
	await expect(panel(page)).toContainText('after ASTM D6673, from memory: no conformity is promised');
	await expect(page.getByRole('group', { name: 'Scale' })).toHaveCount(0);
	const dxf = await textOf(await saved(page, 'Save the drawing file'));
	expect(Object.keys(new DxfParser().parseSync(dxf)?.blocks ?? {})).toHaveLength(8);
	expect(Buffer.from(dxf).equals(await byCommand('dress.dxf'))).toBe(true);

	await page.getByText('Pieces: all 8').click();
	await press(page, 'None');
	await page.getByRole('checkbox', { name: '1 Front bodice' }).check();
	await choose(page, 'Table (CSV)');
	const csv = await bytesOf(await saved(page, 'Save the table'));
	expect(csv.equals(await byCommand('front.csv', '--pieces', 'front'))).toBe(true);
	await choose(page, 'Data (JSON)');
	const json = await textOf(await saved(page, 'Save the data'));
	expect(JSON.parse(json)).toMatchObject({ body: 'Heron', pieces: [{ key: 'front' }] });
});

test('a picture of one piece has four dots to the millimetre, and black ink on white', async ({ page }) => {
	await open(page, DRESS);
	await page.getByText('Pieces: all 8').click();
	await press(page, 'None');
	await page.getByRole('checkbox', { name: '1 Front bodice' }).check();
	await choose(page, 'SVG drawing');
	const svg = await textOf(await saved(page, 'Save the drawing'));
	const width = Number(/width="([\d.]+)mm"/.exec(svg)?.[1]);
	await choose(page, 'Picture (PNG)');
	const png = await bytesOf(await saved(page, 'Save the picture'));
	await expect(panel(page).getByRole('status')).toContainText('4 dots to the millimetre.');
	// A PNG file says its width in bytes 16 to 19 (its public specification, IHDR).
	expect(png.readUInt32BE(16)).toBe(Math.round(width * 4));
	const shares = await page.evaluate(
		async (bytes) => {
			const image = await createImageBitmap(new Blob([new Uint8Array(bytes)]));
			const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
			pen?.drawImage(image, 0, 0);
			const { data } = pen?.getImageData(0, 0, image.width, image.height) ?? { data: [] };
			let [black, white] = [0, 0];
			for (let i = 0; i < data.length; i += 4) {
				if ((data[i] ?? 0) < 64) black++;
				if ((data[i] ?? 0) > 250 && data[i + 3] === 255) white++;
			}
			return { black: (black * 4) / data.length, white: (white * 4) / data.length };
		},
		[...png]
	);
	expect(shares.black).toBeGreaterThan(0.005);
	expect(shares.white).toBeGreaterThan(0.9);
});

test('what cannot be made is told beside the button', async ({ page }) => {
	await open(page, DRESS);
	await page.getByText('Pieces: all 8').click();
	await press(page, 'None');
	await press(page, 'Save the PDF');
	await expect(panel(page).getByRole('alert')).toHaveText('Choose at least one piece.');
	await press(page, 'All');
	await expect(panel(page).getByRole('alert')).toBeEmpty();
	await page.getByRole('button', { name: 'Copy Heron and change the copy' }).click();
	const length = page.getByRole('textbox', { name: 'Back length', exact: true });
	await length.fill('20');
	await length.press('Enter');
	await press(page, 'Save the PDF');
	await expect(panel(page).getByRole('alert')).toHaveText(/^Nothing can be drafted for My Heron yet: .*back/);
	await page.getByLabel('Drafting for').selectOption('Heron (invented)');
	await page.getByRole('button', { name: 'Enter your own' }).click();
	await press(page, 'Save the PDF');
	await expect(panel(page).getByRole('alert')).toHaveText(/^My measurements lacks the /);
});

test('half size on A3 takes fewer pages, and one long sheet is one', async ({ page }) => {
	await open(page, DRESS);
	await panel(page).scrollIntoViewIfNeeded();
	await choose(page, 'A3');
	await choose(page, 'Half');
	await expect(panel(page)).toContainText(/\b[2-5] pages of A3/);
	const half = await saved(page, 'Save the PDF');
	expect(half.suggestedFilename()).toBe('The course dress for Heron, half size, A3.pdf');
	expect(firstWords(await bytesOf(half))).toContain('half size');
	await choose(page, 'PDF on a large sheet');
	await choose(page, 'Roll 90 cm wide');
	await choose(page, 'Full size');
	await expect(panel(page)).toContainText('1 sheet off a roll 90 cm wide');
	const roll = await bytesOf(await saved(page, 'Save the PDF'));
	const long = askOf('pdfinfo', roll, '-l', '2');
	expect(long).toMatch(new RegExp(`Pages: +${String(2 + wordsPages(roll))}\\n`));
	// The cover is a page of A4; 900 mm are 2551.18 points.
	expect(long).toMatch(/Page +2 size: +2551\.18 x/);
});

test('a draft, its worksheet, its rules and a picture of it are saved from the print page', async ({
	page
}) => {
	await open(page, '/drafts/back-block/print');
	const draft = await saved(page, 'Save the draft as PDF');
	expect(draft.suggestedFilename()).toBe('The back block for Heron, full size, A4.pdf');
	// As many pages as the screen says, after a first one.
	const said = (await page.getByText(/^\d+ pages of A4/).textContent()) ?? '';
	expect(askOf('pdfinfo', await bytesOf(draft))).toMatch(
		new RegExp(`Pages: +${String(parseInt(said, 10) + 1)}\\n`)
	);
	await choose(page, 'A worksheet');
	expect(firstWords(await bytesOf(await saved(page, 'Save the worksheet as PDF')))).toContain('Worksheet');
	await choose(page, 'A rule sheet');
	expect(firstWords(await bytesOf(await saved(page, 'Save the rule sheet as PDF')))).toContain('Rule sheet');
	await choose(page, 'A picture');
	const png = await bytesOf(await saved(page, 'Save the picture as PNG'));
	expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
	expect(png.readUInt32BE(20)).toBeGreaterThan(1000);
});

test('a figure of a lesson is saved as a picture, as it is seen on paper, from a dark screen too', async ({
	page
}) => {
	await page.emulateMedia({ colorScheme: 'dark' });
	await open(page, '/lessons/40-back-levels');
	const figure = page.getByRole('figure').first();
	const drawing = await figure.getByRole('img').boundingBox();
	const picture = await bytesOf(await saved(page, 'Save as a picture'));
	expect(picture.subarray(1, 4).toString('latin1')).toBe('PNG');
	expect(picture.readUInt32BE(16)).toBe(Math.round((drawing?.width ?? 0) * 3));
	// Its lines are drawn and not filled, as the style sheet has them: most of it is paper.
	const dark = await page.evaluate(
		async (bytes) => {
			const bitmap = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/png' }));
			const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
			const pen = canvas.getContext('2d');
			pen?.drawImage(bitmap, 0, 0);
			const dots = pen?.getImageData(0, 0, bitmap.width, bitmap.height).data ?? new Uint8ClampedArray();
			let count = 0;
			for (let i = 0; i < dots.length; i += 4) count += Number((dots[i] ?? 255) < 90);
			return count / (dots.length / 4);
		},
		[...picture]
	);
	expect(dark).toBeGreaterThan(0.001);
	expect(dark).toBeLessThan(0.1);
});

test('what writes PDF comes only when one is made, and only to the worker; the first lesson has neither it nor paper', async ({
	page
}) => {
	const scripts = new Map<string, string>();
	page.on('response', async (response) => {
		if (/\.js$/.test(new URL(response.url()).pathname))
			scripts.set(response.url(), await response.text().catch(() => ''));
	});
	const holding = (sign: string): readonly string[] =>
		[...scripts].flatMap(([address, text]) => (text.includes(sign) ? [address] : []));
	/** Words that stand in the library's own code. */
	const [PDF, PAPER] = ['PDFDocument', 'CurveLocation'];
	await page.goto('/lessons/10-the-sheet', { waitUntil: 'networkidle' });
	await expect.poll(() => scripts.size).toBeGreaterThan(0);
	expect([...holding(PDF), ...holding(PAPER)]).toEqual([]);
	await page.goto('/patterns/course-dress', { waitUntil: 'networkidle' });
	await panel(page).scrollIntoViewIfNeeded();
	await panel(page)
		.getByText(/pages of A4/)
		.waitFor();
	expect(holding(PAPER).length, 'the sign of paper is one that its code has').toBeGreaterThan(0);
	expect(holding(PDF)).toEqual([]);
	await saved(page, 'Save the PDF');
	await expect.poll(() => holding(PDF).length).toBeGreaterThan(0);
	for (const address of holding(PDF)) expect(address).toContain('/workers/');
});

for (const width of [1440, 360])
	test(`the panel at ${String(width)} px is free of what axe can find, and fits its width`, async ({
		page
	}) => {
		await page.setViewportSize({ width, height: 800 });
		await open(page, DRESS);
		await panel(page).scrollIntoViewIfNeeded();
		await page.getByText('Pieces: all 8').click();
		await panel(page)
			.getByText(/pages of A4/)
			.waitFor();
		await choose(page, 'SVG drawing');
		await page.getByLabel('A file for each piece').check();
		await press(page, 'Save the drawing');
		await expect(panel(page).getByRole('status')).toContainText('8 files are made.');
		await choose(page, 'PDF in pages');
		await expectPlain(page);
	});
