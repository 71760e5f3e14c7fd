import { expect, type Page } from '@playwright/test';

/** Words that hardly an English sentence is without, and that no Spanish one has. */
export const ENGLISH =
	/(?<![\p{L}-])(the|of|and|is|are|was|you|your|with|from|it|its|to|at|on|in|for|not|this|that|where|right|wrong|step|line|point|check|next|save|print|back|front)(?![\p{L}-])/giu;

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

/** The page is in Spanish, and nothing that it says is English. */
export const expectSpanish = async (page: Page): Promise<void> => {
	await expect(page.locator('html')).toHaveAttribute('lang', 'es');
	expect((await said(page)).filter((text) => text.match(ENGLISH))).toEqual([]);
};
