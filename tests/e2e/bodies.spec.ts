import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { speechFor } from '../support/speech.ts';
import type { Language } from '#shared/speech/language.ts';
import { MEASUREMENT_KEYS, NEEDED_KEYS, type MeasurementKey } from '#shared/measurements.ts';
import { expectPlain, open } from './support/page.ts';

/** The page of measurements, in a language. */
class BodyPage {
	readonly words;
	constructor(
		readonly page: Page,
		readonly language: Language
	) {
		this.words = speechFor(language).words;
	}

	async open(): Promise<void> {
		await open(this.page, this.language === 'en' ? '/measurements' : '/es/measurements');
	}

	field(key: MeasurementKey) {
		return this.page.getByLabel(this.words.nouns.measurements[key].title, { exact: true });
	}

	async type(key: MeasurementKey, text: string): Promise<void> {
		await this.field(key).fill(text);
		await this.page.keyboard.press('Tab');
	}

	button(name: string) {
		return this.page.getByRole('button', { name });
	}

	async openFile(name: string, text: string): Promise<void> {
		await this.page
			.getByLabel(this.words.measurements.open)
			.setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
	}
}

/** Heron's numbers as a tape in inches shows them; the hip was read 10 inches short. */
const INCHES: Readonly<Partial<Record<MeasurementKey, string>>> = {
	bust: '37 3/4',
	waist: '30 3/4',
	hip: '30 1/4',
	neck: '14 1/2',
	shoulderWidth: '15 1/8',
	backLength: '16 3/4',
	waistToHip: '8 1/8',
	frontLength: '17 7/8',
	bustHeight: '10 3/8',
	bustSpan: '7 5/8'
};

for (const language of ['en', 'es'] as const) {
	test(`${language}: a body in inch fractions with one slipped reading: asked about, put right, drafted`, async ({
		page
	}) => {
		const body = new BodyPage(page, language);
		const { measurements, bodies, desk } = body.words;
		await body.open();
		await body.button(measurements.addOwn).click();
		await page.locator('select:has(option[value=in])').selectOption('in');
		for (const key of NEEDED_KEYS) await body.type(key, INCHES[key] ?? '');
		const inches = speechFor(language, 'in').words.doubts;
		const doubt = page.locator('.doubt');
		await expect(doubt).toHaveCount(1);
		await expect(doubt).toContainText(inches.slipped({ slip: 'less' }));
		await doubt.getByRole('button', { name: '40 1/4' }).click();
		await expect(doubt).toHaveCount(0);
		await expect(body.field('hip')).toHaveValue('40 1/4');
		await expect(page.getByText(bodies.allWell({ count: 10 }))).toBeVisible();
		await expect(page.getByText(measurements.allTaken)).toBeVisible();
		await page.goto(`${language === 'es' ? '/es' : ''}/lessons/40-back-levels`);
		await expect(page.getByText(desk.missing)).toHaveCount(0);
		await expect(page.getByText('15 1/8″').first()).toBeVisible();
	});

	test(`${language}: a second reading, an estimate and a worked-out length are kept and said to be so`, async ({
		page
	}) => {
		const body = new BodyPage(page, language);
		const { measurements, bodies, input } = body.words;
		await body.open();
		await body.button(measurements.addOwn).click();
		const cm: Readonly<Partial<Record<MeasurementKey, string>>> = {
			bust: '96',
			waist: '78',
			hip: '102',
			neck: '37',
			shoulderWidth: '38,4',
			waistToHip: '20.5'
		};
		for (const [key, text] of Object.entries(cm)) await body.type(key as MeasurementKey, text);
		await page.getByText(bodies.details).first().click();
		await page.getByLabel(bodies.second, { exact: true }).fill('97');
		await page.keyboard.press('Tab');
		await expect(body.field('bust')).toHaveValue('96.5');
		await page.getByText(measurements.more).click();
		await body.type('napeToWaist', '40,5');
		await body.button(bodies.useWorkedOut).click();
		await expect(body.field('backLength')).toHaveValue('42.5');
		await page.goto(`${language === 'es' ? '/es' : ''}/lessons/40-back-levels`);
		const how = input.supposed({ value: language === 'es' ? '42,5 cm' : '42.5 cm', how: 'workedOut' });
		await expect(page.getByText(how).first()).toBeVisible();
	});

	test(`${language}: ten damaged or hostile files are refused with the place, and nothing is written over`, async ({
		page
	}) => {
		const body = new BodyPage(page, language);
		const { measurements } = body.words;
		await body.open();
		await body.openFile('teal.json', '{"name": "Teal", "bust": 96, "remarks": "kept"}');
		await expect(page.getByRole('heading', { level: 2, name: 'Teal' })).toBeVisible();
		const kept = (): Promise<string | null> =>
			page.evaluate(() => localStorage.getItem('square-across.bodies'));
		const before = await kept();
		expect(before).toContain('Teal');
		const damaged: readonly (readonly [text: string, place: string])[] = [
			['{"name": "Teal", "bust"', ''],
			['[]', 'body'],
			['{"bust": "wide"}', 'bust'],
			['{"bust": 9600}', 'bust'],
			['{"unit": "ell", "bust": 96}', 'unit'],
			['{"bist": 96}', 'bist'],
			['{"__proto__": {"bust": 1}, "bust": {"a": 1}}', ''],
			['{"readings": {"bust": [96, "x"]}}', 'readings.bust'],
			['{"supposed": {"bust": "guessed"}}', 'supposed.bust'],
			['{"sides": {"left": {"bust": 90}}}', 'sides.left'],
			[`{"name": "${'x'.repeat(120_000)}"}`, ''],
			['{"unit": "in", "bust": 96, "waist": 78, "hip": 102}', 'unit'],
			['['.repeat(50_000), '']
		];
		for (const [i, [text, place]] of damaged.entries()) {
			await body.openFile(`damaged-${String(i)}.json`, text);
			const said = page.getByRole('status').filter({ hasText: `damaged-${String(i)}.json` });
			await expect(said).toContainText(
				measurements.notOpened({ file: `damaged-${String(i)}.json`, clause: '' }).replace(/[:.]\s*\.?$/, '')
			);
			if (place !== '') await expect(said).toContainText(place);
		}
		expect(await kept()).toBe(before);
	});
}

test('no measurement leaves the browser while a body is entered, drafted with, checked and saved as files', async ({
	page
}) => {
	const body = new BodyPage(page, 'en');
	const { measurements } = body.words;
	const sent: string[] = [];
	page.on('request', (request) => {
		sent.push(
			[request.method(), request.url(), request.postData() ?? '', JSON.stringify(request.headers())].join(' ')
		);
	});
	page.on('websocket', (socket) => sent.push(`socket ${socket.url()}`));
	await body.open();
	await body.button(measurements.addOwn).click();
	// Numbers that stand nowhere else, in no address, hash or header.
	const own: Readonly<Partial<Record<MeasurementKey, string>>> = {
		bust: '97.31',
		waist: '79.17',
		hip: '103.37',
		neck: '37.19',
		shoulderWidth: '38.43',
		backLength: '42.57',
		waistToHip: '20.53'
	};
	for (const [key, text] of Object.entries(own)) await body.type(key as MeasurementKey, text);
	const download = page.waitForEvent('download');
	await body.button(measurements.save).click();
	const saved = readFileSync(await (await download).path(), 'utf8');
	for (const text of Object.values(own)) expect(saved).toContain(text);
	await open(page, '/lessons/40-back-levels');
	await page.locator('.dock input').first().fill('from O down 38.43/2+3');
	await page.keyboard.press('Enter');
	await open(page, '/drafts/back-block/print');
	const file = page.waitForEvent('download');
	await page.getByRole('button', { name: /PDF/ }).first().click();
	await file;
	// Exercises are for invented bodies, whatever the learner's own is.
	await open(page, '/practice');
	for (const text of Object.values(own)) await expect(page.locator('main')).not.toContainText(text);
	expect(sent.length).toBeGreaterThan(5);
	for (const request of sent) expect(request).toMatch(/^GET http:\/\/localhost:/);
	const numbers = Object.values(own).flatMap((text) => [text, text.replace('.', '')]);
	expect(sent.filter((request) => numbers.some((number) => request.includes(number)))).toEqual([]);
});

for (const language of ['en', 'es'] as const)
	test(`${language}: a body that is being entered, and the card to print, are free of what axe can find; a body is duplicated`, async ({
		page
	}) => {
		const body = new BodyPage(page, language);
		const { measurements, bodies } = body.words;
		await page.setViewportSize({ width: 360, height: 800 });
		await body.open();
		await body.button(measurements.addOwn).click();
		// Waist and hip in each other's fields.
		const cm = { bust: '96', waist: '102', hip: '78', neck: '37', shoulderWidth: '38,4', backLength: '42,5' };
		for (const [key, text] of Object.entries(cm)) await body.type(key as MeasurementKey, text);
		await page.getByText(bodies.details).first().click();
		await page.getByText(bodies.sides).click();
		await expect(page.locator('.doubt')).toHaveCount(1);
		await expectPlain(page);
		await body.button(body.words.doubts.swap).click();
		await expect(body.field('waist')).toHaveValue('78');
		await expect(body.field('hip')).toHaveValue('102');
		await expect(page.locator('.doubt')).toHaveCount(0);
		await page.getByRole('textbox', { name: bodies.remarks }).fill('Teal');
		await body.button(bodies.duplicate).click();
		await expect(page.getByRole('textbox', { name: measurements.name })).toHaveValue(/ 2$/);
		await expect(body.field('hip')).toHaveValue('102');
		await body.button(bodies.card).click();
		await expect(page.locator('.card li')).toHaveCount(MEASUREMENT_KEYS.length);
		await expect(page.locator('.card .box')).toHaveCount(2 * MEASUREMENT_KEYS.length);
		await expectPlain(page);
		await body.button(bodies.back).click();
		await expect(body.field('hip')).toHaveValue('102');
	});
