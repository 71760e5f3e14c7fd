import { expect, test, type Locator, type Page } from '@playwright/test';
import { asksOf, exercise } from '#practice/exercises/kinds.ts';
import type { Exercise } from '#practice/exercises/exercise.ts';
import { NO_MASTERY } from '#practice/mastery.ts';
import { practiceSet, skillsOf } from '#practice/practice-set.ts';
import { BACK, FRONT, library } from '../practice/methods.ts';
import { english } from '../support/speech.ts';
import { open } from './support/page.ts';

const SEED = 20;
/** The set of this seed for a learner who has practised nothing: the day does not matter then. */
const EXERCISES: readonly Exercise[] = practiceSet(
	SEED,
	skillsOf([BACK, FRONT], NO_MASTERY, '2026-11-25'),
	10
).map((item) => exercise(item, library));

const cm = (length: number): string => (length / 10).toFixed(2);

/** A learner who has nothing but a keyboard. */
class Keyboard {
	constructor(readonly page: Page) {}

	async to(target: Locator): Promise<void> {
		for (let i = 0; i < 150; i++) {
			if (await target.evaluate((element) => element === document.activeElement)) return;
			await this.page.keyboard.press('Tab');
		}
		throw new Error('the keyboard does not reach this');
	}

	async press(target: Locator): Promise<void> {
		await this.to(target);
		await this.page.keyboard.press('Enter');
	}

	async type(target: Locator, text: string): Promise<void> {
		await this.to(target);
		await this.page.keyboard.type(text);
	}

	/** Chooses an option by typing what it begins with. */
	async choose(list: Locator, begins: string): Promise<void> {
		await this.to(list);
		await this.page.keyboard.type(begins);
	}

	/** Goes to a radio button of a group by the arrow keys. */
	async mark(group: Locator, which: Locator): Promise<void> {
		await this.to(group.first());
		for (let i = 0; i < 12; i++) {
			if (await which.isChecked()) return;
			await this.page.keyboard.press('ArrowDown');
		}
		throw new Error('no such choice');
	}
}

const solve = async (keyboard: Keyboard, asked: Exercise): Promise<void> => {
	const { page } = keyboard;
	const check = page.getByRole('button', { name: 'Check', exact: true });
	if (asked.kind === 'find-start') {
		await keyboard.choose(page.getByLabel('The point it starts from'), asked.start);
		await keyboard.press(check);
	} else if (asked.kind === 'next-point') {
		const place = asked.draft.points[asked.step];
		if (!place) throw new Error(`${asked.step} is not drafted`);
		await keyboard.type(
			page.locator('.dock form input'),
			english.words.desk.saidPlace({ across: cm(place.x), down: cm(place.y) })
		);
		await page.keyboard.press('Enter');
	} else if (asked.kind === 'work-number') {
		await keyboard.type(page.getByLabel('Your number, or a sum'), cm(asked.right));
		await page.keyboard.press('Enter');
	} else if (asked.kind === 'find-wrong') {
		await keyboard.choose(page.getByLabel('The wrong point'), `${asked.slip.step},`);
		await keyboard.mark(page.getByRole('radio'), page.locator(`input[value="${asked.slip.note}"]`));
		await keyboard.press(check);
	} else {
		const longer = asked.difference > 0 ? 'the first' : 'the second';
		await keyboard.to(page.getByRole('radio').first());
		await page.keyboard.press('Space');
		if (longer === 'the second') await page.keyboard.press('ArrowDown');
		await keyboard.type(page.getByLabel('By how much?'), cm(Math.abs(asked.difference)));
		await page.keyboard.press('Enter');
		const reach = Math.hypot(asked.right.x - asked.movesFrom.at.x, asked.right.y - asked.movesFrom.at.y);
		await keyboard.type(page.getByLabel(/put it at/), cm(reach));
		await page.keyboard.press('Enter');
	}
};

/** A newcomer says what she has drafted. */
const begin = async (page: Page, press: (target: Locator) => Promise<void>): Promise<void> => {
	await expect(page.getByText('Nothing is drafted in this browser yet.')).toBeVisible();
	await expect(page.getByRole('button', { name: 'Begin a set of ten' })).toBeDisabled();
	for (const name of ['The back block', 'The front block'])
		await press(page.getByRole('checkbox', { name, exact: true }));
	await press(page.getByRole('button', { name: 'Begin a set of ten' }));
};

test('a practice set of ten is finished with the keyboard alone', async ({ page }) => {
	test.setTimeout(120_000);
	const keyboard = new Keyboard(page);
	await open(page, `/practice?seed=${String(SEED)}`);
	await begin(page, async (target) => {
		await keyboard.to(target);
		await page.keyboard.press('Space');
	});
	for (const [i, asked] of EXERCISES.entries()) {
		await expect(page.getByText(`Exercise ${String(i + 1)} of 10`)).toBeVisible();
		await expect(page.getByRole('heading', { level: 1 })).toHaveText(asksOf(asked, english));
		await solve(keyboard, asked);
		await expect(page.getByTestId('judged')).toHaveAttribute('data-answer', 'right');
		await keyboard.press(page.getByRole('button', { name: 'Next exercise' }));
	}
	await expect(page.getByTestId('set-summary')).toContainText('10 right at once');
	await expect(page.getByText('never a grade')).toBeVisible();
});

test('an exercise that was begun is there again after a reload, and a wrong answer is told', async ({
	page
}) => {
	await open(page, `/practice?seed=${String(SEED)}`);
	await begin(page, (target) => target.click());
	await page.getByRole('button', { name: 'Pass this one over' }).click();
	await page.reload();
	await expect(page.getByText('Exercise 2 of 10')).toBeVisible();
	// From which point a step is measured: a few are named first, and the rule, which says it, last.
	await page.getByRole('button', { name: 'Show me how' }).click();
	await expect(page.getByTestId('judged')).toContainText('It is one of these:');
	await expect(page.getByTestId('judged')).not.toContainText('The rule:');
	await page.getByRole('button', { name: 'Show me how' }).click();
	await expect(page.getByTestId('judged')).toContainText('The rule:');
	await expect(page.getByRole('button', { name: 'Show me how' })).toHaveCount(0);
});

test('a week after a part was finished it is tried what has stayed, without help, and the result is kept here', async ({
	page
}) => {
	await page.goto('/favicon.svg');
	await page.evaluate(() => {
		localStorage.setItem(
			'square-across.probes',
			JSON.stringify({ version: 1, parts: { 'back-block': { finished: '2026-03-01' } } })
		);
	});
	await page.clock.setFixedTime(new Date('2026-03-07T12:00:00'));
	await open(page, `/practice?seed=${String(SEED)}`);
	await expect(page.getByRole('heading', { level: 1, name: 'Practice' })).toBeVisible();
	await expect(page.getByRole('heading', { name: 'What has stayed?' })).toHaveCount(0);
	await page.clock.setFixedTime(new Date('2026-03-08T12:00:00'));
	await page.reload();
	await page.getByRole('button', { name: 'Try it' }).click();
	for (let i = 1; i <= 5; i++) {
		await expect(page.getByText(`Exercise ${String(i)} of 5`)).toBeVisible();
		await expect(page.getByRole('button', { name: 'Show me how' })).toHaveCount(0);
		await page.getByRole('button', { name: 'Pass this one over' }).click();
	}
	await expect(page.getByTestId('set-summary')).toContainText('0 of 5 right at once.');
	await page.reload();
	await expect(page.getByText('The back block: 0 of 5 right at once')).toBeVisible();
	await expect(page.getByRole('button', { name: 'Try it' })).toHaveCount(0);
});
