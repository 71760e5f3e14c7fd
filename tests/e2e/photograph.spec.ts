import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, expect, test, type Page } from '@playwright/test';
import { CHOSEN, CHROMIUM_SWITCHES } from '../support/chromium.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';
import { photographed, type Photographed } from '../photograph/paper-draft.ts';
import type { PicturePoint } from '#photograph/picture.ts';
import { METHODS } from './support/finished.ts';
import { cornerMarkers } from '../photograph/scene.ts';
import { paperPiece } from './support/paper-piece.ts';
import { heronsDraft } from './support/slips.ts';
import { turnedFile } from './support/turned-file.ts';
import { beyond, faults, open } from './support/page.ts';

const BACK = METHODS.find(({ id }) => id === 'back-block');
if (!BACK) throw new Error('there is a back block');
const DRAFT = heronsDraft(BACK);
const SMALL = { width: 1800, height: 2400 };

const { photograph: words } = english.words;

let folder = '';
let taken: Photographed;
test.beforeAll(() => {
	folder = mkdtempSync(path.join(tmpdir(), 'square-across-'));
	taken = photographed({ draft: DRAFT, off: { U: [8, 0] } }, SMALL);
	writeFileSync(path.join(folder, 'draft.jpg'), taken.file);
	// A picture that begins well and stops short; and a file that is none.
	writeFileSync(path.join(folder, 'half.jpg'), taken.file.subarray(0, 900));
	writeFileSync(
		path.join(folder, 'words.jpg'),
		'This is no picture at all, though its name says so. Indeed not.'
	);
	writeFileSync(
		path.join(folder, 'new.heic'),
		Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic0000mif1heic'), Buffer.alloc(400)])
	);
	// The head of a PNG of 40,000 by 40,000 pixels.
	const head = Buffer.alloc(60);
	Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]).copy(head);
	head.write('IHDR', 12);
	head.writeUInt32BE(40_000, 16);
	head.writeUInt32BE(40_000, 20);
	writeFileSync(path.join(folder, 'vast.png'), head);
});
test.afterAll(() => rmSync(folder, { recursive: true }));

const openAt = async (page: Page, language: '' | '/es'): Promise<void> => {
	await page.goto(`${language}/drafts/back-block/paper`);
	await page.getByRole('radio', { name: language ? /foto/i : 'By photograph' }).check();
	await expect(page.locator('input[type=file]')).toBeAttached();
};

const choose = (page: Page, file: string): Promise<void> =>
	page.locator('input[type=file]').setInputFiles(path.join(folder, file));

/** Presses a place of the picture. */
const press = async (page: Page, { u, v }: PicturePoint): Promise<void> => {
	const picture = page.getByTestId('picture');
	await picture.scrollIntoViewIfNeeded();
	const box = await picture.boundingBox();
	if (!box) throw new Error('there is a picture');
	await picture.click({
		position: { x: (u / SMALL.width) * box.width, y: (v / SMALL.height) * box.height }
	});
};

/** Chooses what has a sign in the list, presses near it in the picture, and takes the crossing that is offered. */
const tap = async (page: Page, sign: string, place = taken.points[sign]): Promise<void> => {
	await page.locator('.near fieldset label', { hasText: new RegExp(`^\\s*${sign}(?![0-9])`) }).click();
	if (!place) throw new Error(`there is no ${sign}`);
	await press(page, place);
	await page.getByTestId('crossing').click();
};

const POINTS = ['O', 'A', 'W', 'H', 'S', 'Q', 'U', 'J'];

for (const language of ['', '/es'] as const)
	test(`a draft on paper is checked in a photograph, and nothing is sent, ${language || '/en'}`, async ({
		page
	}) => {
		await openAt(page, language);
		const sent: string[] = [];
		page.on('request', (request) => {
			if (request.method() !== 'GET' || request.postData() !== null) sent.push(request.url());
		});
		await choose(page, 'draft.jpg');
		await expect(page.getByTestId('reading')).toContainText(
			language ? 'Se han encontrado 4 marcas' : '4 markers were found'
		);
		for (const name of POINTS) await tap(page, name);
		await expect(page.getByTestId('tally')).toContainText(
			language ? '6 puntos están bien' : '6 points are right and 1 is not right'
		);
		await expect(page.locator('[data-step=U]')).toContainText('8 mm');
		// The computed draft is drawn where the paper's own lines are.
		await expect(page.locator('polyline[data-line=armhole]')).toHaveCount(1);
		expect(await faults(page, (axe) => axe)).toEqual([]);
		expect(sent).toEqual([]);
		expect(await beyond(page)).toBeLessThanOrEqual(0);
	});

test('the loupe goes by keys and by typing alone, and a curve is tapped along its way', async ({ page }) => {
	await page.setViewportSize({ width: 360, height: 800 });
	await openAt(page, '');
	await choose(page, 'draft.jpg');
	for (const name of ['O', 'A', 'H']) await tap(page, name);
	// The next point is looked for where it should be: a step there and back with the keys puts it down.
	await page.locator('.near fieldset label', { hasText: /^\s*W(?![0-9])/ }).click();
	await page.getByTestId('loupe').focus();
	await page.keyboard.press('ArrowRight');
	await page.keyboard.press('Shift+ArrowDown');
	await page.keyboard.press('Shift+ArrowUp');
	await expect(page.getByText('Put by hand.').or(page.getByTestId('crossing'))).toBeVisible();
	await page.getByLabel('To the right, mm').fill('20');
	await page.getByLabel('Down, mm').press('Enter');
	await page.getByRole('button', { name: 'Move', exact: true }).focus();
	await expect(page.locator('[data-step=W]')).toContainText('not right');
	await expect(page.locator('[data-step=W]')).toContainText(/(19|20|21) mm/);

	await page.getByRole('radio', { name: 'curves, along their way' }).check();
	await page.locator('.which select').selectOption({ label: 'The armhole' });
	const armhole = DRAFT.lines['armhole']?.path;
	if (!armhole) throw new Error('there is an armhole');
	const places = [0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => taken.along(armhole, share));
	for (const [i, place] of places.entries()) {
		await press(page, place);
		await expect(page.locator('.near fieldset label')).toHaveCount(i + 2);
	}
	await expect(page.getByTestId('curve')).toContainText(/At most [0-3]\.\d mm from the computed line/);
	// Within its tolerance as it was tapped, by a finger on a small screen: too near to tell.
	await expect(page.locator('[data-step=armhole]')).toHaveAttribute('data-answer', 'cannot-tell');
});

for (const [file, says, turn] of [
	['half.jpg', 'cannot be read: the file is damaged', 3],
	['words.jpg', 'is no picture that can be read', 5],
	['new.heic', 'kept as HEIC', 6],
	['vast.png', 'more than 60 megapixels', 8]
] as const)
	test(`${file} gets a clear answer, and the next picture is read, turned as its notes say (${String(turn)})`, async ({
		page
	}) => {
		await openAt(page, '');
		await choose(page, file);
		await expect(page.locator('.take [role=alert]').last()).toContainText(says);
		const turned = `turned-${String(turn)}.jpg`;
		writeFileSync(path.join(folder, turned), turnedFile(taken.file, turn));
		await choose(page, turned);
		await expect(page.getByTestId('reading')).toContainText('4 markers were found');
		for (const name of ['O', 'A', 'H', 'U']) await tap(page, name);
		await expect(page.getByTestId('tally')).toContainText('2 points are right and 1 is not right');
		await expect(page.locator('[data-step=U]')).toContainText('8 mm');
	});

test('markers that were printed at 97 % put everything wrong until their check line is typed', async ({
	page
}) => {
	const small = photographed({ draft: DRAFT, markers: cornerMarkers(0.97 * 70, 0) }, SMALL);
	writeFileSync(path.join(folder, 'small.jpg'), small.file);
	await openAt(page, '/es');
	const { photograph: said, onPaper } = speechFor('es').words;
	await choose(page, 'small.jpg');
	await expect(page.getByTestId('reading')).toContainText('Se han encontrado 4 marcas');
	for (const name of ['O', 'A', 'H', 'U']) await tap(page, name, small.points[name]);
	await expect(page.locator('[data-step=H]')).toHaveAttribute('data-answer', 'wrong');
	await page.getByLabel(said.check).fill('14,55');
	await page.getByLabel(said.check).press('Enter');
	await expect(page.getByText(said.outOfScale({ percent: -3 }))).toBeVisible();
	await expect(page.getByTestId('tally')).toContainText(onPaper.tally({ right: 3, open: 0, wrong: 0 }));
});

test('a cut piece is checked at its corners and notches, and along its curved edges', async ({ page }) => {
	const piece = madeFor(garmentOf('course-dress'), bodyOf('heron')).pieces.find(({ key }) => key === 'back');
	if (!piece) throw new Error('there is a back');
	// The armhole, from corner 3 on, was cut 8 mm too deep.
	const { picture, cut, names } = paperPiece(piece, { 3: 8 }, SMALL);
	writeFileSync(path.join(folder, 'piece.jpg'), picture.file);
	await open(page, '/patterns/course-dress');
	await page.getByText(english.words.pattern.checkPiece).click();
	await page
		.locator('.which select')
		.first()
		.selectOption({ label: `${piece.number} ${piece.name}` });
	await choose(page, 'piece.jpg');
	await expect(page.getByTestId('reading')).toContainText('4 markers were found');
	expect(names).toContain('notch 1');
	for (const name of ['corner 1', 'corner 2', 'corner 3', 'corner 4', 'notch 1']) {
		const [kind, number = ''] = name.split(' ');
		await tap(page, kind === 'notch' ? `▸${number}` : number, picture.points[name]);
	}
	const found = page.getByTestId('piece-found').locator('li');
	await expect(found.filter({ hasText: /(corner|notch) \d: right \(0\.\d mm off/ })).toHaveCount(5);
	await expect(found.filter({ hasText: 'From corner 2 to corner 3: as long as computed.' })).toHaveCount(1);

	await page.getByRole('radio', { name: words.pieceWhats.curves }).check();
	const curve = page.getByLabel(words.lines);
	for (const [title, from] of [
		['From corner 1 to corner 2: neckline', 1],
		['From corner 3 to corner 4: armhole', 3]
	] as const) {
		await curve.selectOption({ label: title });
		const edge = cut[from];
		if (!edge) throw new Error('it is curved');
		for (const i of [0, 1, 2, 3, 4]) {
			await press(page, picture.along(edge, i / 4));
			await expect(page.locator('.near fieldset label')).toHaveCount(i + 2);
		}
	}
	await expect(found.filter({ hasText: 'neckline: right (± 1' })).toContainText('as long; as hollow');
	await expect(found.filter({ hasText: 'armhole: not right (± 1' })).toContainText(
		/At most [78]\.\d mm from the computed line; \d+\.\d mm longer; [678]\.\d mm deeper/
	);
	expect(await beyond(page)).toBeLessThanOrEqual(0);
});

test('without markers four points and their distances do', async ({ page }) => {
	const bare = photographed({ draft: DRAFT, markers: [] }, SMALL);
	writeFileSync(path.join(folder, 'bare.jpg'), bare.file);
	await openAt(page, '');
	await choose(page, 'bare.jpg');
	await expect(page.getByTestId('reading')).toContainText('No markers were found');
	const corners = { A: [0, 0], B: [594, 0], C: [594, 841], D: [0, 841] } as const;
	for (const [name, [x, y]] of Object.entries(corners)) {
		await page.locator('.near fieldset label', { hasText: new RegExp(`^\\s*${name}`) }).click();
		await press(page, bare.seen({ x, y }));
	}
	const lengths = { AB: 59.4, BC: 84.1, CD: 59.4, DA: 84.1, AC: 102.96 };
	for (const [pair, length] of Object.entries(lengths)) {
		const field = page.getByLabel(`${pair.slice(0, 1)} to ${pair.slice(1)}`);
		await field.fill(String(length));
		await field.blur();
	}
	await expect(page.getByTestId('reading')).toContainText('The four points agree');
	await expect(page.getByRole('heading', { name: 'Tap your points' })).toBeVisible();
});

test('a sheet of markers is made', async ({ page }) => {
	await openAt(page, '');
	const download = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Make the markers (PDF)' }).click();
	expect((await download).suggestedFilename()).toContain('Markers for a photograph');
});

test('the camera is used live, and the sharpest of ten pictures is read', async ({ baseURL }) => {
	// A film of one picture after another, as browsers take one in place of a camera: pictures of JPEG in a row.
	const film = path.join(folder, 'film.mjpeg');
	const wide = photographed({ draft: DRAFT, off: { U: [8, 0] } }, { width: 1440, height: 1920 });
	writeFileSync(film, Buffer.concat(new Array<Buffer>(4).fill(wide.file)));
	const browser = await chromium.launch({
		...(process.env[CHOSEN] ? { executablePath: process.env[CHOSEN] } : {}),
		args: [
			...CHROMIUM_SWITCHES,
			'--use-fake-ui-for-media-stream',
			'--use-fake-device-for-media-stream',
			`--use-file-for-fake-video-capture=${film}`
		]
	});
	try {
		const context = await browser.newContext({ baseURL: baseURL ?? '', permissions: ['camera'] });
		const page = await context.newPage();
		await openAt(page, '');
		await page.getByRole('button', { name: 'Use the camera' }).click();
		const take = page.getByRole('button', { name: 'Hold still, and take it' });
		await expect(take).toHaveAttribute('aria-disabled', 'false');
		await take.click();
		await expect(page.getByTestId('reading')).toContainText('4 markers were found');
		await expect(page.getByTestId('picture')).toBeVisible();
	} finally {
		await browser.close();
	}
});
