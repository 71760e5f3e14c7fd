import { expect, test, type Page } from '@playwright/test';
import { Desk } from './support/desk.ts';
import { beginClass, firstLink, PASSPHRASE, schoolOfItsOwn, somebody } from './support/school.ts';
import { alive } from './support/page.ts';

/** A class in which an exam is set, handed in and shown. */
const school = schoolOfItsOwn();
test.describe.configure({ mode: 'serial' });

const LESSON = '40-back-levels';

let teacher: Page;
let code = '';

test('a teacher sets an exam, strictly marked, and changes it before anybody has handed in', async ({
	browser
}) => {
	teacher = await somebody(browser, school(), 'en-GB');
	code = await beginClass(teacher, await firstLink(school()));
	await alive(teacher);
	await teacher.locator('summary', { hasText: 'Set something' }).click();
	await teacher.getByLabel('What it is called').fill('Levels of the back');
	await teacher.locator(`fieldset details:has([name="lesson.${LESSON}"]) > summary`).click();
	await teacher.locator(`[name="lesson.${LESSON}"]`).check();
	await teacher.locator('[name=mode][value=exam]').check();
	await teacher.getByRole('button', { name: 'Set it for the class' }).click();
	await teacher.getByRole('link', { name: 'Levels of the back' }).click();
	await alive(teacher);
	await teacher.locator('summary', { hasText: 'Change it' }).click();
	await expect(teacher.locator('[name=mode][value=exam]')).toBeChecked();
	await expect(teacher.locator(`[name="lesson.${LESSON}"]`)).toBeChecked();
	await teacher.locator('summary', { hasText: 'Marking and times' }).click();
	await teacher.locator('[name=level]').selectOption('strict');
	await teacher.getByLabel('What it is called').fill('The levels, by heart');
	await teacher.getByRole('button', { name: 'Change it for the class' }).click();
	await expect(teacher.getByRole('heading', { name: 'The levels, by heart' })).toBeVisible();
});

test('nothing is told of what is right until the learner hands it in', async ({ browser }) => {
	const learner = await somebody(browser, school(), 'en-GB');
	await learner.goto('/class');
	const join = learner.locator('form[action="?/join"]');
	for (const [name, value] of Object.entries({ code, name: 'Ada', passphrase: PASSPHRASE }))
		await join.locator(`[name="${name}"]`).fill(value);
	await learner.getByRole('button', { name: 'Join for the first time' }).click();
	await learner.getByRole('link', { name: 'Begin' }).click();
	await expect(learner.getByText(/^You draft for/)).toBeVisible();
	await learner.locator('main li a').first().click();
	await expect(learner.getByTestId('exam')).toContainText('what is right is told when you hand in');
	const desk = new Desk(learner);
	await desk.sheet.locator('svg').waitFor();
	// The lesson's text, which says how a step is done, is not shown; nor is help offered.
	await expect(learner.getByText(/half the shoulder width/)).toHaveCount(0);
	await expect(learner.locator('.asks button')).toHaveCount(0);
	await expect(desk.verdict).toContainText('within 1 mm');

	/** Puts a point down and keeps it. */
	const keep = async (at: readonly [number, number]): Promise<void> => {
		await desk.field.fill(desk.said({ point: at }));
		await desk.button('Keep it').click();
		await expect(desk.verdict).toContainText('Kept.');
	};
	await keep([0, 111]);
	await expect(desk.verdict).toHaveAttribute('data-answer', 'right');
	await expect(learner.locator('#step-A')).toHaveAttribute('data-state', 'right');
	await expect(learner.getByTestId('likely')).toHaveCount(0);
	await desk.button(/^Next/).click();
	await keep([0, 425]);
	await expect(learner.getByTestId('handing')).toContainText('Saved');
	await learner.screenshot({ path: test.info().outputPath('exam.png') });

	await learner.locator('summary', { hasText: 'Hand in' }).click();
	await learner.getByRole('button', { name: 'Yes, hand it in' }).click();
	await expect(learner.getByTestId('exam')).toContainText('It is handed in.');
	await expect(learner.locator('#step-A')).toHaveAttribute('data-state', 'kept');
	await expect(learner.locator('#step-W')).toHaveAttribute('data-state', 'right');
	await learner.getByRole('link', { name: 'All your work' }).click();
	await expect(learner.getByText('Marked so far: 1 of 6')).toBeVisible();
});

test('the teacher can change it no more', async () => {
	await teacher.reload();
	await expect(teacher.getByText('what was asked stays as it was')).toBeVisible();
	await expect(teacher.locator('summary', { hasText: 'Change it' })).toHaveCount(0);
	await expect(teacher.getByRole('row', { name: 'Ada' })).toContainText('1 of 6');
});
