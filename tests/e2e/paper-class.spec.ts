import { expect, test, type Browser, type Page } from '@playwright/test';
import { photographed } from '../photograph/paper-draft.ts';
import { english, speechFor } from '../support/speech.ts';
import { METHODS } from './support/finished.ts';
import { HERON_BACK } from './support/heron.ts';
import { beginClass, firstLink, PASSPHRASE, schoolOfItsOwn, somebody } from './support/school.ts';
import { heronsDraft } from './support/slips.ts';
import { alive } from './support/page.ts';

/** A class whose learner drafts on paper, and hands the points in that a tape has found. */
const school = schoolOfItsOwn();
test.describe.configure({ mode: 'serial' });

const LESSON = '40-back-levels';
const { onPaper, handing } = english.words;
const BACK = METHODS.find(({ id }) => id === 'back-block');
if (!BACK) throw new Error('there is a back block');
const DRAFT = heronsDraft(BACK);
type At = readonly [across: number, down: number];

/** Heron's back as a person works it by hand (tests/e2e/support/heron.ts); on this paper H was put 3 cm too low. */
const PAPER: ReadonlyMap<string, At> = new Map<string, At>([
	...Object.values(HERON_BACK).flatMap((steps) =>
		Object.entries(steps).flatMap(([name, answer]): [string, At][] =>
			'point' in answer ? [[name, answer.point]] : []
		)
	),
	['O', [0, 0]],
	['H', [0, 660]]
]);

const joinAs = async (learner: Page, code: string, called: string): Promise<void> => {
	await learner.goto('/class');
	const join = learner.locator('form[action="?/join"]');
	for (const [name, value] of Object.entries({ code, name: called, passphrase: PASSPHRASE }))
		await join.locator(`[name="${name}"]`).fill(value);
	await join.getByRole('button').first().click();
};

test('points that were measured on paper are handed in, marked, and told to the teacher', async ({
	browser
}) => {
	const teacher = await somebody(browser, school(), 'en-GB');
	const code = await beginClass(teacher, await firstLink(school()));
	await alive(teacher);
	await teacher.locator('summary', { hasText: 'Set something' }).click();
	await teacher.getByLabel('What it is called').fill('Levels on paper');
	await teacher.locator(`fieldset details:has([name="lesson.${LESSON}"]) > summary`).click();
	await teacher.locator(`[name="lesson.${LESSON}"]`).check();
	await teacher.getByRole('button', { name: 'Set it for the class' }).click();
	await teacher.getByRole('link', { name: 'Levels on paper' }).waitFor();

	const learner = await somebody(browser, school(), 'en-GB');
	await joinAs(learner, code, 'Wren');
	await learner.getByRole('link', { name: handing.start }).click();
	await expect(learner.getByText(handing.orOnPaper)).toBeVisible();
	await learner.getByRole('link', { name: 'The back block' }).click();
	await expect(learner.getByRole('heading', { name: onPaper.heading })).toBeVisible();
	const fields = learner.locator('ol li', { has: learner.locator('input') });
	await fields.first().waitFor();
	const labels = await fields.locator('label').allInnerTexts();
	await fields.first().locator('input').focus();
	for (const label of labels) {
		const [, from = '', to = ''] = /([A-Z]\d?)–([A-Z]\d?)/.exec(label) ?? [];
		const [a, b] = [PAPER.get(from) ?? [0, 0], PAPER.get(to) ?? [0, 0]];
		await learner.keyboard.type((Math.hypot(a[0] - b[0], a[1] - b[1]) / 10).toFixed(2));
		await learner.keyboard.press('Enter');
	}
	await expect(learner.locator('[data-step="H"]')).toHaveAttribute('data-answer', 'wrong');
	await expect(learner.getByText(onPaper.handsIn)).toBeVisible();
	await learner.getByRole('button', { name: onPaper.toSheet }).click();
	await expect(learner.getByTestId('handing')).toContainText(/receipt \d+/);
	await learner.getByRole('link', { name: onPaper.goOn }).click();
	await expect(learner.locator('#step-H')).toHaveAttribute('data-state', 'kept');

	await teacher.getByRole('link', { name: 'Levels on paper' }).click();
	await expect(teacher.locator('tbody')).toContainText('to be measured again');
	await teacher.getByRole('link', { name: 'Wren' }).click();
	await expect(teacher.locator('tr[data-answer="cannot-tell"]').first()).toContainText('Measure it again');
	await expect(teacher.locator('tr[data-answer="wrong"]')).toContainText('H');

	await photographs(browser, code);
	await teacher.goBack();
	await teacher.getByRole('link', { name: 'Siskin' }).click();
	await expect(teacher.locator('tr[data-answer="wrong"]')).toContainText('A');
	await expect(teacher.locator('tr[data-answer="wrong"]')).toContainText(/(19|20|21) mm too low/);
});

/** Another learner photographs the paper, and hands in by that, in Spanish: points go out, and nothing of the picture does. */
async function photographs(browser: Browser, code: string): Promise<void> {
	const size = { width: 1800, height: 2400 };
	const taken = photographed({ draft: DRAFT, off: { A: [0, 20] } }, size);
	const said = speechFor('es').words;
	const learner = await somebody(browser, school(), 'es-ES');
	await joinAs(learner, code, 'Siskin');
	await learner.getByRole('link', { name: said.handing.start }).click();
	await learner.getByRole('link', { name: /espalda/ }).click();
	await learner.getByRole('radio', { name: said.onPaper.ways.photograph }).check();
	const sent: (Buffer | null)[] = [];
	learner.on('request', (request) => {
		if (request.method() !== 'GET') sent.push(request.postDataBuffer());
	});
	await learner
		.locator('input[type=file]')
		.setInputFiles({ name: 'paper.jpg', mimeType: 'image/jpeg', buffer: taken.file });
	await expect(learner.getByTestId('reading')).toContainText('Se han encontrado 4 marcas');
	for (const name of ['O', 'A', 'W', 'H']) {
		await learner.locator('.near fieldset label', { hasText: new RegExp(`^\\s*${name}(?![0-9])`) }).click();
		const picture = learner.getByTestId('picture');
		const box = await picture.boundingBox();
		const place = taken.points[name];
		if (!box || !place) throw new Error(`there is no ${name}`);
		await picture.click({
			position: { x: (place.u / size.width) * box.width, y: (place.v / size.height) * box.height }
		});
		await learner.getByTestId('crossing').click();
	}
	await expect(learner.locator('[data-step="A"]')).toHaveAttribute('data-answer', 'wrong');
	expect(sent).toEqual([]);
	await learner.getByRole('button', { name: said.onPaper.toSheet }).click();
	await expect(learner.getByTestId('handing')).toContainText(/recibo \d+/);
	expect(sent.length).toBeGreaterThan(0);
	// Whatever went out says of each point where it is, and is a hundredth of the picture together.
	for (const body of sent) expect(JSON.parse(body?.toString() ?? '')).toEqual(expect.anything());
	expect(sent.map((body) => body?.toString() ?? '').join()).toContain('"kind":"point"');
	expect(sent.reduce((sum, body) => sum + (body?.length ?? 0), 0)).toBeLessThan(taken.file.length / 100);
}
