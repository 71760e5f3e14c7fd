import { describe, expect, it } from 'vitest';
import { layOnFold } from '#garment/laying.ts';
import { enclosedArea } from '#geometry/area.ts';
import { boundsOf } from '#geometry/path.ts';
import { mm } from '#shared/units.ts';
import { clothLeaf, clothOutlines, foldLine, laidOutline, lengthMarks } from '#ui/garments/cloth-ink.ts';
import { toScreen } from '#ui/drawing/view.ts';
import { pieceFrom, polygon } from '../garment/hand-made.ts';
import { english } from '../support/speech.ts';

/** A triangle that no turn makes its own mirror image; two of it, and one that is too wide for half the cloth. */
const SAIL = pieceFrom('sail', polygon([0, 0, 'a'], [200, 0, 'b'], [0, 900, 'c']), {
	cut: [{ in: 'fabric', count: 2 }]
});
const WIDE = pieceFrom('wide', polygon([0, 0, 'a'], [700, 0, 'b'], [700, 300, 'c'], [0, 300, 'd']));
const LAYING = layOnFold([SAIL, WIDE], mm(1000));

describe.each([
	['a narrow room', 330, true],
	['a wide room', 700, false]
])('the cloth in %s', (_, room, upright) => {
	const leaf = clothLeaf(LAYING, room);
	const outlines = clothOutlines(LAYING, leaf);

	it('stands upright or lies, and fits the room', () => {
		expect(leaf.upright).toBe(upright);
		expect(leaf.size.width).toBeLessThanOrEqual(room);
		const all = boundsOf(outlines);
		for (const corner of [
			{ x: all.left, y: all.top },
			{ x: all.right, y: all.bottom }
		]) {
			const { left, top } = toScreen(leaf.view, corner);
			expect(Math.min(left, top)).toBeGreaterThanOrEqual(0);
			expect(left).toBeLessThanOrEqual(leaf.size.width);
			expect(top).toBeLessThanOrEqual(leaf.size.height);
		}
	});

	it('has its folded part half as broad as its single layer', () => {
		const [folded, single] = outlines.map((outline) => Math.abs(enclosedArea(outline)));
		expect(folded).toBeCloseTo(500 * LAYING.folded, 3);
		expect(single).toBeCloseTo(1000 * (LAYING.length - LAYING.folded), 3);
	});

	it('shows each piece as it is cut and never its mirror image, on its part of the cloth', () => {
		const [folded] = outlines;
		const [sail] = LAYING.placed;
		if (!folded || !sail) throw new Error('the sail is laid on the fold');
		const drawn = laidOutline(SAIL, sail, leaf);
		expect(enclosedArea(drawn)).toBeCloseTo(enclosedArea(SAIL.cutting.outline), 3);
		const [cloth, piece] = [boundsOf([folded]), boundsOf([drawn])];
		expect(piece.left).toBeGreaterThanOrEqual(cloth.left - 1e-6);
		expect(piece.top).toBeGreaterThanOrEqual(cloth.top - 1e-6);
		expect(piece.right).toBeLessThanOrEqual(cloth.right + 1e-6);
		expect(piece.bottom).toBeLessThanOrEqual(cloth.bottom + 1e-6);
	});

	it('is marked each half metre, or half yard, along the fold', () => {
		const said = (unit: 'cm' | 'in'): readonly string[] =>
			lengthMarks(LAYING, leaf, unit).map(english.inUnit(unit).words.pattern.clothMark);
		const metres = lengthMarks(LAYING, leaf, 'cm');
		expect(said('cm')).toEqual(['0.5 m', '1 m']);
		expect(said('in')).toEqual(['0.5 yd', '1 yd']);
		const [{ from }] = foldLine(LAYING, leaf);
		const [first] = metres;
		expect(first && Math.hypot(first.at.x - from.x, first.at.y - from.y)).toBeCloseTo(500, 6);
	});
});
