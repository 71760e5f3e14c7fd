import { expect, test } from '@playwright/test';
import { Desk } from './support/desk.ts';
import { HERON_BACK } from './support/heron.ts';
import { alive, open } from './support/page.ts';

const LEVELS = '40-back-levels';

test('a wrong point is told how far and which way, with the rule, and can be put right', async ({ page }) => {
	const desk = new Desk(page);
	await desk.open(LEVELS);
	await expect(desk.verdict).toContainText('within 2 mm');
	await desk.click([9, 224]);
	await desk.button('Check').click();
	await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
	await expect(desk.verdict).toContainText('9 mm too far out.');
	await expect(desk.verdict, 'a first wrong answer does not tell all').not.toContainText('22.2');
	await expect(desk.sheet.locator('.arrow')).toHaveCount(0);
	await expect(page.locator('.step.active .state')).toHaveText('not right yet');
	await desk.button('What is the rule?').click();
	await expect(desk.verdict).toContainText('half the shoulder width + the armhole drop');
	await desk.button('Show me the number').click();
	await expect(desk.verdict).toContainText('half the shoulder width + 3 = 19.2 + 3 = 22.2 cm', {
		ignoreCase: true
	});
	await desk.click([0, 222]);
	await desk.button('Check').click();
	await desk.expectRight();
	await expect(page.locator('#step-A .state')).toHaveText('right');
	expect(await desk.current(), 'what is right goes on by itself').toBe('W');
	await expect(desk.verdict).toContainText('A is right.');
});

test('help comes in three rungs: where to look, the rule, the number', async ({ page }) => {
	const desk = new Desk(page);
	await desk.open(LEVELS);
	const help = page.getByRole('list', { name: 'Help' });
	await desk.button('Where do I look?').click();
	await expect(help).toHaveText('Start at O and go straight down. It lies about 20 cm from O.');
	await desk.button('What is the rule?').click();
	await expect(help).toContainText('half the shoulder width + the armhole drop');
	await expect(help).not.toContainText('22.2');
	await desk.button('Show me the number').click();
	await expect(help).toContainText('22.2 cm');
});

test('an entry that cannot be read is refused without being counted', async ({ page }) => {
	const desk = new Desk(page);
	await desk.open(LEVELS);
	for (const [said, told] of [
		['from O down 38.4//2', 'Nothing is counted'],
		['down 22.2', 'say from which point'],
		['from O 22.2', 'say which way it goes'],
		['from X down 22.2', 'no point X stands on the sheet yet']
	] as const) {
		await desk.field.fill(said);
		await page.keyboard.press('Enter');
		await expect(desk.verdict).toContainText(told, { ignoreCase: true });
		await expect(desk.verdict).toHaveAttribute('data-answer', 'not-valid');
	}
	await desk.field.fill('from o down 38,4/2 + 30mm');
	await page.keyboard.press('Enter');
	await desk.expectRight();
});

test('nothing is lost on a reload, and undo takes back what was placed', async ({ page }) => {
	const desk = new Desk(page);
	await desk.open(LEVELS);
	await desk.byKeyboard(HERON_BACK[LEVELS]?.['A'] ?? { point: [0, 0] });
	await desk.expectRight();
	await desk.click([30, 300]);
	await page.reload();
	await alive(page);
	await expect.poll(() => desk.current()).toBe('W');
	await expect(page.locator('#step-A .state')).toHaveText('right');
	await expect(page.locator('#step-W .state')).toHaveText('not checked yet');
	await desk.click([0, 425]);
	await desk.button('Undo').click();
	await desk.button('Check').click();
	await expect(desk.verdict).toContainText('30 mm too far out');
	await desk.button('Redo').click();
	await desk.button('Check').click();
	await desk.expectRight();
});

test('damaged work is set aside and named, and the lesson still opens', async ({ page }) => {
	const desk = new Desk(page);
	await desk.open(LEVELS);
	await page.evaluate(() => {
		localStorage.setItem(
			'square-across.work.back-block.heron',
			'{"version":1,"steps":{"A":{"placement":7}}}'
		);
	});
	await page.reload();
	await expect(page.getByRole('alert')).toContainText(
		'Your draft of The back block for Heron could not be read back'
	);
	await expect(page.getByRole('alert')).toContainText('square-across.set-aside.');
	await desk.byKeyboard({ point: [0, 222], sum: '22.2', go: 'down' });
	await desk.expectRight();
	const kept = await page.evaluate(() => {
		const key = Object.keys(localStorage).find((each) => each.includes('set-aside'));
		return key === undefined ? null : localStorage.getItem(key);
	});
	expect(kept).toContain('"placement":7');
});

test('on a phone the sheet and the step are both in reach, and a tap places', async ({ browser }) => {
	const context = await browser.newContext({
		viewport: { width: 360, height: 740 },
		hasTouch: true,
		isMobile: true
	});
	const page = await context.newPage();
	const desk = new Desk(page);
	await desk.open(LEVELS);
	const width = await page.evaluate(() => document.documentElement.scrollWidth);
	expect(width).toBeLessThanOrEqual(360);
	const box = await desk.sheet.boundingBox();
	expect(box?.width).toBeGreaterThan(300);
	expect(box?.height).toBeGreaterThan(180);
	const { x, y } = await desk.screen([0, 215]);
	await page.touchscreen.tap(x, y);
	await desk.button('Nudge down').tap();
	await expect(desk.verdict).toContainText('From O, go down half the shoulder width');
	await desk.field.fill('from O down 38.4/2+3');
	await desk.button('Check').tap();
	await desk.expectRight();
	expect(await page.evaluate(() => scrollY), 'nothing scrolls by itself').toBe(0);
	await expect(desk.verdict, 'the next step’s task stands where the verdict does').toContainText(
		'From O again, go down the back length'
	);
	// Every control of the desk is as large as a finger wants it.
	for (const control of await page.locator('.dock :is(button, summary, input, a):visible').all()) {
		const size = await control.boundingBox();
		expect(size?.height ?? 0, await control.innerText()).toBeGreaterThanOrEqual(44);
	}
	await page.locator('#step-H').scrollIntoViewIfNeeded();
	await page.getByRole('link', { name: 'The sheet' }).tap();
	await expect(desk.sheet).toBeInViewport();
	await context.close();
});

test('a learner enters measurements in inches and drafts for them; a refused body is told why', async ({
	page
}) => {
	const desk = new Desk(page);
	await open(page, '/measurements');
	await desk.button('Add your own').click();
	await page.getByRole('combobox', { name: 'Unit' }).selectOption('in');
	// Each of Heron's numbers to the nearest quarter inch.
	const inches: Readonly<Record<string, string>> = {
		'Bust girth': '37 3/4',
		'Waist girth': '30 3/4',
		'Hip girth': '40 1/4',
		'Neck-base girth': '14.5',
		'Shoulder width': '15⅛',
		'Back length': '16 3/4"',
		'Waist to hip': '8'
	};
	const reports = page.locator('.reports > li');
	const backBlock = reports.filter({ hasText: 'The back block' });
	const bodyBlock = reports.filter({ hasText: 'The body block' });
	await expect(bodyBlock).toContainText(/\d+ still to measure/);
	for (const [name, value] of Object.entries(inches)) {
		await page.getByLabel(name, { exact: true }).fill(value);
		await page.keyboard.press('Tab');
	}
	await expect(backBlock).toContainText('Can be drafted.');
	await expect(bodyBlock).toContainText('Still wanted: ');
	await page.getByLabel('Bust girth', { exact: true }).fill('25');
	await page.keyboard.press('Tab');
	// What holds a draft up is said though its garment still wants measurements, and once.
	const disagreement = reports.filter({ hasText: 'The bust and the shoulder width disagree' });
	await expect(disagreement.getByRole('listitem')).toContainText(['The back block']);
	await expect(page.getByText('The bust and the shoulder width disagree')).toHaveCount(1);
	await page.getByLabel('Hip girth', { exact: true }).fill('forty');
	await page.keyboard.press('Tab');
	await expect(page.getByText('"forty" is not a length')).toBeVisible();
	await page.goto(`/lessons/${LEVELS}`);
	await expect(page.getByRole('alert')).toContainText('cannot be drafted yet');
});

test('a slipped number is asked about where it is entered; a file of measurements is opened, a damaged one is not', async ({
	page
}) => {
	await open(page, '/measurements');
	await page.getByRole('button', { name: 'Add your own' }).click();
	const bust = page.getByLabel('Bust girth', { exact: true });
	await bust.fill('9.6');
	await page.keyboard.press('Tab');
	await expect(
		page.getByText('A bust of 9.6 cm? Nearly everybody’s lies between 45 cm and 190 cm.')
	).toBeVisible();
	await page.getByRole('button', { name: 'Make it 96 cm' }).click();
	await expect(bust).toHaveValue('96');
	await expect(page.getByText('A bust of')).toHaveCount(0);

	const opened = (name: string, text: string): Promise<void> =>
		page
			.getByLabel('Open a file of measurements')
			.setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
	await opened('broken.json', '{"name": "Teal", "bust"');
	await expect(page.getByText('broken.json was not opened: it is not a file of measurements')).toBeVisible();
	await opened('teal.json', '{"name": "Teal", "bust": "wide"}');
	await expect(page.getByText('teal.json was not opened: bust: "wide" is not a length')).toBeVisible();
	await opened(
		'teal.json',
		'{"name": "Teal", "unit": "in", "bust": "37 3/4", "backWidth": "15 1/8", "allowances": {}}'
	);
	await expect(page.getByRole('heading', { level: 2, name: 'Teal' })).toBeVisible();
	await expect(page.getByLabel('Bust girth', { exact: true })).toHaveValue('95.89');
	await expect(page.getByLabel('Shoulder width', { exact: true })).toHaveValue('38.42');
	await opened('teal.json', '{"name": "Teal", "bust": 90}');
	await expect(page.getByRole('heading', { level: 2, name: 'Teal 2' })).toBeVisible();
});
