import { expect, test, type Page } from '@playwright/test';
import { addressIn, type Language } from '#shared/speech/language.ts';
import { speechFor } from '../support/speech.ts';
import { HERON_BACK } from './support/heron.ts';
import { expectSpanish } from './support/only-spanish.ts';
import { expectPlain, heldUp, open } from './support/page.ts';

type At = readonly [across: number, down: number];

/** Heron's back as a person works it by hand (tests/e2e/support/heron.ts), point by point. */
const RIGHT: Readonly<Record<string, At>> = Object.fromEntries(
	Object.values(HERON_BACK).flatMap((steps) =>
		Object.entries(steps).flatMap(([name, answer]) => ('point' in answer ? [[name, answer.point]] : []))
	)
);
/** A paper on which K was put 2 cm too far out, what hangs on it was drawn on from there, and V is 4 mm too low. */
const PAPER: Readonly<Record<string, At>> = {
	...RIGHT,
	O: [0, 0],
	...Object.fromEntries(['K', 'S', 'Q', 'P', 'M'].map((name) => [name, [at(name)[0] + 20, at(name)[1]]])),
	V: [at('V')[0], at('V')[1] + 4]
};

function at(name: string, of: Readonly<Record<string, At>> = RIGHT): At {
	const place = of[name];
	if (!place) throw new Error(`there is no ${name}`);
	return place;
}

const openPaper = async (page: Page, language: Language): Promise<void> => {
	await open(page, addressIn(language, '/drafts/back-block/paper'));
	await page.locator('ol input').first().waitFor();
};

/** Reads the tape between the points that each field names, to a tenth of a millimetre, by the keyboard alone. */
const measure = async (
	page: Page,
	language: Language,
	upTo = Infinity,
	spelled = (length: number, _: number): string => speechFor(language).fixed(length / 10, 2)
): Promise<number> => {
	const fields = page.locator('ol li', { has: page.locator('input') });
	const labels = await fields.locator('label').allInnerTexts();
	await fields.first().locator('input').focus();
	for (const [i, label] of labels.slice(0, upTo).entries()) {
		const [, from = '', to = ''] = /([A-Z]\d?)–([A-Z]\d?)/.exec(label) ?? [];
		const [a, b] = [at(from, PAPER), at(to, PAPER)];
		await page.keyboard.type(spelled(Math.hypot(a[0] - b[0], a[1] - b[1]), i));
		await page.keyboard.press('Enter');
	}
	return labels.length;
};

for (const language of ['en', 'es'] as const) {
	const { onPaper, tape, desk, verdicts, measured } = speechFor(language).words;

	test(`a paper draft is measured by tape, told and put onto the sheet (${language})`, async ({ page }) => {
		await openPaper(page, language);
		await page.getByLabel(tape.tapes.rule).check();
		await measure(page, language);
		await page.getByRole('heading', { name: onPaper.found }).focus();
		const told = page.getByTestId('tally');
		await expect(told).toContainText(onPaper.tally({ right: 18, open: 1, wrong: 1 }));
		const step = (name: string) => page.locator(`[data-step="${name}"]`);
		await expect(step('K')).toHaveAttribute('data-answer', 'wrong');
		await expect(step('K')).toContainText(verdicts.wrong({ step: { name: 'K' } }));
		await expect(step('V')).toHaveAttribute('data-answer', 'cannot-tell');
		await expect(step('V')).toContainText(measured.cannotTell({ step: { name: 'V' } }));
		for (const name of ['S', 'Q', 'P', 'M'])
			await expect(step(name)).toContainText(desk.fromOwn({ marks: [{ noun: { name: 'K' } }] }));
		if (language === 'es') await expectSpanish(page);
		for (const width of [1440, 360]) {
			await page.setViewportSize({ width, height: 800 });
			await expectPlain(page);
		}

		// What was read is there again after a reload; the points go onto the sheet, and the lesson goes on from them.
		await page.reload();
		await expect(told).toContainText(onPaper.tally({ right: 18, open: 1, wrong: 1 }));
		await page.getByRole('button', { name: onPaper.toSheet }).click();
		await expect(page.getByText(onPaper.putDown({ count: 20 }))).toBeVisible();
		await page.getByRole('link', { name: onPaper.goOn }).click();
		await expect(page).toHaveURL(/40-back-levels/);
		await expect(page.getByTestId('sheet').locator('[data-name="K"]')).toBeAttached();
		// What cannot be told is to be measured again: round the mark stands how surely it lies.
		await open(page, page.url().replace('40-back-levels', '43-back-side-and-hip'));
		await page.locator('#step-V').getByRole('button').click();
		await expect(page.getByTestId('sheet')).toBeInViewport({ ratio: 1 });
		await expect(page.getByTestId('verdict')).toContainText(measured.cannotTell({ step: { name: 'V' } }));
		await expect(page.getByTestId('sheet').locator('circle.guide')).toBeVisible();
	});
}

test('a reading that disagrees is named, and a few distances already find some points', async ({ page }) => {
	const { onPaper, tape } = speechFor('en').words;
	await openPaper(page, 'en');
	const count = await measure(page, 'en');
	const stands = page.getByTestId('stands');
	await expect(stands).toContainText(tape.progress({ read: count, takings: count, found: 20, points: 20 }));
	const field = page.locator('ol input').nth(5);
	const label = /([A-Z]\d?–[A-Z]\d?)/.exec(await page.locator('ol li label').nth(5).innerText())?.[1] ?? '';
	const before = await field.inputValue();
	await field.fill((Number(before) + 10).toFixed(2));
	await field.press('Enter');
	await expect(stands.locator('.misread')).toContainText(label);
	// Measured again it reads what it should, so that one of the two is wrong; alone it agrees.
	await page.locator('ol li').nth(5).locator('input').nth(1).fill(before);
	await page.locator('ol li').nth(5).locator('input').nth(1).press('Enter');
	await expect(page.locator('ol .problem').nth(5)).toContainText('The readings differ by 10 cm');
	await expect(stands.locator('.misread')).toHaveCount(0);
	await field.fill(before);
	await field.press('Enter');
	await expect(page.locator('ol .problem:not(:empty)')).toHaveCount(0);
	await expect(stands).toContainText(tape.progress({ read: count, takings: count, found: 20, points: 20 }));
	// Something that is no length is said at its field, and nothing else is lost.
	await field.fill('a lot');
	await field.press('Enter');
	await expect(page.locator('ol .problem').nth(5)).not.toBeEmpty();
	await expect(page.getByTestId('tally')).toBeVisible();
	await page.getByRole('button', { name: tape.clear }).click();
	await page.getByRole('button', { name: tape.reallyClear }).click();
	await expect(page.getByTestId('tally')).toHaveCount(0);
	// In inches, as such a tape has them, and as people write them.
	await page.locator('select:has(option[value=in])').selectOption('in');
	await measure(page, 'en', 12, (length, i) => {
		const sixteenths = Math.round((length / 25.4) * 16);
		return `${String(Math.floor(sixteenths / 16))}${i % 2 ? '-' : ' '}${String(sixteenths % 16)}/16`;
	});
	await expect(page.locator('ol .problem:not(:empty)')).toHaveCount(0);
	await expect(stands.locator('.misread')).toHaveCount(0);
	await expect(stands).not.toContainText(tape.progress({ read: 12, takings: count, found: 0, points: 20 }));
	await expect(page.getByRole('heading', { name: onPaper.found })).toBeVisible();
	// On a small screen the distance at hand is seen beside its field, however far down the list.
	await page.setViewportSize({ width: 360, height: 740 });
	await page.locator('ol li input').nth(30).focus();
	const [low, at] = [
		await page.locator('.low').boundingBox(),
		await page.locator('ol li input').nth(30).boundingBox()
	];
	expect(low?.y).toBeCloseTo(0, 0);
	expect(at?.y).toBeGreaterThanOrEqual((low?.y ?? 0) + (low?.height ?? Infinity));
	expect((at?.y ?? Infinity) + (at?.height ?? 0)).toBeLessThanOrEqual(740);
	await expect(page.locator('.low p')).toContainText(/31 [A-Z]/);
	await page.getByLabel(tape.sides.left).check();
	await expect(page.getByTestId('mirrored')).toHaveText(tape.mirrored);
	// Another body is not judged by these readings, though what measures it is still on its way.
	await heldUp(page);
	await page.getByLabel(onPaper.ways.photograph).check();
	await page.locator('main select').last().selectOption('plover');
	await expect(page.getByText(onPaper.waiting)).toBeVisible();
	await expect(page.getByRole('heading', { name: onPaper.found })).toHaveCount(0);
});

test('the distances are saved as a sheet to write on', async ({ page }) => {
	await openPaper(page, 'en');
	const download = page.waitForEvent('download');
	await page.getByRole('button', { name: speechFor('en').words.files.saveSheet({ sheet: 'tape' }) }).click();
	expect((await download).suggestedFilename()).toMatch(/^Tape sheet, The back block.*\.pdf$/);
});
