import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import DxfParser from 'dxf-parser';
import { askOf, wordsOf } from '../exports/raster.ts';
import { faults, open, tableBeyond } from './support/page.ts';

const LANGUAGES = [
	{
		at: '',
		sure: 'Show how sure each point is',
		errors: 'Large girths',
		drafted: 'Draft for size 44',
		name: 'Size 44',
		estimated: /estimated/,
		sizes: 'Choose sizes',
		save: 'Save the sheet',
		drawing: 'Drawing for a plotter (DXF)',
		on: /Sizes 38, 40, 42 and 44/,
		even: /Every seam grows alike/,
		most: 'the shoulder width (100 %)'
	},
	{
		at: '/es',
		sure: 'Mostrar cuánto puede moverse cada punto',
		errors: 'Contornos grandes',
		drafted: 'Trazar con la talla 44',
		name: 'Talla 44',
		estimated: /estimada/,
		sizes: 'Elegir tallas',
		save: 'Guardar la hoja',
		drawing: 'Dibujo para un trazador (DXF)',
		on: /Tallas 38, 40, 42 y 44/,
		even: /Cada costura crece igual/,
		most: 'el ancho de hombros (100 %)'
	}
] as const;

for (const words of LANGUAGES) {
	const { at } = words;

	test(`how sure each point is, at ${at}/drafts/back-block/print: shown by keys alone, and less sure with a worse tape`, async ({
		page
	}) => {
		await open(page, `${at}/drafts/back-block/print`);
		await page.getByRole('button', { name: words.sure }).focus();
		await page.keyboard.press('Enter');
		const row = page.getByRole('row').filter({ has: page.getByRole('button', { name: 'A', exact: true }) });
		await expect(row).toContainText('± 4');
		await expect(row).toContainText(words.most);
		await page.getByRole('button', { name: 'A', exact: true }).focus();
		await page.keyboard.press('Enter');
		await expect(page.locator('ellipse.chosen')).toHaveCount(1);
		const hem = page
			.getByRole('row')
			.filter({ hasText: /dobladillo|hem|bajo/ })
			.last();
		const before = await hem.textContent();
		await page.getByLabel(words.errors).fill('2');
		await page.keyboard.press('Tab');
		await expect(hem).not.toHaveText(before ?? '');
		expect(await faults(page, (axe) => axe.include('[aria-labelledby="how-sure"]'))).toEqual([]);
	});

	test(`a standard size at ${at}/measurements: chosen, drafted, and what is estimated says so`, async ({
		page
	}) => {
		await open(page, `${at}/measurements`);
		const sizes = page.locator('#sizes');
		await sizes.getByRole('combobox').selectOption('44');
		await sizes.getByRole('button', { name: words.drafted }).click();
		await expect(page.getByRole('radio', { name: words.name })).toBeChecked();
		await expect(sizes.getByRole('status')).toContainText(words.name);
		expect(await faults(page, (axe) => axe.include('#sizes'))).toEqual([]);
		await open(page, `${at}/drafts/back-block/print`);
		await expect(page.getByRole('main')).toContainText(words.name);
		await page.getByRole('button', { name: words.sure }).click();
		// A back length that was estimated moves the waist far more than one that was read.
		const waist = page.getByRole('row').filter({ has: page.getByRole('button', { name: 'W', exact: true }) });
		await expect(waist).toContainText(/± [45]\d mm/);
	});

	test(`several sizes on one sheet at ${at}/patterns/course-dress: saved, and read back by other programs`, async ({
		page
	}) => {
		await open(page, `${at}/patterns/course-dress`);
		const section = page.locator('#sizes');
		await section.getByRole('button', { name: words.sizes }).click();
		await section.getByRole('checkbox', { name: '44', exact: true }).check();
		await expect(section).toContainText(words.even);
		await expect(section.getByRole('img')).toBeVisible();
		expect(await tableBeyond(page, section.getByRole('table'))).toBeLessThanOrEqual(0);
		expect(await faults(page, (axe) => axe.include('#sizes'))).toEqual([]);
		const saved = async (): Promise<Buffer> => {
			const download = page.waitForEvent('download');
			await section.getByRole('button', { name: words.save }).click();
			return readFileSync(await (await download).path());
		};
		const pdf = await saved();
		expect(askOf('qpdf', pdf, '--check')).toContain('No syntax or stream encoding errors');
		expect(wordsOf(pdf).replace(/\s+/g, ' ')).toMatch(words.on);
		await section.getByRole('radio', { name: words.drawing }).check();
		const read = new DxfParser().parseSync((await saved()).toString('latin1')) as unknown as {
			readonly entities: readonly unknown[];
		};
		expect(read.entities).toHaveLength(4 * 8);
	});
}
