import { expect, test, type Page } from '@playwright/test';
import { Desk } from './support/desk.ts';
import { open } from './support/page.ts';

const LEVELS = '40-back-levels';
const WORK = 'square-across.work.back-block.heron';

/** What is kept in this browser before the lesson is opened. */
const keep = async (page: Page, items: Readonly<Record<string, unknown>>): Promise<void> => {
	await page.goto('/favicon.svg');
	await page.evaluate((all) => {
		for (const [key, value] of Object.entries(all)) localStorage.setItem(key, JSON.stringify(value));
	}, items);
};
const stateOf = (page: Page, step: string) => page.locator(`#step-${step} .state`);

test('two tabs of one browser draft together, and neither loses anything', async ({ context }) => {
	const [one, two] = [new Desk(await context.newPage()), new Desk(await context.newPage())];
	for (const desk of [one, two]) await desk.open(LEVELS);
	await one.byKeyboard({ point: [0, 222], sum: '22.2', go: 'down' });
	await one.expectRight();
	await expect(stateOf(two.page, 'A'), 'the other tab sees it without a reload').toHaveText('right');
	await two.page.locator('#step-W').getByRole('button', { name: 'Draft this step' }).click();
	await two.byKeyboard({ point: [0, 425], sum: '42.5', go: 'down' });
	await two.expectRight();
	await expect(stateOf(one.page, 'W')).toHaveText('right');
	await one.button('Undo').click();
	await expect(stateOf(two.page, 'A'), 'undo takes back what its own tab did').toHaveText('to do');
	await expect(stateOf(one.page, 'W')).toHaveText('right');
	await one.page.reload();
	await expect(stateOf(one.page, 'W')).toHaveText('right');
	const unit = (page: Page) => page.locator('.choices select').last();
	await unit(one.page).selectOption('in');
	await expect(unit(two.page)).toHaveValue('in');
});

test('what one tab measures is there in the other, body by body', async ({ context }) => {
	const [one, two] = [await context.newPage(), await context.newPage()];
	for (const page of [one, two]) {
		await open(page, '/measurements');
	}
	for (const page of [one, two]) await page.getByRole('button', { name: 'Add your own' }).click();
	await one.reload();
	const kept = await one.evaluate(() => localStorage.getItem('square-across.bodies') ?? '');
	expect((JSON.parse(kept) as { bodies: unknown[] }).bodies).toHaveLength(2);
});

test('with the browser’s store forbidden, the work goes on from lesson to lesson, and the page says so', async ({
	page
}) => {
	await page.addInitScript(() => {
		Object.defineProperty(window, 'localStorage', {
			get: () => {
				throw new DOMException('forbidden', 'SecurityError');
			}
		});
	});
	const desk = new Desk(page);
	await desk.open(LEVELS);
	await desk.byKeyboard({ point: [0, 222], sum: '22.2', go: 'down' });
	await desk.expectRight();
	await expect(page.getByRole('alert')).toContainText('does not keep your work');
	await page.getByRole('link', { name: /^Neck and shoulder/ }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'Neck and shoulder' })).toBeVisible();
	await page.goBack();
	await expect(stateOf(page, 'A')).toHaveText('right');
});

test('a step that cannot be read back is set aside by name, and every other step is there', async ({
	page
}) => {
	const point = (down: number) => ({ placement: { kind: 'point', at: [0, down] }, checked: true });
	await keep(page, {
		[WORK]: {
			version: 1,
			method: 'back-block',
			body: 'heron',
			steps: { A: point(6300), W: point(425), H: point(630) }
		}
	});
	const desk = new Desk(page);
	await desk.open(LEVELS);
	const notice = page.getByRole('alert');
	await expect(notice).toContainText('Your draft of The back block for Heron: A could not be read back');
	await expect(notice).toContainText('Everything else of it is here.');
	await expect(stateOf(page, 'A')).toHaveText('to do');
	await expect(stateOf(page, 'W')).toHaveText('right');
	await expect(stateOf(page, 'H')).toHaveText('right');
	await page.emulateMedia({ media: 'print' });
	await expect(notice, 'it is not printed').toBeHidden();
});

test('own bodies of one id, and one that cannot be read, kill no page', async ({ page }) => {
	const body = (id: string, name: string, bust: unknown = 96) => ({ id, file: { name, bust } });
	await keep(page, {
		'square-across.bodies': {
			version: 1,
			bodies: [
				body('heron', 'Ann'),
				body('own-1', 'Bea'),
				body('own-1', 'Cleo'),
				body('own-2', 'Dot', 'wide')
			]
		}
	});
	await open(page, '/measurements');
	await expect(page.getByRole('alert')).toContainText('Your own measurements: Dot could not be read back');
	const choice = page.getByLabel('Drafting for', { exact: true });
	for (const name of ['Ann', 'Bea', 'Cleo']) {
		await choice.selectOption(name);
		await expect(page.getByRole('heading', { level: 2, name })).toBeVisible();
	}
});

test('a full store with damaged work in it keeps that work until the learner removes it', async ({
	page
}) => {
	await keep(page, {});
	await page.evaluate((key) => {
		localStorage.setItem(key, 'damaged');
		// Filled to the last character.
		for (let size = 4_000_000; size >= 1; size = Math.floor(size / 2))
			for (let n = 0; ; n++) {
				try {
					localStorage.setItem(`fill.${String(size)}.${String(n)}`, 'x'.repeat(size));
				} catch {
					break;
				}
			}
	}, WORK);
	const desk = new Desk(page);
	await desk.open(LEVELS);
	const notice = page.getByRole('alert').filter({ hasText: 'could not be read back' });
	await expect(notice).toContainText('it stays where it is');
	await desk.byKeyboard({ point: [0, 222], sum: '22.2', go: 'down' });
	await desk.expectRight();
	await expect(page.getByRole('alert').filter({ hasText: 'does not keep your work' })).toBeVisible();
	const stored = (): Promise<string | null> => page.evaluate((key) => localStorage.getItem(key), WORK);
	expect(await stored()).toBe('damaged');
	await page.evaluate(() => {
		for (const key of Object.keys(localStorage)) if (key.startsWith('fill.')) localStorage.removeItem(key);
	});
	await notice.getByRole('button', { name: 'Remove it' }).click();
	await expect(page.getByRole('alert')).toHaveCount(0);
	expect(await stored()).toContain('"at":[0,222]');
	await page.reload();
	await expect(stateOf(page, 'A')).toHaveText('right');
});
