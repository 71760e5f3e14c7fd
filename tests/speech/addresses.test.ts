import { describe, expect, it } from 'vitest';
import { addressIn, askedFor, languageOf } from '#shared/speech/language.ts';

describe('the language in an address', () => {
	it('is read from its first part', () => {
		expect(languageOf('/es')).toBe('es');
		expect(languageOf('/es/lessons/10-the-sheet')).toBe('es');
		expect(languageOf('/lessons/10-the-sheet')).toBe('en');
		expect(languageOf('/')).toBe('en');
		// English stands in no address, and what is no language is a page.
		expect(languageOf('/en/practice')).toBe('en');
		expect(languageOf('/estimates')).toBe('en');
	});

	it.each([
		['/', '/es'],
		['/practice', '/es/practice'],
		['/lessons/10-the-sheet#step-A', '/es/lessons/10-the-sheet#step-A'],
		['/#lessons', '/es#lessons'],
		['/practice?seed=4', '/es/practice?seed=4']
	])('is put in and taken out again: %s', (english, spanish) => {
		expect(addressIn('es', english)).toBe(spanish);
		expect(addressIn('es', spanish)).toBe(spanish);
		expect(addressIn('en', english)).toBe(english);
	});

	it('is taken out again where it stands', () => {
		expect(addressIn('en', '/es')).toBe('/');
		expect(addressIn('en', '/es/practice')).toBe('/practice');
	});
});

describe('the language that a browser asks for', () => {
	it.each([
		['es-ES,es;q=0.9,en;q=0.8', 'es'],
		['en-GB,en;q=0.9,es;q=0.8', 'en'],
		['fr-FR,fr;q=0.9,es;q=0.5,en;q=0.3', 'es'],
		['en;q=0.2, es-MX;q=0.7', 'es'],
		['es;q=0, en', 'en'],
		['fr,*;q=0.1', undefined],
		['', undefined]
	])('%s', (accepted, language) => {
		expect(askedFor(accepted)).toBe(language);
	});
});
