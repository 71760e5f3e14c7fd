import { expect, test, type Page } from '@playwright/test';
import { contrast } from '../support/contrast.ts';
import { PAINTED } from './support/painted.ts';
import { faults, open } from './support/page.ts';

/** Where every kind of ink stands: a sheet to draft on, figures, pieces, the drawing as worn, the tape, practice. */
const PAGES = [
	'/',
	'/lessons/41-back-neck-and-shoulder',
	'/lessons/21-bust',
	'/patterns/course-dress',
	'/measurements',
	'/practice'
];
const MODES = [
	{ name: 'dark', colorScheme: 'dark', contrast: 'no-preference', words: 4.5, lines: 3 },
	{ name: 'light, more contrast', colorScheme: 'light', contrast: 'more', words: 7, lines: 7 },
	{ name: 'dark, more contrast', colorScheme: 'dark', contrast: 'more', words: 7, lines: 7 }
] as const;

/** What of the page's drawings cannot be seen, and how little it stands out. */
const unseen = async (page: Page, words: number, lines: number): Promise<readonly string[]> => {
	const painted = await page.evaluate(PAINTED);
	expect(painted.length).toBeGreaterThan(0);
	return painted
		.map((each) => ({ ...each, is: contrast(each.ink, each.ground) }))
		.filter(({ word, is }) => is < (word ? words : lines))
		.map(({ what, ink, ground, is }) => `${what}: ${ink} on ${ground} is ${is.toFixed(2)}`);
};

for (const { name, words, lines, ...media } of MODES)
	test(`everything can be seen: ${name}`, async ({ page }) => {
		await page.emulateMedia(media);
		for (const path of PAGES) {
			await open(page, path);
			expect(await faults(page, (axe) => axe.withRules(['color-contrast'])), path).toEqual([]);
			if (!['/', '/measurements', '/practice'].includes(path))
				expect(await unseen(page, words, lines), path).toEqual([]);
		}
	});

test('where the system has its own colours, drawings are made in them', async ({ page }) => {
	await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
	await open(page, '/patterns/course-dress');
	expect(await unseen(page, 4.5, 3)).toEqual([]);
});

test('what is printed is light, whatever the screen is', async ({ page }) => {
	await page.emulateMedia({ media: 'print', colorScheme: 'dark', contrast: 'more' });
	await open(page, '/patterns/course-dress');
	const colours = await page.evaluate(() => {
		const seen = getComputedStyle(document.documentElement);
		return [seen.getPropertyValue('--ink'), seen.getPropertyValue('--sheet'), seen.colorScheme];
	});
	expect(colours).toEqual(['#22303c', '#fffefb', 'light']);
});
