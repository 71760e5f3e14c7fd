import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { Desk } from './support/desk.ts';
import { finishedSteps, METHODS } from './support/finished.ts';

const PAGES = [
	'/practice?seed=7',
	'/',
	'/lessons/10-the-sheet',
	'/lessons/21-bust',
	'/lessons/42-back-armhole',
	'/lessons/44-back-finished',
	'/lessons/56-front-finished',
	'/measurements',
	'/drafts/back-block/print'
];
const WIDTHS = [1440, 360];

for (const path of PAGES) {
	for (const width of WIDTHS) {
		test(`${path} at ${String(width)} px is free of what axe can find and fits its width`, async ({
			page
		}) => {
			await page.setViewportSize({ width, height: 800 });
			await page.goto(path);
			await page.locator('[data-alive=true]').waitFor({ state: 'attached' });
			const { violations } = await new AxeBuilder({ page })
				.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
				.analyze();
			expect(
				violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)
			).toEqual([]);
			const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
			expect(beyond).toBeLessThanOrEqual(0);
		});
	}
}

test('lessons and figures can be read without JavaScript', async ({ browser }) => {
	const context = await browser.newContext({ javaScriptEnabled: false });
	const page = await context.newPage();
	await page.goto('/lessons/40-back-levels');
	await expect(page.getByText('From O, go down half the back width')).toBeVisible();
	const figure = page.getByRole('img', { name: /^O lies at the top of the centre line/ });
	await expect(figure.locator('text.name')).toHaveText(['O', 'A', 'W', 'H']);
	await expect(page.getByText('The sheet needs JavaScript.')).toBeVisible();
	await context.close();
});

test('the print page draws at true scale: the check square and a known line are measured', async ({
	page
}) => {
	await page.goto('/drafts/back-block/print');
	await page.locator('[data-alive=true]').waitFor({ state: 'attached' });
	await page.emulateMedia({ media: 'print' });
	// CSS counts 96 px to the inch of 25.4 mm; the drawing's own scale on the page is what a printer is given.
	const scale = (line: Element): number =>
		((line as SVGGraphicsElement).getScreenCTM()?.a ?? 0) * (25.4 / 96);
	const square = page.locator('#check-square');
	expect(Number(await square.getAttribute('width')) * (await square.evaluate(scale))).toBeCloseTo(100, 2);
	// A quarter of 102 and of 4 cm ease: the hem is 265 mm, on the last row of pages.
	const hem = page.locator('#line-hem').last();
	const length = await hem.evaluate((line) => (line as SVGPathElement).getTotalLength());
	expect(length * (await hem.evaluate(scale))).toBeCloseTo(265, 2);
});

test('pages that are joined by their own words give the draft at its true size', async ({ page }) => {
	await page.goto('/drafts/back-block/print');
	await page.locator('[data-alive=true]').waitFor();
	const words = 'cut the left and the top white edge off along the grey frame';
	await expect(page.getByText(words)).toHaveCount(2);
	await expect(page.getByText(words).last()).toBeVisible();
	/** The part of the sheet on a page, and its dotted lines. */
	const tile = async (name: string) => {
		const svg = page.getByRole('img', { name: `Page ${name}`, exact: true });
		const [left = NaN, top = NaN] = ((await svg.getAttribute('viewBox')) ?? '').split(' ').map(Number);
		const dotted = async (edge: 'right' | 'bottom'): Promise<number[]> =>
			(
				await svg
					.locator(`[data-edge=${edge}]`)
					.evaluateAll((lines) => lines.map((line) => line.getAttribute('d') ?? ''))
			).map((d) => d.slice(1).split(/[ hv]/).map(Number)[edge === 'right' ? 0 : 1] ?? NaN);
		return { left, top, right: await dotted('right'), bottom: await dotted('bottom') };
	};
	const [a1, a2, b1, c2] = [await tile('A1'), await tile('A2'), await tile('B1'), await tile('C2')];
	// The grey frame of a page is the edge of its part of the sheet: cut there and laid on the line, it fits.
	expect(a1.right).toEqual([a2.left]);
	expect(a1.bottom).toEqual([b1.top]);
	expect(a2.right, 'no page lies to the right').toEqual([]);
	expect([c2.right, c2.bottom]).toEqual([[], []]);
	await expect(
		page.getByRole('img', { name: 'How the pages lie together: A1, A2, B1, B2, C1, C2' })
	).toBeVisible();
});

test('a body that cannot be drafted is told why, in words, wherever its draft would stand', async ({
	page
}) => {
	await page.goto('/favicon.svg');
	const body = { name: 'Mine', bust: 96, waist: 78, hip: 102, neck: 37, backWidth: 38.4, backLength: 20 };
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
		await expect(page.getByRole('alert'), path).toContainText('The back width and the back length disagree');
		await expect(page.getByRole('link', { name: 'Look at the measurements' })).toBeVisible();
	}
});

test('the table of the finished draft leads to the lesson of what is not drafted', async ({ page }) => {
	await page.goto('/lessons/44-back-finished');
	await page.locator('[data-alive=true]').waitFor();
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
			'/lessons/25-back-width'
		]) {
			await page.goto(path);
			await page.locator('[data-alive=true]').waitFor({ state: 'attached' });
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
	await page.getByRole('link', { name: 'Print the front block' }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'The front block at true scale' })).toBeVisible();
});

test('the SVG file that is saved opens in a browser at its true size', async ({ page }) => {
	await page.goto('/drafts/back-block/print');
	await page.locator('[data-alive=true]').waitFor({ state: 'attached' });
	const download = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Save as one SVG file' }).click();
	const path = await (await download).path();
	await page.setContent(readFileSync(path, 'utf8'));
	const width = await page
		.locator('#check-square')
		.evaluate((square) => square.getBoundingClientRect().width);
	expect((width * 25.4) / 96).toBeCloseTo(100, 1);
	const hem = await page.locator('#line-hem').evaluate((line) => (line as SVGPathElement).getTotalLength());
	expect(hem).toBeCloseTo(265, 2);
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
	await page.locator('[data-alive=true]').waitFor();
	await desk.click([0, 100]);
	await desk.button('Check').click();
	await desk.expectRight();
	await desk.button(/^Next: /).click();
	await desk.click([125, 100]);
	await desk.button('Check').click();
	await desk.expectRight();
	await desk.button(/^Next: /).click();
	await page.getByLabel('Direction').selectOption('across');
	await page.getByLabel(/Distance or sum/).fill('10+2.5');
	await page.keyboard.press('Enter');
	await page.keyboard.press('Enter');
	await desk.expectRight();
	await desk.button(/^Next: /).click();
	await desk.click([125, 100]);
	await desk.button('Check').click();
	await desk.expectRight();
	await page.getByRole('link', { name: /^Next lesson: Lines and curves/ }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'Lines and curves' })).toBeVisible();
});
