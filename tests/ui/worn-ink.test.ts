import { expect, it } from 'vitest';
import { wornInk, wornWords } from '#ui/garments/worn-ink.ts';
import { wornSvg } from '#ui/garments/worn-svg.ts';
import { wornPattern } from '#garment/worn/view.ts';
import type { Worn } from '#garment/worn/worn.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';

const worn = (id: string, allowances: Readonly<Record<string, number>> = {}): Worn => {
	const [garment, body, choices] = [garmentOf(id), bodyOf('heron'), { allowances, edges: {} }];
	const found = wornPattern(garment, body, madeFor(garment, body, choices), choices);
	if (!found) throw new Error(`${id} does not say how it is worn`);
	return found;
};

it('frames front and back side by side, and a little more length in the same frame', () => {
	const [short, long] = [640, 650].map((skirtLength) => wornInk(worn('course-dress', { skirtLength })));
	expect(short?.views.map(({ side }) => side)).toEqual(['front', 'back']);
	expect(long?.height).toBe(short?.height);
	for (const { left, width } of short?.views ?? []) expect(left % width).toBeCloseTo(width / 2, 9);
});

it('says in words what the drawing shows', () => {
	expect(wornWords('The course dress', worn('course-dress'), english)).toMatch(
		/^The course dress as it is worn, front and back: 105 cm long down the centre back, the hem 139\.2\d? cm round, the waist gathered 1\.5 times, \d buttons$/
	);
	expect(wornWords('Corpiño con manga', worn('sleeved-bodice'), speechFor('es'))).toMatch(
		/mangas de 58 cm de largo$/
	);
});

it('is a picture that stands alone, every line within its frame', () => {
	const svg = wornSvg(worn('circle-skirt'));
	expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" viewBox="0 0 \d+ \d+"/);
	expect(svg).not.toMatch(/NaN|undefined/);
	expect(svg.length).toBeLessThan(60_000);
});
