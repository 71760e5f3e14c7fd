import { expect, test, type Page } from '@playwright/test';
import { beginClass, firstLink, PASSPHRASE, schoolOfItsOwn, somebody } from './support/school.ts';

const school = schoolOfItsOwn();
// One server has one first teacher.
test.describe.configure({ mode: 'serial' });

const fill = async (page: Page, form: string, values: Readonly<Record<string, string>>): Promise<void> => {
	for (const [name, value] of Object.entries(values))
		await page.locator(`form[action="${form}"] [name="${name}"]`).fill(value);
};

let code = '';

test('the link that the server prints makes the first teacher, who begins a class', async ({ browser }) => {
	const link = await firstLink(school());
	const teacher = await somebody(browser, school(), 'en-GB');
	code = await beginClass(teacher, link);
	expect(code).toMatch(/^\S{4} \S{4}$/);

	// Once is all that the link is good for.
	await teacher.context().clearCookies();
	await teacher.goto(link);
	await teacher.getByLabel('Your name').fill('Mr Birch');
	await teacher.getByLabel('Passphrase').fill(PASSPHRASE);
	await teacher.getByRole('button', { name: 'Become a teacher here' }).click();
	await expect(teacher.getByRole('alert').filter({ hasText: 'already' })).toBeVisible();
});

test('a learner joins in Spanish, and what was refused keeps what was typed', async ({ browser }) => {
	const learner = await somebody(browser, school(), 'es-ES');
	await learner.goto('/');
	await learner.getByRole('link', { name: 'Las clases de una escuela' }).click();
	await fill(learner, '?/join', { code: code.toLowerCase(), name: 'Inés', passphrase: 'corta' });
	await learner.getByRole('button', { name: 'Entrar por primera vez' }).click();
	await expect(learner.getByText('Una frase secreta tiene 8 letras o más.')).toBeVisible();
	await expect(learner.locator('form[action="?/join"] [name="name"]')).toHaveValue('Inés');
	await fill(learner, '?/join', { passphrase: 'tres botones azules' });
	// The answer is slow to come, and the learner presses once more.
	let sent = 0;
	await learner.route('**/class?/join', async (route) => {
		sent += 1;
		const response = await route.fetch({ maxRedirects: 0 });
		await new Promise((done) => setTimeout(done, 600));
		await route.fulfill({ response }).catch(() => undefined);
	});
	await learner.getByRole('button', { name: 'Entrar por primera vez' }).evaluate((button) => {
		for (const wait of [0, 300]) setTimeout(() => (button as HTMLElement).click(), wait);
	});
	await expect(learner.getByRole('heading', { name: 'Hola, Inés' })).toBeVisible();
	expect(sent).toBe(1);
	await learner.unrouteAll({ behavior: 'ignoreErrors' });
	await expect(learner.getByText('Estás en Alder Row.')).toBeVisible();

	const got = learner.waitForEvent('download');
	await learner.getByRole('link', { name: 'Todo lo guardado' }).click();
	expect((await got).suggestedFilename()).toBe('square-across-learner.json');

	await learner.getByRole('button', { name: 'Salir' }).click();
	await fill(learner, '?/join', { code, name: 'inés', passphrase: 'tres botones azules' });
	await learner.getByRole('button', { name: 'Volver a mi clase' }).click();
	await expect(learner.getByRole('heading', { name: 'Hola, Inés' })).toBeVisible();
});

test('the teacher renames a learner, gives a new passphrase and removes them', async ({ browser }) => {
	const teacher = await somebody(browser, school(), 'en-GB');
	await teacher.goto('/class');
	await fill(teacher, '?/signIn', { name: 'ms alder', passphrase: PASSPHRASE });
	await teacher.getByRole('button', { name: 'Sign in' }).click();
	await teacher.getByRole('link', { name: 'Alder Row' }).click();
	await teacher.getByLabel('More for Inés').click();
	await teacher.getByLabel('New name').fill('Inés B.');
	await teacher.getByRole('button', { name: 'Rename' }).click();
	await teacher.getByLabel('More for Inés B.').click();
	await teacher.getByRole('button', { name: 'New passphrase' }).click();
	await expect(teacher.getByRole('status')).toContainText('The new passphrase of Inés B. is ');
	await teacher.getByLabel('More for Inés B.').click();
	await teacher.locator('summary', { hasText: 'Remove' }).first().click();
	await teacher.getByRole('button', { name: 'Yes, remove Inés B.' }).click();
	await expect(teacher.getByText('Nobody has joined yet.')).toBeVisible();
});

test('what another site sends is not done, and pages of a class are kept by nobody on the way', async () => {
	const sent = (origin: string) =>
		fetch(`${school().address}/class?/signIn`, {
			method: 'POST',
			headers: { origin, 'content-type': 'application/x-www-form-urlencoded', accept: 'application/json' },
			body: new URLSearchParams({ name: 'Ms Alder', passphrase: PASSPHRASE }),
			redirect: 'manual'
		});
	const other = await sent('https://elsewhere.example');
	expect(other.status).toBe(403);
	expect(other.headers.get('set-cookie')).toBeNull();
	const own = await sent(school().address);
	expect(own.headers.get('set-cookie')).toMatch(/HttpOnly/);
	expect(own.headers.get('set-cookie')).toMatch(/SameSite=Lax/);
	const page = await fetch(`${school().address}/class`);
	expect(page.headers.get('cache-control')).toBe('private, no-store');
});
