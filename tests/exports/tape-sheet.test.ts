import { describe, expect, it } from 'vitest';
import { tapeSheetPdf } from '#exports/pdf/tape-sheet.ts';
import { planOf } from '#tape/plan.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { bodyOf } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';
import { fileOptions, pageTexts, placedWords, plain } from './sheet-options.ts';

const HERON = bodyOf('heron');

describe('a tape sheet', () => {
	it.each([backBlock(), frontBlock()])(
		'of $id has every distance in order, after a figure with every point',
		async (method) => {
			const draft = draftOf(method, HERON);
			const plan = planOf(method, draft);
			const bytes = await tapeSheetPdf(
				{ method, body: HERON, draft, speech: english },
				fileOptions('Tape sheet')
			);
			const [figure = '', ...pages] = pageTexts(bytes).map(plain);
			for (const name of plan.points) expect(figure.split(/\s+/)).toContain(name);
			const table = pages.join(' ');
			for (const { from, to } of plan.takings) expect(table.replaceAll(' ', '')).toContain(`${from}–${to}`);
			expect(table).toContain('The tape reads');
			// Nothing of what it should read is given away.
			expect(placedWords(bytes).some(({ text }) => /\d cm/.test(text))).toBe(false);
		}
	);

	it('speaks Spanish, and is the same file again for the same draft', async () => {
		const method = backBlock();
		const work = { method, body: HERON, draft: draftOf(method, HERON), speech: speechFor('es') };
		const [one, other] = await Promise.all(
			[1, 2].map(() => tapeSheetPdf(work, fileOptions('Hoja de cinta')))
		);
		expect(
			pageTexts(one ?? new Uint8Array())
				.map(plain)
				.join(' ')
		).toContain('La cinta marca');
		expect(one).toEqual(other);
	});
});
