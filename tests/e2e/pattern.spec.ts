import { expect, test, type Locator, type Page } from '@playwright/test';
import { beyond, expectPlain, open } from './support/page.ts';

/** Invented, and like none of the demo bodies. Centimetres, as they are typed. */
const OWN = {
	'Bust girth': '92',
	'Waist girth': '74',
	'Hip girth': '99',
	'Neck-base girth': '36',
	'Shoulder width': '37,5',
	'Back length': '41',
	'Waist to hip': '20',
	'Front length': '43.5',
	'Bust height': '26',
	'Bust span': '18.5'
};

const DRESS = '/patterns/course-dress';
const type = async (field: Locator, text: string): Promise<void> => {
	await field.fill(text);
	await field.press('Enter');
};
const summary = (page: Page): Locator => page.getByTestId('summary');
const field = (page: Page, name: string): Locator => page.getByRole('textbox', { name, exact: true });
const piece = (page: Page, name: string): Locator => page.getByRole('article', { name });

test('from an empty browser and own measurements to the finished dress in one step', async ({ page }) => {
	await open(page, '/');
	await page.getByRole('link', { name: 'Patterns' }).click();
	await page.getByRole('link', { name: 'The course dress' }).click();
	await expect(summary(page)).toHaveText(/8 pieces for Heron; all 13 seams match\./);
	await page.getByRole('button', { name: 'Enter your own' }).click();
	await expect(page.getByRole('heading', { name: 'Some measurements are missing' })).toBeVisible();
	for (const [name, text] of Object.entries(OWN)) await type(field(page, name), text);
	await expect(summary(page)).toHaveText(/8 pieces for My measurements; all 13 seams match\./);
	await expect(page.getByRole('article')).toHaveCount(8);
	// The waist of 74 less 10 is the elastic's finished round.
	await expect(page.getByText('The finished round of the elastic').locator('..')).toContainText('64 cm');
	await page.reload();
	await expect(summary(page)).toHaveText(/8 pieces for My measurements; all 13 seams match\./);
});

test('another skirt length: the pieces, the fabric and the reports follow at once, and it can be taken back', async ({
	page
}) => {
	await open(page, DRESS);
	const skirt = piece(page, '6 Skirt').getByRole('img');
	const side = page.getByRole('row', { name: /^The sides of the two skirts/ });
	await expect(skirt).toHaveAccessibleName(/centre 64 cm on the fold/);
	await expect(side).toContainText('64 cm');
	const cloth = await page.getByTestId('fabric').textContent();
	await type(field(page, 'Skirt length'), '90');
	await expect(skirt).toHaveAccessibleName(/centre 90 cm on the fold/);
	await expect(side).toContainText('90 cm');
	await expect(side).toContainText('matches');
	await expect(page.getByTestId('fabric')).not.toHaveText(cloth ?? '');
	await expect(page.getByRole('status').filter({ hasText: 'Worked again' })).toContainText(
		'all 13 seams match'
	);
	await type(field(page, 'Skirt length'), 'long');
	await expect(page.getByRole('alert')).toContainText(['is not a length']);
	await expect(skirt).toHaveAccessibleName(/centre 90 cm on the fold/);
	await page.getByRole('slider', { name: 'Skirt length, to slide' }).press('ArrowRight');
	await expect(skirt).toHaveAccessibleName(/centre 90\.1 cm on the fold/);
	await page.reload();
	await expect(skirt).toHaveAccessibleName(/centre 90\.1 cm on the fold/);
	await page.getByRole('button', { name: 'Back to the usual design' }).click();
	await expect(skirt).toHaveAccessibleName(/centre 64 cm on the fold/);
});

test('in inches everything is read and written in inches', async ({ page }) => {
	await open(page, DRESS);
	await page.getByLabel('Unit').selectOption('in');
	await type(field(page, 'Skirt length'), '25 1/2');
	await expect(piece(page, '6 Skirt').getByRole('img')).toHaveAccessibleName(/centre 25 1\/2″ on the fold/);
	await expect(page.getByRole('row', { name: /^The sides of the two skirts/ })).toContainText('25 1/2″');
	await expect(page.getByTestId('fabric')).toContainText(/yards? of cloth 55 1\/8″ wide/);
});

test('a copy of an invented body is refused in words where two of its measurements disagree', async ({
	page
}) => {
	await open(page, DRESS);
	await page.getByRole('button', { name: 'Copy Heron and change the copy' }).click();
	await expect(summary(page)).toHaveText(/8 pieces for My Heron/);
	await type(field(page, 'Back length'), '20');
	await expect(page.getByRole('alert').filter({ hasText: 'cannot be drafted yet' })).toContainText(
		/the back length/i
	);
	await expect(page.getByRole('article')).toHaveCount(0);
	await type(field(page, 'Back length'), '42.5');
	await expect(page.getByRole('article')).toHaveCount(8);
});

test('one edge has an allowance of its own, by keyboard, and is seen while its field is at hand', async ({
	page
}) => {
	await open(page, DRESS);
	const front = piece(page, '1 Front bodice');
	await front.getByText('Allowance of each edge').focus();
	await page.keyboard.press('Enter');
	const side = front.getByRole('textbox', { name: 'Side', exact: true });
	await side.focus();
	await expect(front.locator('path.strong')).toHaveCount(1);
	const before = await front.locator('path.cutting').getAttribute('d');
	await page.keyboard.type('2.5');
	await page.keyboard.press('Enter');
	await expect(front).toContainText('2.5 cm');
	await expect(front.locator('path.cutting')).not.toHaveAttribute('d', before ?? '');
	await expect(piece(page, '2 Back bodice')).not.toContainText('2.5 cm');
	await front.getByRole('button', { name: 'Back to the usual allowances' }).click();
	await expect(front.locator('path.cutting')).toHaveAttribute('d', before ?? '');
});

test('a seam that is chosen is shown as it will be sewn', async ({ page }) => {
	await open(page, DRESS);
	const seam = page.getByRole('button', { name: 'Front and back shoulder' });
	await seam.press('Enter');
	await expect(seam).toHaveAttribute('aria-expanded', 'true');
	await expect(page.getByTestId('sewn').getByRole('img').first()).toBeVisible();
	await seam.press('Enter');
	await expect(page.getByTestId('sewn')).toHaveCount(0);
});

for (const path of ['/patterns', '/patterns/course-dress'])
	for (const width of [1440, 360])
		test(`${path} at ${String(width)} px is free of what axe can find and fits its width`, async ({
			page
		}) => {
			await page.setViewportSize({ width, height: 800 });
			await open(page, path);
			expect(await beyond(page)).toBeLessThanOrEqual(0);
			if (path !== '/patterns') {
				if (width === 360) await page.getByText('Change the numbers').click();
				for (const name of ['Ease', 'Cutting'])
					await page.locator('summary').filter({ hasText: name }).first().click();
				await page.getByText('Allowance of each edge').first().click();
				await page.getByRole('button', { name: 'Front and back shoulder' }).click();
			}
			await expectPlain(page);
		});

test('one of a few named values: how much of a circle a skirt is, by the arrow keys', async ({ page }) => {
	await open(page, '/patterns/swift-full-skirt');
	await expect(page).toHaveURL(/\/patterns\/circle-skirt$/);
	const fullness = page.getByRole('group', { name: 'Share of the circle' });
	const hem = piece(page, '1 Front skirt').getByRole('img');
	await expect(fullness.getByRole('radio', { name: 'a half circle' })).toBeChecked();
	const before = await hem.getAttribute('aria-label');
	await fullness.getByRole('radio', { name: 'a half circle' }).press('ArrowRight');
	await expect(fullness.getByRole('radio', { name: 'three quarters of a circle' })).toBeChecked();
	await expect(hem).not.toHaveAttribute('aria-label', before ?? '');
	await page.reload();
	await expect(fullness.getByRole('radio', { name: 'three quarters of a circle' })).toBeChecked();
	await open(page, '/es/patterns/circle-skirt');
	await expect(page.getByRole('radio', { name: 'tres cuartos de círculo' })).toBeChecked();
});
