import { expect, test, type Page } from '@playwright/test';
import { speechFor } from '../support/speech.ts';
import { Desk } from './support/desk.ts';
import { HERON_BACK, type Answer } from './support/heron.ts';
import { beginClass, firstLink, schoolOfItsOwn, somebody } from './support/school.ts';

/** A class in which something is set and handed in. */
const school = schoolOfItsOwn();
test.describe.configure({ mode: 'serial' });

const LESSON = '40-back-levels';

const alive = (page: Page): Promise<void> => page.locator('[data-alive=true]').waitFor();

const answerOf = (step: string): Answer => {
	const answer = HERON_BACK[LESSON]?.[step];
	if (!answer) throw new Error(`nobody has worked ${step}`);
	return answer;
};

let teacher: Page;
let code = '';

test('a teacher sets a lesson, and sees it as a learner does', async ({ browser }) => {
	teacher = await somebody(browser, school(), 'en-GB');
	code = await beginClass(teacher, await firstLink(school()));
	await alive(teacher);
	await teacher.locator('summary', { hasText: 'Set something' }).click();
	await teacher.getByLabel('What it is called').fill('Levels of the back');
	await teacher.getByRole('button', { name: 'Set it for the class' }).click();
	await expect(teacher.getByText('Choose at least one lesson.')).toBeVisible();

	await alive(teacher);
	await teacher.locator('summary', { hasText: 'Set something' }).click();
	await teacher.getByLabel('What it is called').fill('Levels of the back');
	await teacher.locator(`fieldset details:has([name="lesson.${LESSON}"]) > summary`).click();
	await teacher.locator(`[name="lesson.${LESSON}"]`).check();
	await teacher.getByRole('button', { name: 'Set it for the class' }).click();
	await teacher.getByRole('link', { name: 'Levels of the back' }).click();
	await teacher.getByRole('link', { name: 'See it as a learner' }).click();
	await expect(teacher.getByText('Nothing is handed in.')).toBeVisible();
});

test('a learner hands in, loses the connection, and everything arrives once', async ({ browser }) => {
	const spanish = speechFor('es');
	const learner = await somebody(browser, school(), 'es-ES');
	await learner.goto('/es/class');
	const join = learner.locator('form[action="?/join"]');
	for (const [name, value] of Object.entries({ code, name: 'Inés', passphrase: 'tres botones azules' }))
		await join.locator(`[name="${name}"]`).fill(value);
	await learner.getByRole('button', { name: 'Entrar por primera vez' }).click();
	await learner.getByRole('link', { name: 'Empezar' }).click();
	await expect(learner.getByText('Trazas para Heron, un cuerpo inventado.')).toBeVisible();
	await learner.locator('main li a').first().click();
	const state = learner.getByTestId('handing');
	await expect(state).toContainText('aún no has entregado nada');
	const desk = new Desk(learner, spanish);
	await desk.sheet.locator('svg').waitFor();
	await desk.byPointer(answerOf('A'));
	await expect(state).toContainText('Guardado');
	await expect(state).toContainText(/recibo \d+/);
	const before = Number(/recibo (\d+)/.exec((await state.textContent()) ?? '')?.[1]);

	await learner.context().setOffline(true);
	await desk.byPointer(answerOf('W'));
	await expect(state).toContainText(/En espera \([1-9]\d*\)/);
	await expect(state).toContainText('El servidor no responde.');
	await desk.byPointer(answerOf('H'));
	// The server is away; what waits outlives the page.
	const waiting = Number(await state.getAttribute('data-waiting'));
	expect(waiting).toBeGreaterThanOrEqual(4);
	const address = learner.url();
	await learner.close();

	const again = await learner.context().newPage();
	await again.context().setOffline(false);
	await again.goto(address);
	const later = again.getByTestId('handing');
	await expect(later).toContainText('Guardado');
	await expect(later).toContainText(`recibo ${before + waiting}`);
	await new Desk(again, spanish).sheet.locator('svg').waitFor();
	await expect(again.locator('#step-H')).toHaveAttribute('data-state', 'right');

	// Two pages of one browser, each with its own marks.
	const other = await again.context().newPage();
	await other.goto(address);
	await expect(other.locator('#step-H')).toHaveAttribute('data-state', 'right');
	await new Desk(again, spanish).byPointer(answerOf('armholeLevel'));
	await other.locator('#step-waistLevel').getByRole('button').first().click();
	await new Desk(other, spanish).byPointer(answerOf('waistLevel'));
	await expect(later).toHaveAttribute('data-waiting', '0');
	await expect(other.getByTestId('handing')).toHaveAttribute('data-waiting', '0');
	await again.goto('/es/class');
	await expect(again.getByText('Puntos hasta ahora: 5 de 6')).toBeVisible();
});

test('the teacher sees what was handed in', async () => {
	await teacher.getByRole('link', { name: 'Set for the class' }).click();
	const row = teacher.getByRole('row', { name: 'Inés' });
	await expect(row).toContainText('5 of 6');
});
