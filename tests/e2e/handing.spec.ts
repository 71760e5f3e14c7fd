import { readFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import { parse } from 'csv-parse/sync';
import { speechFor } from '../support/speech.ts';
import { Desk } from './support/desk.ts';
import { HERON_BACK, type Answer } from './support/heron.ts';
import { beginClass, firstLink, schoolOfItsOwn, somebody } from './support/school.ts';
import { alive, beyond, onPhone, tableBeyond } from './support/page.ts';

/** A class in which something is set and handed in. */
const school = schoolOfItsOwn();
test.describe.configure({ mode: 'serial' });

const LESSON = '40-back-levels';

const answerOf = (step: string): Answer => {
	const answer = HERON_BACK[LESSON]?.[step];
	if (!answer) throw new Error(`nobody has worked ${step}`);
	return answer;
};

let teacher: Page;
let bea: Page;
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
	for (const summary of await teacher.locator('main summary').all()) await summary.click();
	expect(await onPhone(teacher, () => beyond(teacher))).toBe(0);
	await teacher.getByLabel('What it is called').fill('Levels of the back');
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
	// One is for the mark and one for the check.
	const before = 2;
	await expect(state).toContainText(`recibo ${before}`);

	// It is told where what comes of it stands, and not over it.
	const away = state.getByText('El servidor no responde.');
	const band = learner.locator('.band.below');
	await expect(away).toBeHidden();
	await learner.context().setOffline(true);
	await expect(away).toBeVisible();
	await expect(band).not.toHaveAttribute('hidden');
	await expect(band).toBeHidden();
	await desk.byPointer(answerOf('W'));
	await expect(state).toContainText(/En espera \([1-9]\d*\)/);
	await expect(away).toBeVisible();
	await desk.byPointer(answerOf('H'));
	// The server is away; what waits outlives the page.
	const waiting = Number(await state.getAttribute('data-waiting'));
	expect(waiting).toBeGreaterThanOrEqual(4);
	await expect(state).toContainText(spanish.words.handing.waiting({ count: waiting }));
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
	await expect(again.getByText('Nota hasta ahora: 5 de 6')).toBeVisible();
});

test('the teacher sees what was handed in, and who is where while another learner hands in', async ({
	browser
}) => {
	await teacher.getByRole('link', { name: 'Set for the class' }).click();
	const row = teacher.getByRole('row', { name: 'Inés' });
	await expect(row).toContainText('5 of 6');
	const now = teacher.getByTestId('now');
	await expect(now).toContainText('Inés');
	await expect(teacher.getByRole('heading', { name: 'Who is where' })).toContainText('as it happens');

	bea = await somebody(browser, school(), 'en-GB');
	await bea.goto('/class');
	const join = bea.locator('form[action="?/join"]');
	for (const [name, value] of Object.entries({ code, name: 'Bea', passphrase: 'four green pins' }))
		await join.locator(`[name="${name}"]`).fill(value);
	await bea.getByRole('button', { name: 'Join for the first time' }).click();
	await bea.getByRole('link', { name: 'Begin' }).click();
	await expect(bea.getByText('You draft for Heron, an invented body.')).toBeVisible();
	await bea.locator('main li a').first().click();
	const desk = new Desk(bea);
	await desk.sheet.locator('svg').waitFor();
	// The whole of the shoulder width in the place of half of it.
	await desk.byPointer({ point: [0, 414] });
	await expect(bea.getByTestId('handing')).toContainText('Saved');
	// Nobody has asked for the page again.
	await expect(now.locator('li', { hasText: 'Bea' })).toContainText('A, armhole level');
});

test('the teacher is told what the class has not understood, in either language', async () => {
	await teacher.getByRole('button', { name: 'Mark what came in since' }).click();
	await expect(
		teacher.getByText(/^At A, armhole level, 1 of 2 (probably )?took the whole of the shoulder width/)
	).toBeVisible();
	const address = new URL(teacher.url());
	await teacher.goto(`/es${address.pathname}${address.search}`);
	await expect(
		teacher.getByText(/^En A, nivel de sisa, 1 de 2 (probablemente )?ha tomado .* ancho de hombros/)
	).toBeVisible();
	await teacher.goto(`${address.pathname}${address.search}`);
});

test('the teacher replays a draft, gives another mark, and writes beside a step: the learner is told', async () => {
	await teacher.getByRole('link', { name: 'Bea' }).click();
	await alive(teacher);
	const replay = teacher.getByRole('slider', { name: 'Mark by mark' });
	await replay.focus();
	await teacher.keyboard.press('Home');
	await expect(teacher.getByText('Nothing is put down yet.')).toBeVisible();
	await teacher.keyboard.press('End');
	await expect(teacher.getByText(/armhole level, checked, wrong/)).toBeVisible();
	await expect(teacher.getByRole('row', { name: 'A, armhole level' })).toContainText('19.2 cm');
	// The table is said anew in another unit, while it stands.
	const unit = teacher.getByRole('combobox', { name: 'Unit' });
	await unit.selectOption('in');
	await expect(teacher.getByRole('row', { name: 'A, armhole level' })).toContainText('7 9/16″');
	await unit.selectOption('cm');
	await expect(teacher.getByRole('row', { name: 'A, armhole level' })).toContainText('19.2 cm');
	await teacher.getByRole('button', { name: 'A, armhole level' }).click();
	await teacher.getByLabel('Another mark, from 0 to 1').fill('0,5');
	await teacher.getByLabel('Why').fill('The way was right.');
	await teacher.getByRole('button', { name: 'Give this mark' }).click();
	await expect(teacher.getByText(/^Marked 0.5 by Ms Alder/)).toBeVisible();
	await teacher.getByLabel('Write to the learner').fill('Half of it, Bea.');
	await teacher.getByRole('button', { name: 'Write it' }).click();
	await expect(teacher.getByText(/^Half of it, Bea\./)).toBeVisible();
	expect(await tableBeyond(teacher, teacher.locator('main table'))).toBeLessThanOrEqual(0);

	await bea.reload();
	await bea.getByText('Words from your teacher, at 1 place').click();
	await expect(bea.getByTestId('remarks')).toContainText('Half of it, Bea.');
	await expect(bea.getByTestId('remarks')).toContainText('The way was right.');
});

test('the teacher has the marks as a table, and shows the class its board', async () => {
	await teacher.getByRole('link', { name: 'Levels of the back' }).click();
	await expect(teacher.getByRole('row', { name: 'Bea' })).toContainText('0.5 of 6');
	const waits = teacher.waitForEvent('download');
	await teacher.getByRole('link', { name: 'with decimal commas' }).click();
	const table = await readFile(await (await waits).path(), 'utf8');
	const rows: string[][] = parse(table, { bom: true, delimiter: ';' });
	expect(rows.map(([name, mark]) => [name, mark])).toEqual([
		['Learner', 'Mark'],
		['Bea', '0,5'],
		['Inés', '5']
	]);

	await teacher.getByRole('link', { name: 'Show it on the board' }).last().click();
	await alive(teacher);
	await expect(teacher.getByRole('heading', { name: 'A: Armhole level' })).toBeVisible();
	const figures = teacher.locator('figure');
	await expect(figures).toHaveCount(2);
	await expect(figures.first().locator('circle[data-name="A"]')).toHaveCount(0);
	await teacher.keyboard.press('PageDown');
	await expect(figures.first().locator('circle[data-name="A"]')).toHaveCount(1);
	await expect(figures.last().locator('circle[data-name="A"]')).toHaveCount(1);
	await teacher.keyboard.press('PageDown');
	await expect(teacher.getByRole('heading', { name: 'W: Waist level' })).toBeVisible();
});
