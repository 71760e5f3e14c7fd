import { describe, expect, it } from 'vitest';
import type { Body } from '#shared/body.ts';
import { classSheetsPdf } from '#exports/pdf/class-sheets.ts';
import { ruleSheetPdf } from '#exports/pdf/rule-sheet.ts';
import { stepCardsPdf } from '#exports/pdf/step-cards.ts';
import { worksheetPdf } from '#exports/pdf/worksheet.ts';
import type { WorkedMethod } from '#exports/pdf/body-words.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { bodyOf } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';
import { askOf } from './raster.ts';
import { fileOptions, pageTexts, plain } from './sheet-options.ts';

const worked = (name: string, body: Body, speech = english): WorkedMethod => {
	const method = backBlock();
	return { method, body: { ...body, name }, draft: draftOf(method, body), speech };
};
const ADA = worked('Ada (Heron)', bodyOf('heron'));
const BEA = worked('Bea (Wren)', bodyOf('wren'));
const SHEETS = ['worksheet', 'rules', 'cards'] as const;
const options = { ...fileOptions('Sheets of the class'), share: 1 / 4 };

describe('the sheets of a class', () => {
	it('are those of each learner, one after the other, in one sound file that is the same each time', async () => {
		const told: string[] = [];
		const onSheet = (done: number, of: number) => told.push(`${done}/${of}`);
		const bytes = await classSheetsPdf([ADA, BEA], { ...options, sheets: SHEETS, onSheet });
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax or stream encoding errors found');
		expect(told).toEqual(['1/6', '2/6', '3/6', '4/6', '5/6', '6/6']);
		expect(await classSheetsPdf([ADA, BEA], { ...options, sheets: SHEETS })).toEqual(bytes);

		const singly: string[] = [];
		for (const work of [ADA, BEA]) {
			const titled = (sheet: (typeof SHEETS)[number]) => ({
				...options,
				title: english.words.files.sheetTitle({ sheet, method: work.method.name })
			});
			const files = [
				await worksheetPdf(work, { ...titled('worksheet'), worked: false }),
				await ruleSheetPdf(work, titled('rules')),
				await stepCardsPdf(work, titled('cards'))
			];
			singly.push(...files.flatMap((file) => pageTexts(file).map(plain)));
		}
		const pages = pageTexts(bytes).map(plain);
		expect(pages).toEqual(singly);
		const first = pages.findIndex((page) => page.includes('Bea (Wren)'));
		expect(first).toBe(pages.length / 2);
	});

	it('have a card for each step, with its rule and room for the number, in the learner’s language', async () => {
		const ana = worked('Ana (Heron)', bodyOf('heron'), speechFor('es'));
		const text = plain(
			pageTexts(await stepCardsPdf(ana, { ...options, title: 'Fichas de los pasos' })).join(' ')
		);
		expect(text).toContain('Recorta las fichas');
		const { points } = ana.draft;
		for (const step of ana.method.steps)
			if (step.name in points && step.name !== 'O') expect(text).toContain(`${step.name}:`);
		// Whoever holds a card works the number: half of 38.4 and 3 are 22.2.
		expect(text).toContain('38,4');
		expect(text).not.toContain('22,2');
	});
});
