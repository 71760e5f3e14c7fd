import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { PROJECT } from '../../architecture/tree-copy.ts';
import { serveFrom, type Serving } from '../../support/serving.ts';

export const PASSPHRASE = 'three blue buttons';

/** The browsers that somebody was given, until the school is over. */
const given: BrowserContext[] = [];

/** A server with classes of its own, in a folder that is thrown away, for all tests of a file or a group: it is there once they run. */
export const schoolOfItsOwn = (env: Readonly<Record<string, string>> = {}): (() => Serving) => {
	let serving: Serving;
	let folder: string;
	test.beforeAll(async () => {
		folder = mkdtempSync(path.join(tmpdir(), 'square-across-school-'));
		serving = await serveFrom(PROJECT, undefined, { SQUARE_ACROSS_DATA: folder, ...env });
	});
	test.afterAll(async () => {
		// Pages that stay open ask a server that is gone, and slow down every test after this one.
		await Promise.all(given.splice(0).map((context) => context.close()));
		await serving.stop();
		rmSync(folder, { recursive: true, force: true });
	});
	return () => serving;
};

/** A browser of somebody's own, in a language. */
export const somebody = async (browser: Browser, { address }: Serving, locale: string): Promise<Page> => {
	const context = await browser.newContext({ baseURL: address, locale });
	given.push(context);
	return context.newPage();
};

/** The link by which the first teacher comes in, as the server prints it. */
export const firstLink = async (serving: Serving): Promise<string> => {
	await expect.poll(() => serving.said()).toContain('?link=');
	return /http\S+\?link=\S+/.exec(serving.said())?.[0] ?? '';
};

/** The first teacher comes in and begins a class, Alder Row; gives its code. */
export const beginClass = async (teacher: Page, link: string): Promise<string> => {
	await teacher.goto(link);
	await teacher.getByLabel('Your name').fill('Ms Alder');
	await teacher.getByLabel('Passphrase').fill(PASSPHRASE);
	await teacher.getByRole('button', { name: 'Become a teacher here' }).click();
	await teacher.getByLabel('Name of a new class').fill('Alder Row');
	await teacher.getByRole('button', { name: 'Begin the class' }).click();
	await teacher.getByRole('link', { name: 'Alder Row' }).click();
	return (await teacher.getByTestId('code').textContent()) ?? '';
};
