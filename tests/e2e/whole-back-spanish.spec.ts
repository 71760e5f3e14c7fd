import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { mm } from '#shared/units.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { withFile } from '../exports/raster.ts';
import { speechFor } from '../support/speech.ts';
import { Desk } from './support/desk.ts';
import { ENGLISH, expectSpanish } from './support/only-spanish.ts';
import { pointedAt, typedFor } from './support/worked.ts';
import { open } from './support/page.ts';

test.use({ locale: 'es-ES' });

const SPANISH = speechFor('es');
const METHOD = backBlock();

const draftOf = (body: Body): Draft => {
	const evaluation = evaluate(METHOD, body);
	if (evaluation.kind !== 'drafted') throw new Error(`the back is not drafted for ${body.name}`);
	return evaluation.draft;
};
const heron = (): Body => {
	const [first] = DEMO_BODIES;
	if (!first) throw new Error('there is no demo body');
	return first.body;
};
const DRAFT = draftOf(heron());
/** The same with no ease round the bust: where a point lies for whoever forgets it. */
const FORGOTTEN = draftOf({ ...heron(), allowances: { ...heron().allowances, bustEase: mm(0) } });

const stepCalled = (name: string): Step => {
	const step = METHOD.steps.find((each) => each.name === name);
	if (!step) throw new Error(`the back has no step ${name}`);
	return step;
};

/** Does steps rightly: one with the mouse, the next by its fields, the next with the keyboard alone, wherever each can be. */
class Hands {
	#done = 0;

	constructor(readonly desk: Desk) {}

	async work(name: string): Promise<void> {
		const step = stepCalled(name);
		const [pointed, typed] = [pointedAt(step, DRAFT), typedFor(step, DRAFT)];
		if (!pointed || !typed) throw new Error(`${name} is not drafted for this body`);
		const way = this.#done++ % 3;
		if (way === 0 || 'end' in pointed) return this.desk.byPointer(pointed);
		if (way === 1 || !('point' in pointed)) return this.desk.byTyping(typed);
		await this.desk.byKeyboard(pointed);
	}
}

/** Puts the first point of the lessons that needs the ease of the bust where it lies without, and reads what that is called. */
const forgetTheEase = async (desk: Desk, name: string): Promise<boolean> => {
	const [at, without] = [DRAFT.points[name], FORGOTTEN.points[name]];
	if (!at || !without || Math.hypot(at.x - without.x, at.y - without.y) < 5) return false;
	await desk.byPointer({ point: [without.x, without.y] });
	await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
	await expect(desk.verdict).toContainText('no está bien todavía');
	await expect(desk.verdict).toContainText('20 mm demasiado hacia dentro');
	await expect(desk.page.getByTestId('likely')).toContainText('olvidado la holgura de busto');
	await expectSpanish(desk.page);
	return true;
};

const openHelp = async (desk: Desk): Promise<void> => {
	const { help, askWhere, askRule, askNumber } = desk.words;
	for (const rung of [askWhere, askRule, askNumber]) await desk.button(rung).click();
	await expect(desk.page.getByRole('list', { name: help }).getByRole('listitem')).toHaveCount(3);
	await expectSpanish(desk.page);
};

/** Every word of the PDF file that a button saves, as poppler's pdftotext reads them. */
const wordsSaved = async (page: Page, button: string): Promise<string> => {
	const download = page.waitForEvent('download');
	await page.getByRole('button', { name: button, exact: true }).click();
	const bytes = readFileSync(await (await download).path());
	const words = withFile(bytes, 'saved.pdf', (file) =>
		execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' })
	);
	expect(words.match(ENGLISH) ?? []).toEqual([]);
	return words.replace(/\s+/g, ' ');
};

test('who reads only Spanish drafts the whole back, errs, is told why, takes help, and has it printed', async ({
	page
}) => {
	test.setTimeout(240_000);
	const [desk, drafted] = [new Desk(page, SPANISH), new Set<string>()];
	const hands = new Hands(desk);
	await open(page, '/es');
	await expectSpanish(page);
	await page.locator('#lessons').getByText('El patrón base de espalda', { exact: true }).click();
	await page.getByRole('link', { name: 'Los niveles', exact: true }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Los niveles');

	let erred = false;
	for (;;) {
		const names = await page
			.locator('.text .step')
			.evaluateAll((steps) => steps.map(({ id }) => id.replace('step-', '')));
		if (names.length === 0) break;
		await desk.sheet.locator('svg[data-scale]').waitFor();
		await expectSpanish(page);
		await openHelp(desk);
		for (const name of names) {
			await expect.poll(() => desk.current()).toBe(name);
			erred ||= await forgetTheEase(desk, name);
			await hands.work(name);
			await desk.expectRight();
			drafted.add(name);
		}
		await expectSpanish(page);
		const onward = page.getByRole('link', { name: /^Siguiente lección: / });
		const title = ((await onward.textContent()) ?? '').replace('Siguiente lección: ', '').trim();
		await onward.click();
		await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
	}
	expect(erred).toBe(true);

	await expect(page.getByText('Todos los pasos son correctos.')).toBeVisible();
	await expect(page.locator('tr[data-answer=right]')).toHaveCount(drafted.size);
	await expectSpanish(page);

	await page.getByRole('link', { name: 'Imprimir el trazado a escala real' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Patrón base de espalda a escala real');
	await expectSpanish(page);
	const { saveSheet, sheet } = SPANISH.words.files;
	expect(await wordsSaved(page, saveSheet({ sheet: 'draft' }))).toContain('Imprime al 100 % (tamaño real)');
	await page.getByRole('radio', { name: sheet({ sheet: 'rules' }), exact: true }).check();
	const rules = await wordsSaved(page, saveSheet({ sheet: 'rules' }));
	expect(rules).toContain('la cuarta parte del contorno de busto');
	expect(rules).toMatch(/\d,\d+ cm/);
	await expectSpanish(page);
});
