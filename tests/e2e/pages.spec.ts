import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { Desk } from './support/desk.ts';

const PAGES = [
	'/practice?seed=7',
	'/',
	'/lessons/10-the-sheet',
	'/lessons/21-bust',
	'/lessons/42-back-armhole',
	'/lessons/44-back-finished',
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
