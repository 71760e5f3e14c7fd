import { expect, test, type Page } from '@playwright/test';
import { english } from '../support/speech.ts';
import { Desk } from './support/desk.ts';
import { HERON_BACK } from './support/heron.ts';
import { LearningPlatform } from './support/learning-platform.ts';
import { beginClass, firstLink, schoolOfItsOwn, somebody } from './support/school.ts';
import { alive } from './support/page.ts';

/** A class that comes from a learning platform: its teacher links to what was set, a learner drafts it, and the platform has the mark. */
const school = schoolOfItsOwn();
test.describe.configure({ mode: 'serial' });

const LESSON = '40-back-levels';
let platform: LearningPlatform;
let teacher: Page;

test.beforeAll(async () => {
	platform = await new LearningPlatform(school().address).start();
});
test.afterAll(() => platform.close());

test('a teacher adds the platform', async ({ browser }) => {
	const first = await somebody(browser, school(), 'en-GB');
	await beginClass(first, await firstLink(school()));
	await first.goto('/class');
	await first.locator('summary', { hasText: 'Learning platforms' }).click();
	for (const [name, value] of Object.entries(platform.fields))
		await first.locator(`form[action="?/addPlatform"] [name="${name}"]`).fill(value);
	await first.getByRole('button', { name: 'Add the platform' }).click();
	await first.locator('summary', { hasText: 'Learning platforms' }).click();
	await expect(first.getByText(platform.address).first()).toBeVisible();
	await first.context().close();
});

test('whoever teaches the course comes in by a link, sets something, and links to it from a frame', async ({
	browser
}) => {
	teacher = await somebody(browser, school(), 'en-GB');
	await teacher.goto(platform.course('teacher Birch', false));
	await teacher.getByRole('button', { name: 'Open the tool' }).click();
	await expect(teacher.getByRole('heading', { name: 'Evening course' })).toBeVisible();
	await alive(teacher);
	await teacher.locator('summary', { hasText: 'Set something' }).click();
	await teacher.getByLabel('What it is called').fill('Levels <of> the back');
	await teacher.locator(`fieldset details:has([name="lesson.${LESSON}"]) > summary`).click();
	await teacher.locator(`[name="lesson.${LESSON}"]`).check();
	await teacher.getByRole('button', { name: 'Set it for the class' }).click();
	await expect(teacher.getByRole('link', { name: 'Levels <of> the back' })).toBeVisible();

	const course = await teacher.context().newPage();
	await course.goto(platform.course('teacher Birch', true));
	await course.getByRole('button', { name: 'Choose links' }).click();
	const frame = course.frameLocator('iframe');
	await expect(frame.getByRole('heading', { name: 'What is linked to?' })).toBeVisible();
	await frame.getByLabel('Levels <of> the back').check();
	await frame.getByRole('button', { name: 'Put it into the course' }).click();
	await expect(frame.getByText('Linked: Levels')).toBeVisible();
	expect(platform.links).toMatchObject([{ title: 'Levels <of> the back', lineItem: { scoreMaximum: 100 } }]);
	await course.close();
});

test('a learner opens the link from a frame, hands in, and the platform has the mark', async ({
	browser
}) => {
	const learner = await somebody(browser, school(), 'en-GB');
	await learner.goto(platform.course('learner Ada', true));
	await learner.getByRole('button', { name: 'Levels' }).click();
	const opened = learner.context().waitForEvent('page');
	await learner.frameLocator('iframe').getByRole('button', { name: 'Open Square Across' }).click();
	const work = await opened;
	await expect(work.getByRole('heading', { level: 1, name: 'Levels <of> the back' })).toBeVisible();
	await work.locator('main li a').first().click();
	const desk = new Desk(work, english);
	await desk.sheet.locator('svg').waitFor();
	const answer = HERON_BACK[LESSON]?.['A'];
	if (!answer) throw new Error('nobody has worked A');
	await desk.byPointer(answer);
	await expect(work.getByTestId('handing')).toContainText('Saved');
	const cell = () => [...platform.gradebook.cells.values()][0];
	await expect.poll(cell, { timeout: 60_000 }).toMatchObject({ comment: '1 of 6, 0 mistakes' });
	expect(cell()?.mark).toBeCloseTo(100 / 6);
	expect(platform.gradebook.refused).toEqual([]);

	// The same link in a page of its own leads there too, without a step between.
	await work.goto(platform.course('learner Ada', false));
	await work.getByRole('button', { name: 'Levels' }).click();
	await expect(work.getByRole('heading', { level: 1, name: 'Levels <of> the back' })).toBeVisible();
});

test('the teacher sees what the platform has', async () => {
	await teacher.reload();
	await expect(teacher.getByTestId('sendings')).toContainText('1 mark has arrived there.');
	await expect(teacher.getByTestId('sendings')).toContainText('Nothing is waiting.');
});

test('an address that somebody hands on brings nobody in', async ({ browser }) => {
	const { address } = school();
	// The answer of a platform to another browser: this one has set out on no way.
	const stranger = await somebody(browser, school(), 'en-GB');
	await stranger.route(`${address}/lti/login`, async (route) => {
		const headers = (await route.fetch({ maxRedirects: 0 })).headers();
		await stranger.context().clearCookies();
		await route.fulfill({ status: 303, headers: { location: headers['location'] ?? '' } });
	});
	await stranger.goto(platform.course('learner Bea', false));
	await stranger.getByRole('button', { name: 'Open the tool' }).click();
	await expect(stranger.getByText('Your browser did not keep')).toBeVisible();
	const answer = await fetch(`${address}/lti/open`, {
		method: 'POST',
		headers: { origin: platform.address, 'content-type': 'application/x-www-form-urlencoded' },
		body: 'ticket=x'
	});
	expect(answer.status).toBe(403);
});
