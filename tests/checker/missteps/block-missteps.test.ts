import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import { misstepWords } from '#checker/missteps/words.ts';
import { english, speechFor } from '../../support/speech.ts';
import { backBlock, frontBlock } from '../../drafting/lesson-method.ts';
import { draftOf } from '../../drafting/small-method.ts';

describe('the two blocks', () => {
	const all = [backBlock(), frontBlock()].flatMap((method) =>
		DEMO_BODIES.flatMap(({ body }) => {
			const draft = draftOf(method, body);
			return Object.keys(draft.points).flatMap((step) =>
				pointMissteps(method, step, body, draft).map((misstep) => ({
					spot: `${method.id}, ${step}, ${body.name}`,
					misstep
				}))
			);
		})
	);

	it('every kind of misstep is met', () => {
		const kinds = new Set(all.map(({ misstep }) => misstep.note.replace(/:[A-Z].*$/, '')));
		for (const kind of [
			'fraction:half-for-quarter',
			'fraction:third-for-sixth',
			'fraction:whole-for-half',
			'allowance:left-out:bustEase',
			'allowance:twice:armholeDrop',
			'allowance:subtracted:neckAllow',
			'allowance:hollowFront-for-hollowBack',
			'measurement:waist-for-bust',
			'measurement:frontLength-for-backLength',
			'measurement:bustSpan-for-shoulderWidth',
			'start',
			'toward',
			'distance',
			'point',
			'panel:back',
			'direction:opposite',
			'direction:crossed',
			'slope',
			'unit:inches-for-centimetres',
			'unit:centimetres-for-inches',
			'decimal',
			'tape:10cm',
			'digits:swapped'
		])
			expect([...kinds], kind).toContain(kind);
	});

	it('every one has a note without numbers of the body, a sentence to the learner and a prior', () => {
		expect(all.length).toBeGreaterThan(5000);
		for (const { spot, misstep } of all) {
			const { note, prior } = misstep;
			const [words, spanish] = [misstepWords(misstep, english), misstepWords(misstep, speechFor('es'))];
			expect(spanish, note).toMatch(/^Has [^;]+(; [^;]+)?\.$/);
			expect(spanish, note).not.toMatch(/undefined|NaN|\bdel? el\b|\ba el\b/);
			expect(note.replace(/\b[A-Z]\d?\b|10cm/g, ''), spot).toMatch(/^[a-zA-Z:-]+$/);
			expect(words, note).toMatch(/^You [^;]+(; [^;]+)?\.$/);
			// Swapped digits are shown, as they should be and as they are: (42.5, 24.5).
			const shown = note === 'digits:swapped' ? words.replace(/ \([\d.]+, [\d.]+\)/, '') : words;
			expect(shown.replace(/\b[A-Z]\d?\b/g, '')).not.toMatch(/undefined|NaN|\d/);
			expect(prior, note).toBeGreaterThan(0);
			expect(prior, note).toBeLessThan(0.2);
		}
	});

	it('a step’s missteps are together not likelier than all of its wrong placements', () => {
		const sums = new Map<string, number>();
		for (const { spot, misstep } of all) sums.set(spot, (sums.get(spot) ?? 0) + misstep.prior);
		for (const [spot, sum] of sums) {
			expect(sum, spot).toBeGreaterThan(0.1);
			expect(sum, spot).toBeLessThan(1);
		}
	});
});
