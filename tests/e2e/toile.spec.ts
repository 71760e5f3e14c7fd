import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { plain, pageTexts } from '../exports/sheet-options.ts';
import { open } from './support/page.ts';

/** Opens a page and saves what its button makes: the file's name, and what pdftotext reads in it. */
const saved = async (page: Page, button: string): Promise<readonly [name: string, words: string]> => {
	const download = page.waitForEvent('download');
	await page.getByRole('button', { name: button, exact: true }).click();
	const file = await download;
	return [file.suggestedFilename(), plain(pageTexts(readFileSync(await file.path())).join(' '))];
};
test('the lesson saves the toile, cut with 2.5 cm everywhere but on the fold', async ({ page }) => {
	await open(page, '/lessons/57-the-toile');
	await expect(page.getByRole('img', { name: /^Front block, piece 1/ })).toBeVisible();
	const [name, words] = await saved(page, 'Save the toile as PDF');
	expect(name).toBe('The body block as a toile for Heron, full size, A4.pdf');
	// The line may lie across the joint of two pages, each of which then shows its own part of it.
	for (const part of ['Allowance 2.5 cm', 'none on the fold']) expect(words).toContain(part);
});

test('the pattern page saves it where its box is ticked, and as it was where it is not', async ({ page }) => {
	await open(page, '/patterns/body-block');
	const box = page.getByRole('checkbox', {
		name: 'As a toile, to try on in cheap cloth: 2.5 cm outside every seam'
	});
	await box.check();
	expect((await saved(page, 'Save the PDF'))[0]).toBe(
		'The body block as a toile for Heron, full size, A4.pdf'
	);
	await box.uncheck();
	expect((await saved(page, 'Save the PDF'))[0]).toBe('The body block for Heron, full size, A4.pdf');
});

test('a garment that is not cut so has no such box', async ({ page }) => {
	await open(page, '/patterns/circle-skirt');
	await expect(page.getByRole('button', { name: 'Save the PDF' })).toBeVisible();
	await expect(page.getByRole('checkbox', { name: /toile/ })).toHaveCount(0);
});
