import { english, speechFor } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import type { Body } from '#shared/body.ts';
import { ruleSheetPdf, type RuleSheet } from '#exports/pdf/rule-sheet.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { bodyOf } from '../garment/garment-files.ts';
import { askOf } from './raster.ts';
import { fileOptions, pageTexts, placedWords, plain } from './sheet-options.ts';

const HERON = bodyOf('heron');
const sheetOf = (method = backBlock()): RuleSheet => ({
	method,
	body: HERON,
	draft: draftOf(method, HERON),
	speech: english
});
const textOf = async (sheet: RuleSheet): Promise<string> =>
	placedWords(await ruleSheetPdf(sheet, fileOptions('Rules')))
		.map(({ text }) => text)
		.join(' ');

describe('a rule sheet', () => {
	it('lists the measurements and the allowances that its rules name, with this body’s numbers', async () => {
		const pages = plain(pageTexts(await ruleSheetPdf(sheetOf(), fileOptions('Rules'))).join(' '));
		expect(pages).toContain('Shoulder width: across the back, shoulder point to shoulder point 38.4 cm');
		expect(pages).toContain('Armhole drop 3 cm');
		expect(pages).not.toContain('Bust span');
		expect(pages).not.toContain('Front neck drop');
	});

	it('says of a measurement that no tape took how it came about', async () => {
		const sheet = sheetOf();
		const body: Body = { ...HERON, supposed: { shoulderWidth: 'estimated', backLength: 'workedOut' } };
		const pages = plain(pageTexts(await ruleSheetPdf({ ...sheet, body }, fileOptions('Rules'))).join(' '));
		expect(pages).toContain('shoulder point to shoulder point 38.4 cm, estimated');
		expect(pages).toContain('42.5 cm, worked out');
	});

	it('has the arithmetic of a step as it is worked by hand', async () => {
		// Half of 38.4 is 19.2; with the usual armhole drop of 3 that is 22.2.
		const sheet = { ...sheetOf(), steps: ['A'] };
		const text = await textOf(sheet);
		const words = (phrase: string): readonly string[] => phrase.split(' ');
		for (const word of words('half the shoulder width + 3 = 19.2 22.2 cm'))
			expect(text.split(' ')).toContain(word);
	});

	it('has a row for every step that the body’s draft has', async () => {
		for (const method of [backBlock(), frontBlock()]) {
			const sheet = sheetOf(method);
			const text = await textOf(sheet);
			for (const name of Object.keys(sheet.draft.points)) expect(text).toContain(`${name}:`);
		}
	});

	it('of a lesson has only its steps, and the measurements that they name', async () => {
		const text = await textOf({ ...sheetOf(), steps: ['O', 'A'] });
		expect(text).toContain('A:');
		expect(text).not.toContain('W:');
		expect(text).toContain('38.4');
		expect(text).not.toContain('Hip');
	});

	it('a step that the method does not have is named', () => {
		expect(refusalOf(() => ruleSheetPdf({ ...sheetOf(), steps: ['Z9'] }, fileOptions('Rules')))).toContain(
			'has no step "Z9"'
		);
	});

	it('allowances that were chosen stand in it, and the sums follow them', async () => {
		const chosen = { armholeDrop: 50 } as unknown as NonNullable<RuleSheet['chosen']>;
		const text = await textOf({ ...sheetOf(), chosen, steps: ['A'] });
		// 19.2 and 5 are 24.2.
		expect(text).toContain('24.2 cm');
	});

	it('in inches has its fractions set as fractions', async () => {
		// 38.4 cm are 15 1/8 inches to a sixteenth: 15.118.
		const pages = pageTexts(
			await ruleSheetPdf({ ...sheetOf(), speech: speechFor('en', 'in') }, fileOptions('Rules'))
		);
		expect(pages.join(' ')).toContain('15 1\u20448″');
	});

	it('names the columns on every page, is sound, and the same input gives the same bytes', async () => {
		const bytes = await ruleSheetPdf(sheetOf(frontBlock()), fileOptions('Rules'));
		for (const page of pageTexts(bytes)) expect(page).toContain('Worked');
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax or stream encoding errors found');
		const again = await ruleSheetPdf(sheetOf(frontBlock()), fileOptions('Rules'));
		expect(Buffer.from(bytes).equals(Buffer.from(again))).toBe(true);
	});
});
