import { expect, test } from '@playwright/test';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { stepNamed } from '#drafting/method.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { Desk } from './support/desk.ts';
import { finishedSteps } from './support/finished.ts';
import { HERON_BACK } from './support/heron.ts';
import { heldUp } from './support/page.ts';
import { keepAllBut, lessonSteps } from './support/slips.ts';
import { parts, shifts, watchShifts, WINDOWS } from './support/still.ts';
import { typedFor } from './support/worked.ts';
import { actionsOn, countActions } from './support/actions.ts';

const METHOD = backBlock();

const LEVELS = '40-back-levels';

for (const viewport of WINDOWS)
	test(`nothing moves on Check or on help at ${String(viewport.width)} x ${String(viewport.height)}`, async ({
		page
	}) => {
		await page.setViewportSize(viewport);
		await watchShifts(page);
		const desk = new Desk(page);
		await desk.open(LEVELS);
		await desk.staying();
		await desk.click([30, 300]);
		const [before, still] = [await parts(page), await shifts(page)];
		await desk.button('Check').click();
		await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
		await desk.button('What is the rule?').click();
		await desk.button('Show me the number').click();
		await expect(desk.verdict).toContainText('22.2 cm');
		expect(await parts(page)).toEqual(before);
		expect((await shifts(page)) - still).toBeLessThan(0.0005);
		// Put right, checked, and opened again: the desk is where it was.
		await desk.click([0, 222]);
		await desk.button('Check').click();
		await desk.expectRight();
		await desk.button('Change it').click();
		expect(await parts(page)).toEqual(before);
	});

for (const viewport of WINDOWS)
	test(`mark and place are in view after a verdict at ${String(viewport.width)} x ${String(viewport.height)}`, async ({
		page
	}) => {
		await page.setViewportSize(viewport);
		const desk = new Desk(page);
		await desk.open(LEVELS);
		const box = await desk.sheet.boundingBox();
		if (!box) throw new Error('there is no sheet');
		for (const said of ['from O down 38.4*2', 'from O across 300', 'from O up 12', 'from O down 150']) {
			await desk.field.fill(said);
			await page.keyboard.press('Enter');
			await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
			for (const mark of ['.pencil.wrong', 'circle.target']) {
				const seen = await desk.sheet.locator(mark).first().boundingBox();
				const [x, y] = [(seen?.x ?? 0) + (seen?.width ?? 0) / 2, (seen?.y ?? 0) + (seen?.height ?? 0) / 2];
				expect(x, said).toBeGreaterThan(box.x + 20);
				expect(x, said).toBeLessThan(box.x + box.width);
				expect(y, said).toBeGreaterThan(box.y + 20);
				expect(y, said).toBeLessThan(box.y + box.height);
			}
		}
		// A mark within the draft leaves the view as it stands.
		await desk.open('41-back-neck-and-shoulder');
		const view = () => desk.sheet.locator('svg[data-scale]').getAttribute('data-scale');
		const whole = await view();
		await desk.field.fill('from O across 12');
		await page.keyboard.press('Enter');
		await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
		expect(await view()).toBe(whole);
	});

test('an outline that closes is shown large, filled and opened at its fold, until something is done', async ({
	page
}) => {
	await page.goto('/');
	const { hem: _, ...steps } = finishedSteps(METHOD);
	await page.evaluate(
		(kept) => {
			localStorage.setItem('square-across.work.back-block.heron', kept);
		},
		JSON.stringify({ version: 1, method: 'back-block', steps })
	);
	const desk = new Desk(page);
	await desk.open('43-back-side-and-hip');
	const whole = page.getByTestId('whole');
	await expect(whole).toHaveCount(0);
	await desk.field.fill('H to J');
	await page.keyboard.press('Enter');
	await desk.expectRight();
	await expect(whole.getByRole('status')).toHaveText(
		/The back block: the outline is closed. Here you see both halves, opened at the centre line./
	);
	await expect(whole.locator('.cloth')).toHaveCount(2);
	await page.keyboard.press('Escape');
	await expect(whole).toHaveCount(0);
	await expect(desk.sheet.locator('path.closed'), 'the cloth stays under the ink').toHaveCount(1);
});

test('the points on the sheet are listed with their places, and the distance between any two is told', async ({
	page
}) => {
	await page.goto('/');
	const { U: _, armhole: __, ...steps } = finishedSteps(METHOD);
	await page.evaluate(
		(kept) => {
			localStorage.setItem('square-across.work.back-block.heron', kept);
		},
		JSON.stringify({ version: 1, method: 'back-block', steps })
	);
	const desk = new Desk(page);
	await desk.open('42-back-armhole');
	await expect.poll(() => desk.current()).toBe('U');
	const before = await parts(page);
	await desk.tabTo(page.locator('.dock summary'));
	await page.keyboard.press('Enter');
	await desk.tabTo(page.getByRole('button', { name: 'Points and distances' }));
	await page.keyboard.press('Enter');
	const list = page.getByRole('region', { name: 'Points and distances' });
	await expect(list).toBeFocused();
	expect(await parts(page)).toEqual(before);
	const row = (name: string) =>
		list.getByRole('row').filter({ has: page.getByRole('rowheader', { name, exact: true }) });
	await expect(row('A, armhole level').getByRole('cell')).toHaveText(['0 cm', '22.2 cm']);
	await expect(row('The shoulder').getByRole('cell')).toHaveText(['12.68 cm']);
	await expect(row('U, underarm'), 'what is to come is not told').toHaveCount(0);
	await list.getByRole('combobox').first().selectOption('A');
	await list.getByRole('combobox').last().selectOption('Q');
	await expect(list.getByRole('status')).toHaveText('Q: 19.2 cm from A, straight across');
	await page.keyboard.press('Escape');
	await expect(list).toHaveCount(0);
	await expect(page.locator('.dock summary')).toBeFocused();
});

for (const [by, goal] of [
	['keyboard', 1.5],
	['mouse', 2]
] as const)
	test(`the back is drafted with few actions a step by ${by}`, async ({ page }) => {
		test.setTimeout(120_000);
		await countActions(page);
		const desk = new Desk(page);
		const [heron] = DEMO_BODIES;
		const draft = heron && evaluate(METHOD, heron.body);
		if (draft?.kind !== 'drafted') throw new Error('the back is not drafted');
		let steps = 0;
		for (const [lesson, answers] of Object.entries(HERON_BACK)) {
			await desk.open(lesson);
			for (const [name, answer] of Object.entries(answers)) {
				await expect.poll(() => desk.current()).toBe(name);
				steps += 1;
				const typed = typedFor(stepNamed(METHOD, name), draft.draft);
				if (by === 'mouse') await desk.byPointer(answer);
				else if (!('handles' in answer)) await desk.byKeyboard(answer);
				else if (typed && 'offsets' in typed) await desk.byEnter(typed.offsets);
				await desk.expectRight();
			}
		}
		const actions = await actionsOn(page);
		expect(actions / steps, `${String(actions)} actions for ${String(steps)} steps`).toBeLessThan(goal);
	});

test('a handle that is chosen before an entry can be read is taken up once it can, and nothing is checked', async ({
	page
}) => {
	const hip = lessonSteps()
		.flat()
		.find(({ step }) => step === 'hip');
	if (!hip || !('offsets' in hip.typed)) throw new Error('no lesson drafts the hip curve');
	const [[across, down] = [0, 0]] = hip.typed.offsets;
	const desk = new Desk(page);
	await page.goto('/third-party.txt');
	await keepAllBut(page, hip);
	await desk.open(hip.lesson);
	const arrive = await heldUp(page);
	const handles = page.getByRole('group', { name: desk.words.handles }).getByRole('button');
	await handles.nth(0).click();
	await desk.field.fill(desk.words.saidPlace({ across: desk.written(across), down: desk.written(down) }));
	await handles.nth(1).click();
	await handles.nth(1).click();
	await expect(handles.nth(0)).toHaveAttribute('aria-pressed', 'true');
	arrive();
	await expect(handles.nth(1)).toHaveAttribute('aria-pressed', 'true');
	await expect(desk.verdict).toHaveAttribute('data-answer', 'unchecked');
	await expect(desk.field).toHaveValue('');
});

test('what is typed before it can be read is of its own step and unit, and is let go where another step is taken up', async ({
	page
}) => {
	const desk = new Desk(page);
	await desk.open('10-the-sheet');
	let arrive = await heldUp(page);
	await desk.field.fill('from O down 10');
	await desk.field.press('Enter');
	const unit = page.getByRole('combobox').filter({ has: page.locator('option[value="in"]') });
	await unit.selectOption('in');
	arrive();
	await desk.expectRight();
	await unit.selectOption('cm');

	await page.unrouteAll({ behavior: 'ignoreErrors' });
	await page.evaluate(() => {
		localStorage.clear();
	});
	await desk.open('10-the-sheet');
	arrive = await heldUp(page);
	await desk.field.fill('from O down 10');
	await desk.field.press('Enter');
	await page.getByRole('button', { name: /^Draft this step: B,/ }).click();
	const read = page.waitForResponse((response) => response.url().endsWith('.js'));
	arrive();
	await read;
	await page.getByRole('button', { name: /^Draft this step: A,/ }).click();
	await desk.field.fill('from O down 10');
	await desk.field.press('Enter');
	await desk.expectRight();
	await expect(page.locator('.step[data-state=right]')).toHaveCount(1);
	await expect(page.locator('.step:is([data-state=placed], [data-state=wrong])')).toHaveCount(0);
});

test('help that is on its way is not opened further by who presses again', async ({ page }) => {
	const desk = new Desk(page);
	await desk.open('10-the-sheet');
	const arrive = await heldUp(page);
	const asks = page.locator('.asks button');
	for (let i = 0; i < 3; i++) await asks.click();
	arrive();
	await expect(page.getByRole('list', { name: desk.words.help }).getByRole('listitem')).toHaveCount(1);
	await expect(asks).toHaveText(desk.words.askRule);
});

test('whoever wants to go on with what is wrong does not wait for the mistake that may have led there, which is told when it comes', async ({
	page
}) => {
	const desk = new Desk(page);
	await desk.open('10-the-sheet');
	const arrive = await heldUp(page);
	await desk.click([100, 0]);
	await desk.button(desk.words.check).click();
	await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
	await expect(desk.button(desk.words.goOn)).toBeVisible();
	// It is told all the same once it can be.
	await expect(page.getByTestId('likely')).toHaveCount(0);
	arrive();
	await expect(page.getByTestId('likely')).toContainText('across');
	await desk.button(desk.words.goOn).click();
	await expect(page.locator('#step-A')).toHaveAttribute('data-state', 'kept');
});

test('what is opened while there is no connection comes once it is back, as it is meant to look', async ({
	page,
	context
}) => {
	const desk = new Desk(page);
	await desk.open('10-the-sheet');
	await context.setOffline(true);
	await page.locator('.dock summary').click();
	const told = page.getByRole('alert').filter({ hasText: 'does not answer' });
	await expect(told).toBeVisible();
	await context.setOffline(false);
	const goesOn = page.getByLabel(desk.words.goesOn);
	await expect(goesOn).toBeVisible();
	await expect(told).toBeHidden();
	await expect(page.locator('.dock details > :last-child')).toHaveCSS('position', 'absolute');
});
