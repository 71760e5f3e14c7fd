import { expect, test } from '@playwright/test';
import { alive, faults, heldUp, open } from './support/page.ts';

const PAGES = [
	'/',
	'/lessons/41-back-neck-and-shoulder',
	'/lessons/21-bust',
	'/practice',
	'/patterns',
	'/patterns/course-dress',
	'/measurements',
	'/drafts/back-block/print',
	'/drafts/back-block/paper',
	'/es/lessons/90-nowhere'
];

/** What axe has to say of a page's head, its main part and its headings. */
const FRAME_RULES = [
	'bypass',
	'heading-order',
	'page-has-heading-one',
	'empty-heading',
	'landmark-one-main',
	'landmark-unique',
	'skip-link'
];

for (const path of PAGES)
	test(`${path} has a way past its head, one main part, and headings in order`, async ({ page }) => {
		await open(page, path);
		expect(await faults(page, (axe) => axe.withRules(FRAME_RULES))).toEqual([]);
		await page.keyboard.press('Tab');
		const skip = page.locator('a[href="#content"]');
		await expect(skip).toBeFocused();
		await expect(skip).toBeInViewport();
		await page.keyboard.press('Enter');
		await page.keyboard.press('Tab');
		const within = await page.evaluate(() => document.activeElement?.closest('#content') !== null);
		expect(within, 'the next stop is in the content').toBe(true);
	});

for (const path of PAGES)
	test(`${path} is reached by the Tab key, all of it`, async ({ page }) => {
		await open(page, path);
		/** Gives each control that is seen a number; of radio buttons of one name the keyboard stops at one. */
		const wanted = await page.evaluate(() => {
			const names = new Set<string>();
			const all = document.querySelectorAll<HTMLElement>(
				'a[href], button:enabled, input:enabled, select:enabled, summary, [tabindex="0"]'
			);
			return [...all]
				.filter((each) => {
					if (!each.checkVisibility({ visibilityProperty: true })) return false;
					if (!(each instanceof HTMLInputElement) || each.type !== 'radio') return true;
					const isNew = !names.has(each.name);
					names.add(each.name);
					return isNew;
				})
				.map((each, i) => {
					each.dataset['stop'] = String(i);
					return each.outerHTML.slice(0, 120);
				});
		});
		expect(wanted.length).toBeGreaterThan(4);
		const reached = new Set<string>();
		for (let i = 0; i < wanted.length + 20; i++) {
			await page.keyboard.press('Tab');
			reached.add(
				await page.evaluate(() => {
					const at = document.activeElement;
					const name = at instanceof HTMLInputElement && at.type === 'radio' ? at.name : undefined;
					const first = name === undefined ? at : document.querySelector(`input[name="${name}"][data-stop]`);
					return first?.getAttribute('data-stop') ?? '';
				})
			);
		}
		expect(wanted.filter((_, i) => !reached.has(String(i)))).toEqual([]);
	});

/** A lesson of each kind beside the pages: the sheet and its text, measuring, a finished draft, a garment. */
const NARROW = [
	...PAGES,
	'/lessons/40-back-levels',
	'/lessons/56-front-finished',
	'/lessons/60-the-course-dress'
].flatMap((path) => (path.startsWith('/es') ? [path] : [path, `/es${path === '/' ? '' : path}`]));

test('with letters twice as large nothing leaves a narrow page', async ({ page }) => {
	test.setTimeout(180_000);
	await page.setViewportSize({ width: 360, height: 740 });
	const browser = await page.context().newCDPSession(page);
	await browser.send('Page.enable');
	await browser.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
	for (const path of NARROW) {
		await open(page, path);
		const size = await page.evaluate(() => parseFloat(getComputedStyle(document.documentElement).fontSize));
		expect(size).toBeGreaterThanOrEqual(32);
		const over = await page.evaluate(() => {
			const { scrollWidth, clientWidth } = document.documentElement;
			return scrollWidth - clientWidth;
		});
		expect(over, path).toBe(0);
	}
});

test('there is one unit: measurements follow it, are typed in it, and stay what they were', async ({
	page
}) => {
	await open(page, '/measurements');
	await page.getByRole('button', { name: 'Add your own' }).click();
	const bust = page.getByRole('textbox', { name: 'Bust girth' });
	const waist = page.getByRole('textbox', { name: 'Waist girth' });
	await bust.fill('96.3');
	await bust.press('Enter');
	const unit = page.getByRole('combobox').filter({ has: page.locator('option[value="in"]') });
	await expect(unit).toHaveCount(1);
	await unit.selectOption('in');
	await expect(bust).toHaveValue('37 15/16');
	await waist.fill('30');
	await waist.press('Enter');
	await unit.selectOption('cm');
	await expect(bust).toHaveValue('96.3');
	await expect(waist).toHaveValue('76.2');
	await page.reload();
	await expect(bust).toHaveValue('96.3');
	await open(page, '/lessons/21-bust');
	await expect(page.getByRole('textbox', { name: /bust girth/i })).toHaveValue('96.3');
	await unit.selectOption('in');
	await expect(page.getByRole('textbox', { name: /bust girth/i })).toHaveValue('37 15/16');
});

test('a server that does not answer is told of, nothing is lost, and the page comes when it answers', async ({
	page,
	context
}) => {
	await open(page, '/lessons/21-bust');
	const told = page.getByRole('alert').filter({ hasText: 'does not answer' });
	await expect(told).toBeHidden();
	await context.setOffline(true);
	await expect(told).toBeVisible();
	await page.getByRole('link', { name: 'Practice' }).click();
	await expect(page.getByRole('heading', { name: 'Something went wrong here' })).toBeVisible();
	await expect(told).toBeVisible();
	await context.setOffline(false);
	await expect(told).toBeHidden();
	await page.getByRole('link', { name: 'Try again' }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'Practice' })).toBeVisible();
	await expect(page.getByRole('main')).not.toHaveCSS('max-width', 'none');
});

test('what is chosen, typed and pressed before a page is alive is done once it is, and is not sent anywhere', async ({
	page
}) => {
	const arrive = await heldUp(page);
	await page.goto('/lessons/21-bust', { waitUntil: 'commit' });
	const field = page.locator('.text form input');
	const [body, unit] = [page.locator('header select').first(), page.locator('header select').last()];
	await body.selectOption({ label: 'Wren (invented)' });
	await unit.selectOption('in');
	await field.fill('38');
	await field.press('Enter');
	arrive();
	await alive(page);
	await expect(page.getByText('Kept: 38″, in My measurements')).toBeVisible();
	await expect(field).toHaveValue('38');
	await expect(body.locator('option:checked')).toHaveText('Wren (invented)');
	expect(new URL(page.url()).search).toBe('');
});

test('a page whose script is lost on the way begins by itself when the server answers', async ({ page }) => {
	let cut = 0;
	await page.route('**/entry/start.*.js', (route) => (cut++ === 0 ? route.abort() : route.continue()));
	await page.goto('/lessons/21-bust');
	await alive(page);
	expect(cut).toBeGreaterThan(1);
});

for (const [path, words, works] of [
	['/patterns/course-dress', 'Without JavaScript you can read', '8 pieces for Heron'],
	['/es/patterns/course-dress', 'Sin JavaScript puedes leer', '8 piezas para Heron']
] as const)
	test(`${path} says what works without scripts, and it does`, async ({ browser }) => {
		const context = await browser.newContext({ javaScriptEnabled: false });
		const page = await context.newPage();
		await page.goto(path);
		const told = page.locator('.band').first();
		await expect(told).toBeVisible();
		await expect(told).toContainText(words);
		await expect(page.getByText(works)).toBeVisible();
		await context.close();
	});
