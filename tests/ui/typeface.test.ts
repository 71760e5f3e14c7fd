import { readdirSync, readFileSync, statSync } from 'node:fs';
import { create } from '@cantoo/fontkit';
import { describe, expect, it } from 'vitest';
import { coreLetters, FACES, shortFace, wholeFace } from './typeface.ts';

/** Letters that the typeface never had: faces of the system show them, as before. */
const WITHOUT = /[^\u0020-\u00ff\u2013-\u2026\u2212]/u;
/** Signs of the course that stand on one page or another: the whole face is asked for there. */
const SELDOM = new Set(['ł', 'Ł', 'œ', 'Œ', 'Ŵ']);

describe('the typeface, cut down to the letters of both languages', () => {
	it('has every letter of the lessons, in all its faces', () => {
		const texts = readdirSync('lessons').flatMap((lesson) =>
			readdirSync(`lessons/${lesson}`)
				.filter((file) => file.endsWith('.md'))
				.map((file) => readFileSync(`lessons/${lesson}/${file}`, 'utf8'))
		);
		const core = coreLetters();
		const strange = [...new Set(texts.join(''))].filter(
			(letter) => letter >= ' ' && !WITHOUT.test(letter) && !core.has(letter)
		);
		expect(texts.length).toBeGreaterThan(80);
		expect(strange.filter((letter) => !SELDOM.has(letter))).toEqual([]);
	});
	it.each(FACES)('%s holds what the style sheet names and is a third smaller than the whole', (face) => {
		const font = create(readFileSync(shortFace(face)));
		const held = new Set('characterSet' in font ? font.characterSet : []);
		const lacking = [...coreLetters()].filter((letter) => !held.has(letter.codePointAt(0) ?? 0));
		expect(lacking).toEqual([]);
		expect(statSync(shortFace(face)).size).toBeLessThan(0.7 * statSync(wholeFace(face)).size);
	});
});
