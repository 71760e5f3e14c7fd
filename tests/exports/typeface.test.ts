import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { typefaces } from '#exports/pdf/typeface.ts';
import { wholeFace } from '../ui/typeface.ts';

/** A typeface of its own each time: one that was read is remembered with its bytes. */
const fresh = () => typefaces.create(new Uint8Array(readFileSync(wholeFace('400-normal'))));

describe('a letter that was first met as part of another one', () => {
	it.each(['–', 'a', 'n'])('%s still stands for itself in the next file', (letter) => {
		const [{ id } = { id: 0 }] = fresh().layout(letter).glyphs;
		const typeface = fresh();
		// How a file asks for the parts of a letter when it writes that letter's outline.
		typeface.getGlyph(id);
		expect(typeface.layout(letter).glyphs.map(({ codePoints }) => codePoints)).toEqual([
			[letter.codePointAt(0)]
		]);
	});
});
