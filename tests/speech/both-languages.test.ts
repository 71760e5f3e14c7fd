import { describe, expect, it } from 'vitest';
import { english, speechFor } from '../support/speech.ts';
import { checking } from '#shared/speech/en/checking.ts';
import { first } from '#shared/speech/en/first.ts';
import { later } from '#shared/speech/en/later.ts';
import { measuring } from '#shared/speech/en/measuring.ts';
import { school } from '#shared/speech/en/school.ts';
import { shell } from '#shared/speech/en/shell.ts';
import type { Words } from '#shared/speech/catalogue.ts';
import { LANGUAGES } from '#shared/speech/language.ts';

const AREAS = Object.keys({
	...first,
	...later,
	...shell,
	...school,
	...checking,
	...measuring
}) as (keyof Words)[];

describe.each(LANGUAGES.filter((language) => language !== 'en'))('English and %s', (language) => {
	// The compiler asks for every English sentence in each language; it does not see one that English no longer has.
	it.each(AREAS)('have the same sentences: %s', (area) => {
		const keys = (each: object): readonly string[] => Object.keys(each).sort();
		expect(keys(speechFor(language).words[area])).toEqual(keys(english.words[area]));
	});
});

describe('each language', () => {
	const spanish = speechFor('es');

	it('writes numbers, lists and lengths in its own way', () => {
		expect(english.number(1.5)).toBe('1.5');
		expect(spanish.number(1.5)).toBe('1,5');
		expect(english.list(['A', 'B', 'C'])).toBe('A, B and C');
		expect(spanish.list(['A', 'B', 'C'])).toBe('A, B y C');
		// Spanish says "e" before the sound of i: the Academy's rule.
		expect(spanish.list(['aguja', 'hilo'])).toBe('aguja e hilo');
		expect(spanish.list(['A', 'iglesia'])).toBe('A e iglesia');
	});
});
