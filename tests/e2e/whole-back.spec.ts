import { expect, test } from '@playwright/test';
import { Desk } from './support/desk.ts';
import { HERON_BACK } from './support/heron.ts';

test('the whole back is drafted with the mouse, and the comparison finds every step right', async ({
	page
}) => {
	test.setTimeout(120_000);
	const desk = new Desk(page);
	for (const [lesson, steps] of Object.entries(HERON_BACK)) {
		await desk.open(lesson);
		for (const [name, answer] of Object.entries(steps)) {
			await expect.poll(() => desk.current()).toBe(name);
			await desk.byPointer(answer);
			await desk.expectRight();
		}
		await expect(page.getByRole('link', { name: /^Next lesson/ })).toBeVisible();
	}
	await page.getByRole('link', { name: /^Next lesson: The finished back/ }).click();
	await expect(page.getByText('Every step is right.')).toBeVisible();
	await page.getByText('All 30 steps, one by one').click();
	await expect(page.getByRole('row')).toHaveCount(31);
	await expect(page.getByRole('row').filter({ hasText: 'right' })).toHaveCount(30);
});

test('the whole back is drafted with the keyboard alone', async ({ page }) => {
	test.setTimeout(180_000);
	const desk = new Desk(page);
	for (const [lesson, steps] of Object.entries(HERON_BACK)) {
		await desk.open(lesson);
		for (const [name, answer] of Object.entries(steps)) {
			await expect.poll(() => desk.current()).toBe(name);
			if ('handles' in answer) {
				// The handles are moved by the arrow keys on the sheet: tens, ones and tenths of a millimetre.
				for (const [i, [across, down]] of answer.handles.entries()) {
					const handle = page.getByRole('group', { name: 'Handle to move' }).getByRole('button').nth(i);
					await desk.tabTo(handle);
					await page.keyboard.press('Enter');
					await desk.tabTo(desk.sheet);
					await desk.nudgeTo(i, [across, down]);
				}
				await page.keyboard.press('Enter');
			} else await desk.byKeyboard(answer);
			await desk.expectRight();
		}
	}
});
