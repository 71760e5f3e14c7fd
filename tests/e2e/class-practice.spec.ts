import { expect, test, type Page } from '@playwright/test';
import type { Exercise, ExerciseKey, ExerciseKind } from '#practice/exercises/exercise.ts';
import { exercise } from '#practice/exercises/kinds.ts';
import { PRACTISED } from '../practice/methods.ts';
import { speechFor } from '../support/speech.ts';
import type { Language } from '#shared/speech/language.ts';
import { beginClass, firstLink, schoolOfItsOwn, somebody } from './support/school.ts';
import { alive, faults } from './support/page.ts';

/** A class that is set exercises, which may be done twice. */
const school = schoolOfItsOwn();
test.describe.configure({ mode: 'serial' });

const NAME = 'Numbers and starts';
const COUNT = 4;

let teacher: Page;
let ines: Page;
let bea: Page;
let code = '';

/** What a page was told of its exercises: the keys are all that is sent, so that the answers can be worked here. */
const keysOf = async (page: Page, attempt: number): Promise<readonly ExerciseKey[]> => {
	await page.locator('ol button').first().waitFor();
	const text = await (await page.request.get(new URL(page.url()).pathname)).text();
	const keys = [...text.matchAll(/kind:"([a-z-]+)",seed:(\d+),method:"([a-z-]+)",step:"([^"]+)"/g)].map(
		([, kind = '', seed, method = '', step = '']) => ({
			...{ kind: kind as ExerciseKind, method, step },
			seed: Number(seed)
		})
	);
	expect(keys, `attempt ${attempt}`).toHaveLength(COUNT);
	return keys;
};
const made = (key: ExerciseKey): Exercise =>
	exercise(key, (id) => PRACTISED.find((method) => method.id === id));

const join = async (page: Page, language: Language, name: string): Promise<void> => {
	await page.goto(language === 'en' ? '/class' : `/${language}/class`);
	const form = page.locator('form[action="?/join"]');
	for (const [field, value] of Object.entries({ code, name, passphrase: 'three blue buttons' }))
		await form.locator(`[name="${field}"]`).fill(value);
	await form.locator('button.main').click();
};

/** Answers the exercise that is open: rightly, or by a number or a point that is not. */
const answer = async (page: Page, asked: Exercise, isRight: boolean): Promise<void> => {
	const { words } = speechFor(page.url().includes('/es/') ? 'es' : 'en');
	if (asked.kind === 'work-number') {
		const right = asked.right / 10;
		await page.locator('form input.field').fill((isRight ? right : right + 7).toFixed(2));
	} else if (asked.kind === 'find-start') {
		const others = Object.keys(asked.soFar.points).filter(
			(name) => name !== asked.start && !asked.used.includes(name)
		);
		await page.locator('form select.field').selectOption(isRight ? asked.start : (others[0] ?? ''));
	} else throw new Error(`nobody answers ${asked.kind} here`);
	await page.getByRole('button', { name: words.practice.check, exact: true }).click();
	await expect(page.getByTestId('judged')).toHaveAttribute('data-answer', isRight ? 'right' : 'wrong');
};

/** Does all exercises of an attempt: some of them wrong at first, some left wrong. */
const doAll = async (
	page: Page,
	attempt: number,
	{
		wrongFirst = [],
		left = []
	}: { readonly wrongFirst?: readonly number[]; readonly left?: readonly number[] }
): Promise<void> => {
	const keys = await keysOf(page, attempt);
	await alive(page);
	for (const [i, key] of keys.entries()) {
		const asked = made(key);
		await page.locator('ol button').nth(i).click();
		if (wrongFirst.includes(i) || left.includes(i)) await answer(page, asked, false);
		if (!left.includes(i)) await answer(page, asked, true);
	}
	await expect(page.getByTestId('handing')).toHaveAttribute('data-waiting', '0');
};

test('a teacher sets exercises that may be done twice, and sees them as a learner does', async ({
	browser
}) => {
	teacher = await somebody(browser, school(), 'en-GB');
	code = await beginClass(teacher, await firstLink(school()));
	const begin = async (): Promise<void> => {
		await alive(teacher);
		await teacher.locator('summary', { hasText: 'Set something' }).click();
		await teacher.getByLabel('What it is called').fill(NAME);
		await teacher.getByLabel('practice exercises').check();
		await expect(teacher.getByText('A whole garment')).toBeHidden();
		await expect(teacher.getByText('Drafted for')).toBeHidden();
	};
	await begin();
	await teacher.getByRole('button', { name: 'Set it for the class' }).click();
	await expect(teacher.getByText('Choose at least one draft to practise.')).toBeVisible();
	await begin();
	await teacher.locator('[name="draft.back-block"]').check();
	for (const kind of ['next-point', 'find-wrong', 'true-seams'])
		await teacher.locator(`[name="kind.${kind}"]`).uncheck();
	await teacher.locator('[name=count]').fill(String(COUNT));
	await teacher.locator('[name=times]').selectOption('2');
	expect(await faults(teacher, (axe) => axe)).toEqual([]);
	await teacher.getByRole('button', { name: 'Set it for the class' }).click();
	await teacher.getByRole('link', { name: NAME }).click();
	await expect(teacher.getByRole('link', { name: 'Show it on the board' })).toHaveCount(0);
	await teacher.getByRole('link', { name: 'See it as a learner' }).click();
	await expect(teacher.getByText('Nothing is handed in.')).toBeVisible();
	await expect(teacher.locator('ol button')).toHaveCount(COUNT);
	await expect(teacher.getByRole('button', { name: 'Check', exact: true })).toBeVisible();
	await teacher.getByRole('link', { name: 'Set for the class' }).click();
});

test('two learners do them, in either language, one off-line half-way; one of them errs', async ({
	browser
}) => {
	ines = await somebody(browser, school(), 'es-ES');
	await join(ines, 'es', 'Inés');
	await ines.getByRole('link', { name: 'Empezar' }).click();
	await doAll(ines, 1, { wrongFirst: [1] });
	await expect(ines.locator('ol button[data-stands=right]')).toHaveCount(COUNT);
	expect(await faults(ines, (axe) => axe)).toEqual([]);

	bea = await somebody(browser, school(), 'en-GB');
	await join(bea, 'en', 'Bea');
	await bea.getByRole('link', { name: 'Begin' }).click();
	const keys = await keysOf(bea, 1);
	await alive(bea);
	const at = async (i: number, isRight: boolean): Promise<void> => {
		const key = keys[i];
		if (!key) throw new Error('no such exercise');
		await bea.locator('ol button').nth(i).click();
		await answer(bea, made(key), isRight);
	};
	await at(0, true);
	await expect(bea.getByTestId('handing')).toContainText('Saved');
	await bea.context().setOffline(true);
	await at(1, false);
	await at(2, false);
	await expect(bea.getByTestId('handing')).toContainText(/Waiting \(2\)/);
	const address = bea.url();
	await bea.close();
	bea = await bea.context().newPage();
	await bea.context().setOffline(false);
	await bea.goto(address);
	await expect(bea.getByTestId('handing')).toHaveAttribute('data-waiting', '0');
	await expect(bea.locator('ol button').nth(1)).toHaveAttribute('data-stands', 'wrong');
	await expect(bea.locator('ol button').nth(0)).toHaveAttribute('data-stands', 'right');
});

test('the teacher sees the marks, what was not understood, and each answer that was tried', async () => {
	await teacher.reload();
	await expect(teacher.getByRole('row', { name: 'Inés' })).toContainText('3.9 of 4');
	await expect(teacher.getByRole('row', { name: 'Bea' })).toContainText('1 of 4');
	await expect(teacher.getByTestId('now').locator('li', { hasText: 'Bea' })).toContainText('Exercise 3');
	const missteps = teacher.locator('section[aria-labelledby=missteps] > ol > li');
	expect(await missteps.count()).toBeGreaterThan(0);
	await expect(missteps.first()).toContainText(/^\s*At /);
	await teacher.locator('main table').getByRole('link', { name: 'Bea' }).click();
	await alive(teacher);
	await teacher.getByRole('button', { name: 'Exercise 2' }).click();
	await expect(teacher.locator('.answers ol li')).toHaveCount(1);
	await teacher.getByLabel('Another mark, from 0 to 1').fill('0.5');
	await teacher.getByLabel('Why').fill('Nearly.');
	await teacher.getByRole('button', { name: 'Give this mark' }).click();
	await expect(teacher.getByText(/^Marked 0.5 by Ms Alder/)).toBeVisible();
	expect(await faults(teacher, (axe) => axe)).toEqual([]);
	await bea.reload();
	await bea.getByText('Words from your teacher, at 1 place').click();
	await expect(bea.getByTestId('remarks')).toContainText('Exercise 2');
});

test('a second attempt asks other exercises, and counts where it is better', async () => {
	const first = await keysOf(bea, 1);
	await bea.getByTestId('attempts').locator('summary', { hasText: 'Begin anew' }).click();
	await bea.getByRole('button', { name: /^Yes, begin anew/ }).click();
	await expect(bea.getByText('Attempt 2 of 2')).toBeVisible();
	expect(await keysOf(bea, 2)).not.toEqual(first);
	await doAll(bea, 2, {});
	await bea.goto('/class');
	await expect(bea.getByText('Marked so far: 4 of 4')).toBeVisible();
	await expect(bea.getByRole('link', { name: 'Attempt 1, 1.5 of 4' })).toBeVisible();
	await bea.getByRole('link', { name: /^Attempt 2.*counts/ }).click();
	await expect(bea.locator('ol button[data-stands=right]')).toHaveCount(COUNT);

	// Nothing was loaded anew since she answered.
	await ines.getByTestId('attempts').locator('summary', { hasText: 'Empezar de nuevo' }).click();
	await ines.getByRole('button', { name: /^Sí, empezar de nuevo/ }).click();
	await expect(ines.getByText('2.ª vez de 2')).toBeVisible();
	await doAll(ines, 2, { left: [0, 1] });

	await teacher.getByRole('link', { name: NAME }).click();
	const row = teacher.getByRole('row', { name: 'Inés' });
	await expect(row).toContainText('3.9 of 4');
	await expect(row).toContainText('the best of 2 attempts');
	await expect(teacher.getByRole('row', { name: 'Bea' })).toContainText('4 of 4');
	await row.getByRole('link', { name: 'Attempt 2: 2 of 4' }).click();
	await expect(teacher.getByRole('navigation', { name: 'Attempts' }).locator('[aria-current]')).toContainText(
		'Attempt 2'
	);
});
