import { expect, test, type Page } from '@playwright/test';

test.use({ locale: 'es-ES' });

/** Words that hardly an English sentence is without, and that no Spanish one has. */
const ENGLISH =
	/(?<![\p{L}-])(the|of|and|is|are|you|your|with|from|it|its|to|at|on|in|for|not|this|that|right|wrong|step|check|next)(?![\p{L}-])/giu;

/** What a page says, its title and what is read aloud among it, but for what it marks as being in another language. */
const said = (page: Page): Promise<readonly string[]> =>
	page.evaluate(() => {
		const copy = document.body.cloneNode(true) as HTMLElement;
		for (const each of copy.querySelectorAll('[lang=en], script, style')) each.remove();
		const spoken = [...copy.querySelectorAll('[title], [aria-label], [placeholder], [alt]')].flatMap((each) =>
			['title', 'aria-label', 'placeholder', 'alt'].map((name) => each.getAttribute(name) ?? '')
		);
		const walker = document.createTreeWalker(copy, NodeFilter.SHOW_TEXT);
		const texts: string[] = [];
		while (walker.nextNode()) texts.push(walker.currentNode.textContent ?? '');
		return [document.title, ...texts, ...spoken].map((text) => text.trim()).filter(Boolean);
	});

const expectSpanish = async (page: Page): Promise<void> => {
	await expect(page.locator('html')).toHaveAttribute('lang', 'es');
	const english = (await said(page)).filter((text) => text.replace('Square Across', '').match(ENGLISH));
	expect(english).toEqual([]);
};

for (const path of ['/lessons/10-the-sheet', '/lessons/21-bust', '/lessons/44-back-finished'])
	test(`nothing is left in English on /es${path}`, async ({ page }) => {
		await page.goto(`/es${path}`);
		await page.locator('[data-alive=true]').waitFor({ state: 'attached' });
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
