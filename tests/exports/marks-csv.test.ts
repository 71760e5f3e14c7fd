import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import type { Verdict } from '#shared/verdict.ts';
import { marksCsv } from '#exports/table/marks-csv.ts';
import { english, speechFor } from '../support/speech.ts';

/** What a spreadsheet takes for a formula, or for the beginning of one (OWASP, CSV Injection: = + - @, tab, carriage return). */
const DANGEROUS = ['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '=HYPERLINK("http://x.example";"x")'];

const RIGHT: Verdict = { answer: 'right', findings: [] };

const learner = (name: string, of: Verdict = RIGHT) => ({
	name,
	received: 12,
	seen: {
		late: 0,
		total: { mark: 1.5, outOf: 2 },
		steps: [
			{ method: 'back-block', step: 'A', verdict: of, mark: 0.75, tries: 2 },
			{ method: 'back-block', step: 'W', verdict: RIGHT, mark: 0.75, tries: 0 }
		],
		overrides: [
			{ method: 'back-block', step: 'A', mark: 0.5, back: 1 },
			{ method: 'back-block', step: 'W', mark: 1, back: null }
		]
	}
});
const STEPS = [
	{ method: 'back-block', step: 'A', heading: 'A, armhole level' },
	{ method: 'back-block', step: 'W', heading: '=W' }
];
const read = (text: string, delimiter: string): string[][] => parse(text, { bom: true, delimiter });

describe('marks for a spreadsheet', () => {
	it('are read back by another program, with the marks that count', () => {
		const text = marksCsv(
			[learner('Inés'), { name: 'Bea', received: 0, seen: undefined }],
			STEPS,
			english,
			'point'
		);
		expect(text.startsWith('\uFEFF')).toBe(true);
		expect(read(text, ',')).toEqual([
			['Learner', 'Mark', 'Out of', 'Wrong tries', 'Handed in', 'Late', 'A, armhole level', "'=W"],
			['Inés', '1.5', '2', '2', '12', '0', '0.75', '1'],
			['Bea', '', '', '', '0', '0', '', '']
		]);
	});

	it('say in words what is to be measured again, where no teacher gave a mark', () => {
		const open: Verdict = { answer: 'cannot-tell', findings: [], error: mm(1) };
		const rows = read(marksCsv([learner('Inés', open)], STEPS, english, 'point'), ',');
		expect(rows[1]?.slice(6)).toEqual(['to be measured again', '1']);
	});

	it('have decimal commas, and semicolons between, where that is wanted', () => {
		const rows = read(marksCsv([learner('Inés; Bea')], STEPS, speechFor('es'), 'comma'), ';');
		expect(rows[1]).toEqual(['Inés; Bea', '1,5', '2', '2', '12', '0', '0,75', '1']);
	});

	it.each(DANGEROUS)(
		'never begin a cell with %j, whichever sign parts the cells for who opens them',
		(name) => {
			const heading = [{ ...STEPS[0], method: 'm', step: 's', heading: name }];
			for (const [decimal, own] of [
				['point', ','],
				['comma', ';']
			] as const) {
				const text = marksCsv([learner(name)], heading, english, decimal);
				const cells = read(text, own).flat();
				expect(cells).toContain(`'${name}`);
				// Opened by another sign than it was written with, no piece of a cell stands alone.
				for (const line of text.slice(1).split('\r\n'))
					for (const sign of [',', ';', '\t'])
						for (const piece of line.split(sign)) expect(piece).not.toMatch(/^[=+\-@]/);
			}
		}
	);
});
