import { expect, test } from '@playwright/test';
import { expectSpanish } from './support/only-spanish.ts';
import { open } from './support/page.ts';

test.use({ locale: 'es-ES' });

for (const path of ['/lessons/10-the-sheet', '/lessons/21-bust', '/lessons/44-back-finished'])
	test(`nothing is left in English on /es${path}`, async ({ page }) => {
		await open(page, `/es${path}`);
		await page.waitForLoadState('networkidle');
		await expectSpanish(page);
	});

test('the language follows the browser, and then what was chosen', async ({ page }) => {
	await page.goto('/lessons/10-the-sheet');
	await expect(page).toHaveURL(/\/es\/lessons\/10-the-sheet$/);
	await page.getByRole('link', { name: 'English' }).click();
	await expect(page).toHaveURL(/:\d+\/lessons\/10-the-sheet$/);
	await expect(page.locator('html')).toHaveAttribute('lang', 'en');
	await page.goto('/practice');
	await expect(page).toHaveURL(/:\d+\/practice$/);
	await page.getByRole('link', { name: 'Español' }).click();
	await expect(page).toHaveURL(/\/es\/practice$/);
	await page.goto('/measurements');
	await expect(page).toHaveURL(/\/es\/measurements$/);
});

test('each page names itself in both languages to who searches', async ({ page }) => {
	await page.goto('/es/lessons/40-back-levels');
	const alternates = await page
		.locator('head link[rel=alternate][hreflang]')
		.evaluateAll((links) =>
			links.map((link) => [
				link.getAttribute('hreflang'),
				new URL(link.getAttribute('href') ?? '', location.href).pathname
			])
		);
	expect(alternates).toEqual([
		['en', '/lessons/40-back-levels'],
		['es', '/es/lessons/40-back-levels'],
		['x-default', '/lessons/40-back-levels']
	]);
});
