import { expect, test, type Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { CHECK_SIDES } from '#exports/pdf/page-words.ts';
import { measuredSquares, middleOf } from '../exports/joined-pages.ts';
import { askOf, firstWords, rasters, runsInRow, type Raster } from '../exports/raster.ts';
import { Desk } from './support/desk.ts';
import { finishedSteps, METHODS } from './support/finished.ts';
import { alive, expectPlain, open } from './support/page.ts';

const PAGES = [
	'/practice?seed=7',
	'/',
	'/lessons/10-the-sheet',
	'/lessons/21-bust',
	'/lessons/42-back-armhole',
	'/lessons/44-back-finished',
	'/lessons/56-front-finished',
	'/measurements',
	'/drafts/back-block/print',
	'/drafts/back-block/paper'
];
const WIDTHS = [1440, 360];

for (const path of PAGES) {
	for (const width of WIDTHS) {
		test(`${path} at ${String(width)} px is free of what axe can find and fits its width`, async ({
			page
		}) => {
			await page.setViewportSize({ width, height: 800 });
			await open(page, path);
			await expectPlain(page);
		});
	}
}

test('lessons and figures can be read without JavaScript', async ({ browser }) => {
	const context = await browser.newContext({ javaScriptEnabled: false });
	const page = await context.newPage();
	await page.goto('/lessons/40-back-levels');
	await expect(page.getByText('From O, go down half the shoulder width')).toBeVisible();
	const figure = page.getByRole('img', { name: /^O lies at the top of the centre line/ });
	await expect(figure.locator('text.name')).toHaveText(['O', 'A', 'W', 'H']);
	await expect(page.getByText('The sheet needs JavaScript.')).toBeVisible();
	// A measurement that is typed goes nowhere.
	await page.goto('/lessons/21-bust');
	const own = page.locator('.text form input');
	await own.fill('96.5');
	await own.press('Enter');
	await expect(page.getByRole('heading', { level: 1, name: 'Bust' })).toBeVisible();
	expect(page.url()).not.toContain('96');
	await context.close();
});

/** The file that is saved when a button of the print page is pressed. */
const savedAs = async (page: Page, button: string): Promise<Buffer> => {
	const download = page.waitForEvent('download');
	await page.getByRole('button', { name: button, exact: true }).click();
	return readFileSync(await (await download).path());
};

test('the PDF of the print page is at true scale: the check squares and a known line are measured', async ({
	page
}) => {
	await open(page, '/drafts/back-block/print');
	await page.getByRole('radio', { name: 'A3', exact: true }).check();
	const pages = rasters(await savedAs(page, 'Save the draft as PDF'), 300);
	const [first] = pages;
	if (!first) throw new Error('no page');
	measuredSquares(first).forEach((side, i) => {
		expect(Math.abs(side - (CHECK_SIDES[i] ?? NaN))).toBeLessThan(0.1);
	});
	// A quarter of 102 and of 4 cm ease: just above the hem, the centre and the side line stand 265 mm apart.
	const apart = (raster: Raster, y: number): readonly number[] => {
		const middles = runsInRow(raster, y).map(middleOf);
		return middles.flatMap((to) => middles.map((from) => (to - from) / raster.perMm));
	};
	const rows = pages
		.slice(1)
		.flatMap((raster) => Array.from({ length: raster.height }, (_, y) => apart(raster, y)));
	const true265 = rows.filter((lengths) => lengths.some((length) => Math.abs(length - 270) < 0.1));
	expect(true265.length).toBeGreaterThan(20);
});

test('pages that are joined by their own words are those of the map', async ({ page }) => {
	await open(page, '/drafts/back-block/print');
	await expect(
		page.getByRole('img', { name: 'How the pages lie together: A1, A2, B1, B2, C1, C2' })
	).toBeVisible();
	await expect(page.getByText('6 pages of A4, after a first one with the check squares')).toBeVisible();
	const file = await savedAs(page, 'Save the draft as PDF');
	expect(askOf('pdfinfo', file)).toMatch(/Pages: +7\n/);
	expect(firstWords(file).replace(/\s+/g, ' ')).toContain('Cut the left and the top edge of a page off');
});

test('a body that cannot be drafted is told why, in words, wherever its draft would stand', async ({
	page
}) => {
	await page.goto('/favicon.svg');
	const body = { name: 'Mine', bust: 96, waist: 78, hip: 102, neck: 37, shoulderWidth: 38.4, backLength: 20 };
	const keep = (file: Readonly<Record<string, unknown>>): Promise<void> =>
		page.evaluate((own) => {
			localStorage.setItem(
				'square-across.bodies',
				JSON.stringify({ version: 1, bodies: [{ id: 'own-1', file: own }] })
			);
			localStorage.setItem('square-across.settings', JSON.stringify({ version: 1, body: 'own-1' }));
		}, file);
	await keep(body);
	await page.goto('/lessons/44-back-finished');
	await expect(page.getByText('This draft needs waist to hip of Mine')).toBeVisible();
	await keep({ ...body, waistToHip: 20.5 });
	for (const path of ['/lessons/44-back-finished', '/lessons/40-back-levels', '/drafts/back-block/print']) {
		await page.goto(path);
		await expect(page.getByRole('alert'), path).toContainText(
			'The shoulder width and the back length disagree'
		);
		await expect(page.getByRole('link', { name: 'Look at the measurements' })).toBeVisible();
	}
});

test('the table of the finished draft leads to the lesson of what is not drafted', async ({ page }) => {
	await open(page, '/lessons/44-back-finished');
	await page.getByText('All 30 steps, one by one').click();
	await page.getByRole('link', { name: 'not drafted: The armhole, in the lesson The armhole' }).click();
	await expect(page).toHaveURL(/\/lessons\/42-back-armhole#step-armhole$/);
	await expect(page.locator('#step-armhole')).toBeVisible();
});

test('names in figures are large enough to be read, on a small screen too', async ({ page }) => {
	for (const width of WIDTHS) {
		await page.setViewportSize({ width, height: 800 });
		for (const path of [
			'/lessons/44-back-finished',
			'/lessons/56-front-finished',
			'/lessons/25-shoulder-width'
		]) {
			await open(page, path);
			const sizes = await page.locator('figure svg text').evaluateAll((names) =>
				names.map((name) => {
					const scale = (name as SVGGraphicsElement).getScreenCTM()?.a ?? 0;
					return scale * parseFloat(getComputedStyle(name).fontSize);
				})
			);
			expect(sizes.length, path).toBeGreaterThan(0);
			expect(Math.min(...sizes), `${path} at ${String(width)} px`).toBeGreaterThan(12);
		}
	}
});

test('the draft of the first page follows its slider, by keys as by mouse, and nothing else moves', async ({
	page
}) => {
	await open(page, '/');
	const slider = page.getByRole('slider', { name: 'Move a number, and the draft follows' });
	const figure = page.locator('figure').filter({ has: slider });
	const side = () => figure.locator('path.cloth').first().getAttribute('d');
	const layout = () =>
		page
			.locator('main :is(h1, h2, figure, svg, img)')
			.evaluateAll((all) => all.map((each) => JSON.stringify(each.getBoundingClientRect())));
	const [before, places] = [await side(), await layout()];
	await slider.press('ArrowRight');
	await expect(figure).toContainText('Bust girth 96.5 cm');
	expect(await side()).not.toBe(before);
	const box = await slider.boundingBox();
	if (!box) throw new Error('there is no slider');
	await page.mouse.click(box.x + box.width * 0.9, box.y + box.height / 2);
	await expect(figure).toContainText(/Bust girth 11\d/);
	expect(await layout()).toEqual(places);
	// A bust for which this body cannot be drafted is not taken: what was drafted last stays.
	await slider.press('Home');
	await expect(figure.locator('path.cloth')).toHaveCount(2);
	await page.goto('/es');
	await expect(page.getByRole('slider', { name: 'Mueve un número y el trazado lo sigue' })).toBeVisible();
});

test('the end of a part says what it was good for and where to go on', async ({ page }) => {
	await page.goto('/lessons/44-back-finished');
	const end = page.getByRole('region', { name: 'What this part was good for' });
	await expect(end).toContainText('You have half of a back that fits this body');
	await expect(end.getByRole('link')).toHaveText([
		'The front block, beginning with: The front levels',
		'The pattern page: The body block',
		'Drafted on paper? Check it here',
		'Practise these rules on new bodies'
	]);
	await page.goto('/es/lessons/95-sleeve-wrist');
	await expect(
		page.getByRole('region', { name: 'Para qué ha servido esta parte' }).getByRole('link')
	).toHaveText([
		'La página del patrón: Corpiño con manga',
		'¿Has trazado en papel? Compruébalo aquí',
		'Practicar estas reglas con cuerpos nuevos'
	]);
});

test('once every step is drafted, the first page says what comes next', async ({ page }) => {
	await page.goto('/');
	const works = METHODS.map((method) => ({ method, steps: finishedSteps(method) }));
	await page.evaluate(
		(all) => {
			for (const { method, steps } of all) {
				const key = [
					'square-across.work',
					method.id,
					...(method.measurements.length > 0 ? ['heron'] : [])
				].join('.');
				localStorage.setItem(key, JSON.stringify({ version: 1, method: method.id, steps }));
			}
		},
		works.map(({ method: { id, measurements }, steps }) => ({ method: { id, measurements }, steps }))
	);
	await page.reload();
	await expect(page.getByText('Every step is drafted for Heron.')).toBeVisible();
	await expect(page.getByRole('link', { name: /^Go on with/ })).toHaveCount(0);
	await page.getByText('Print a draft').click();
	await page.getByRole('link', { name: 'The front block', exact: true }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'The front block at true scale' })).toBeVisible();
});

test('the SVG file that is saved opens in a browser at its true size', async ({ page }) => {
	await open(page, '/drafts/back-block/print');
	await page.getByRole('radio', { name: 'A drawing', exact: true }).check();
	const svg = (await savedAs(page, 'Save the drawing as SVG')).toString('utf8');
	await page.setContent(svg);
	// CSS counts 96 px to the inch of 25.4 mm.
	const levels = await page
		.locator('[id$=cutting] path')
		.evaluateAll((lines) =>
			lines.map(
				(line) =>
					(line as SVGPathElement).getTotalLength() *
					((line as SVGPathElement).getScreenCTM()?.a ?? 0) *
					(25.4 / 96)
			)
		);
	expect(Math.min(...levels.map((length) => Math.abs(length - 270)))).toBeLessThan(0.005);
});

test('an address that does not exist says so and names the nearest lesson', async ({ page }) => {
	const answer = await page.goto('/lessons/40-back-level');
	expect(answer?.status()).toBe(404);
	await expect(page.getByText('did you mean "40-back-levels"?')).toBeVisible();
});

test('the first lesson is done by a beginner who follows its text', async ({ page }) => {
	const desk = new Desk(page);
	await page.goto('/');
	await page.getByRole('link', { name: 'Begin with: The sheet' }).click();
	await alive(page);
	await desk.click([0, 100]);
	await desk.button('Check').click();
	await desk.expectRight();
	await expect.poll(() => desk.current()).toBe('levelA');
	await desk.click([125, 100]);
	await desk.button('Check').click();
	await desk.expectRight();
	await expect.poll(() => desk.current()).toBe('B');
	await desk.field.fill('from O across 10+2.5');
	await page.keyboard.press('Enter');
	await desk.expectRight();
	await expect.poll(() => desk.current()).toBe('Q');
	await desk.click([125, 100]);
	await desk.button('Check').click();
	await desk.expectRight();
	await page.getByRole('link', { name: /^Next lesson: Lines and curves/ }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'Lines and curves' })).toBeVisible();
});
