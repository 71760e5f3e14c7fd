import { expect, test } from '@playwright/test';
import { Desk } from './support/desk.ts';
import { HERON_BACK, type Answer } from './support/heron.ts';
import { open } from './support/page.ts';

const answerOf = (lesson: string, step: string): Answer => {
	const answer = HERON_BACK[lesson]?.[step];
	if (!answer) throw new Error(`no answer for ${step} of ${lesson}`);
	return answer;
};

test('half for a quarter is recognised, told, and put right', async ({ page }) => {
	const desk = new Desk(page);
	await desk.open('42-back-armhole');
	await page.getByRole('button', { name: /^Draft this step: U, underarm/ }).click();
	await desk.button('Draft the earlier steps for me').click();
	await desk.field.fill('from A across 96/2+2');
	await desk.field.press('Enter');
	await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
	// Half of 96 and a quarter of 8 are 50; the rule gives a quarter of both, 26.
	await expect(desk.verdict).toContainText('24 cm too far out');
	await expect(page.getByTestId('likely')).toContainText('You took half of the bust; the rule is a quarter');
	await desk.field.fill('from A across 96/4+2');
	await desk.field.press('Enter');
	await desk.expectRight();
	await expect(page.getByTestId('likely')).toHaveCount(0);
});

test('an early slip is followed through: one mistake, and what comes of it costs nothing', async ({
	page
}) => {
	test.setTimeout(60_000);
	const desk = new Desk(page);
	const levels = '40-back-levels';
	await desk.open(levels);
	await desk.byKeyboard(answerOf(levels, 'A'));
	await desk.expectRight();
	// The waist is marked from A, where it should be marked from O: 42.5 below 22.2.
	await desk.byKeyboard({ point: [0, 647], sum: '42.5', from: 'A', go: 'down' });
	await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
	await expect(page.getByTestId('likely')).toContainText('from A');
	await desk.button('Go on with it as it is').click();
	await desk.button(/^Next: /).click();
	await expect.poll(() => desk.current()).toBe('H');
	await desk.byKeyboard({ point: [0, 852], sum: '20.5', from: 'W', go: 'down' });
	await desk.expectRight();
	await expect(desk.verdict).toContainText('right from your own W');
	await desk.byKeyboard(answerOf(levels, 'armholeLevel'));
	await expect(page.locator('#step-armholeLevel .state')).toHaveText('right');
	await desk.byKeyboard(answerOf(levels, 'waistLevel'));
	await expect(page.locator('#step-waistLevel .state')).toHaveText('right');
	await expect(desk.verdict).toContainText('right from your own W');
	await page.goto('/lessons/44-back-finished');
	await expect(page.getByTestId('tally')).toContainText('1 mistake, 2 consequences');
});

test('a lesson of which a body needs no step says so, and leads on', async ({ page }) => {
	const desk = new Desk(page);
	await open(page, '/lessons/54-front-dart');
	await page.locator('.choices select').first().selectOption('siskin');
	await expect(page.getByText('This step is not needed for Siskin.')).toBeVisible();
	await expect(page.locator('#step-E .state')).toHaveText('not needed for this body');
	await expect(desk.button('Draft the earlier steps for me')).toHaveCount(0);
	await page.getByRole('link', { name: /^Next lesson: / }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'Front side and hip' })).toBeVisible();
});
