import fontkit, { type Font } from '@cantoo/fontkit';
import { keptFor } from '#shared/kept.ts';

/** Texts that a typeface remembers; more than a garment's whole pattern has. */
const REMEMBERED = 4_000;

/** Makes a typeface remember how it laid a text out: that is most of the work of a file, and each text is measured and then written. */
const remembering = (font: Font): Font => {
	const layout = font.layout.bind(font);
	const known = new Map<string, ReturnType<typeof layout>>();
	// Every file of ours asks for the same features, so a text alone tells its layout.
	font.layout = (text, ...how) => {
		const before = known.get(text);
		if (before) return before;
		if (known.size >= REMEMBERED) known.clear();
		const laid = layout(text, ...how);
		known.set(text, laid);
		return laid;
	};
	return font;
};

/**
 * Has each letter know what it stands for. A letter that was first met as part of another one (a dash in a longer one, an `a` in
 * an `á`) stood for nothing from then on: whoever searched a later file, or had it read out, missed it.
 */
const knowingLetters = (font: Font): Font => {
	const getGlyph = font.getGlyph.bind(font);
	font.getGlyph = (id, codePoints = []) => {
		const glyph = getGlyph(id, codePoints);
		if (glyph && glyph.codePoints.length === 0) glyph.codePoints = codePoints;
		return glyph;
	};
	return font;
};

/** A typeface file, read once for all the files that are written in it. Throws what fontkit throws at what is none. */
const typeface = keptFor((bytes: Uint8Array) => {
	const made = fontkit.create(bytes);
	if (!('layout' in made)) throw new Error('a collection of typefaces is not one typeface');
	return remembering(knowingLetters(made));
});

/** What reads typefaces for files. */
export const typefaces = { create: typeface };
