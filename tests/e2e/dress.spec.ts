import { expect, test, type Page } from '@playwright/test';
import { readBody } from '#shared/body.ts';
import { NEEDED_KEYS } from '#shared/measurements.ts';
import { english } from '../support/speech.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';
import { Desk, type Typed } from './support/desk.ts';
import { workedSteps } from './support/worked.ts';
import { open } from './support/page.ts';

/** A learner's own numbers, in centimetres: invented, and unlike those of any invented body of the class. */
const OWN: Readonly<Record<(typeof NEEDED_KEYS)[number], number>> = {
	bust: 91,
	waist: 73,
	hip: 99,
	neck: 36,
	shoulderWidth: 37.2,
	backLength: 41.5,
	waistToHip: 20,
	frontLength: 44,
	bustHeight: 26,
	bustSpan: 18.5
};

/** The lessons that are drafted, with their methods; each leads on to the next. */
const LESSONS: readonly (readonly [lesson: string, method: string])[] = [
	['61-dress-back-top', 'dress-back-top'],
	['62-dress-front-top', 'dress-front'],
	['63-dress-looseness', 'dress-front'],
	['64-dress-armhole-dart', 'dress-front'],
	['65-dress-moving-darts', 'dress-front'],
	['66-dress-front-waist', 'dress-front'],
	['67-dress-band-and-stand', 'dress-front'],
	['68-dress-back-waist', 'dress-back'],
	['69-dress-facing', 'dress-facing'],
	['70-dress-skirt', 'dress-skirt'],
	['71-dress-casing', 'dress-casing'],
	['72-dress-binding', 'dress-binding']
];

/** The lessons that are only read, in their order. */
const READ = [
	'73-dress-truing',
	'74-dress-allowances-and-notches',
	'75-dress-labels-and-grain',
	'76-dress-laying-out-and-cutting',
	'77-dress-order-of-sewing'
];

/** Enters the learner's own measurements on their page. */
const enterMeasurements = async (page: Page): Promise<void> => {
	await open(page, '/measurements');
	await page.getByRole('button', { name: 'Add your own' }).click();
	for (const key of NEEDED_KEYS) {
		await page
			.getByLabel(english.words.nouns.measurements[key].title, { exact: true })
			.fill(String(OWN[key]));
		await page.keyboard.press('Tab');
	}
};

/** The steps that the lesson on the page asks for, in its order. */
const stepsOnPage = (page: Page): Promise<string[]> =>
	page.locator('.text .step').evaluateAll((steps) => steps.map(({ id }) => id.replace('step-', '')));

test('from an empty browser to the finished pattern of the dress, for a learner’s own body, by the lessons', async ({
	page
}) => {
	test.setTimeout(240_000);
	const methods = lessonMethods();
	const body = readBody({ name: 'Mine', unit: 'cm', ...OWN });
	const desk = new Desk(page);
	const worked = (id: string): ReadonlyMap<string, Typed> => {
		const method = methods.get(id);
		if (!method) throw new Error(`there is no method ${id}`);
		return workedSteps(method, body);
	};
	await enterMeasurements(page);
	await desk.open('61-dress-back-top');
	let drafted = 0;
	for (const [lesson, id] of LESSONS) {
		await page.waitForURL(`**/lessons/${lesson}`);
		const steps = worked(id);
		const names = await stepsOnPage(page);
		for (const name of names) {
			expect(await desk.current(), lesson).toBe(name);
			const typed = steps.get(name);
			if (!typed) throw new Error(`${lesson} asks for ${name}, which this body does not need`);
			await desk.byTyping(typed);
			await desk.expectRight();
		}
		drafted += names.length;
		await desk.page
			.locator('.dock')
			.getByRole('link', { name: /^Next lesson/ })
			.click();
	}
	const all = [...new Set(LESSONS.map(([, id]) => id))].map((id) => worked(id).size);
	expect(drafted, 'every step of the seven methods').toBe(all.reduce((sum, size) => sum + size, 0));

	// The lessons without steps lead on to the last, and that one to the pattern.
	for (const lesson of READ) {
		await page.waitForURL(`**/lessons/${lesson}`);
		if (lesson !== READ.at(-1)) await page.locator('a[rel=next]').click();
	}
	await page.getByRole('link', { name: 'the pattern page', exact: true }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'The course dress' })).toBeVisible();
	const seams = page.getByRole('table', { name: 'Seams', exact: true }).locator('tbody tr');
	await expect(seams).toHaveCount(13);
	await expect(seams.filter({ hasText: '✓' })).toHaveCount(13);
	// They are folded away where each runs on smoothly.
	const runs = page
		.getByRole('table', { name: 'Lines across seams', includeHidden: true })
		.locator('tbody tr');
	await expect(runs.filter({ hasText: '✓' })).not.toHaveCount(0);
	await expect(runs.filter({ hasText: '✗' })).toHaveCount(0);
	// By hand: the block's shoulder runs 11.6 across (18.6 less a sixth of 36 and 1) and 4 down, which is 12.27 long;
	// 1.5 and 2 are taken off its ends, and 3 for the band. The elastic is 10 shorter than the waist.
	await expect(seams.filter({ hasText: 'Front and back shoulder' })).toContainText('5.77 cm');
	await expect(page.locator('#numbers')).toContainText('63 cm');
	await expect(page.locator('#numbers')).toContainText('65 cm');
});
