import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { diagnosisWords } from '#checker/missteps/words.ts';
import { english, speechFor } from '../../support/speech.ts';
import { notesOf } from './notes.ts';
import { toldDiagnosis, toldRow } from './told-diagnosis.ts';
import { TOLD_SLIPS } from './told-slips.ts';

const PAGE = fileURLToPath(new URL('told-slips.md', import.meta.url));
const titled = TOLD_SLIPS.map(
	(slip) => [`${slip.body}, ${slip.panel} ${slip.step}: ${slip.tale}`, slip] as const
);
const SPANISH_GUESSES = {
	typed: [/^$/, /^(Has|Quizá hayas) /, /^O bien has .*, o bien has /],
	place: [/^$/, /^(Estaría ahí si hubieras|Quizá hayas) /, /^Estaría ahí si hubieras .*, o si hubieras /]
} as const;
const GUESSES = {
	typed: [/^$/, /^(You|Perhaps you) /, /^Either you .* or you /],
	place: [/^$/, /^(It would lie there if|Perhaps) you /, /^It would lie there if you .*, or if you /]
} as const;

/** Prettier pads the columns of a table. */
const unpadded = (text: string): string => text.replace(/ +\|/g, ' |');

describe('slips as a teacher tells them', () => {
	it('there are many, of many bodies, with and without a guess', () => {
		expect(TOLD_SLIPS.length).toBeGreaterThan(60);
		expect(new Set(TOLD_SLIPS.map(({ body }) => body)).size).toBeGreaterThanOrEqual(6);
		expect(new Set(TOLD_SLIPS.map(({ notes }) => Math.min(notes.length, 2)))).toEqual(new Set([0, 1, 2]));
	});

	it.each(titled)('%s', (_, slip) => {
		const diagnosis = toldDiagnosis(slip);
		expect(notesOf(diagnosis)).toEqual(slip.notes);
		const by = 'seen' in diagnosis ? 'place' : 'typed';
		// A typed sum settles the matter, where it is that of a wrong rule.
		if (by === 'typed') expect(slip.typed !== undefined || slip.notes.length === 0).toBe(true);
		const count = Math.min(slip.notes.length, 2);
		expect(diagnosisWords(diagnosis, english)).toMatch(GUESSES[by][count] ?? /never/);
		expect(diagnosisWords(diagnosis, speechFor('es'))).toMatch(SPANISH_GUESSES[by][count] ?? /never/);
	});

	it('the help page says the same; write it anew with: npm run measure:missteps', () => {
		const rows = unpadded(readFileSync(PAGE, 'utf8')).split('\n');
		for (const slip of TOLD_SLIPS) expect(rows).toContain(toldRow(slip));
		expect(rows.filter((row) => row.startsWith('| ')).length).toBe(TOLD_SLIPS.length + 2);
	});
});
