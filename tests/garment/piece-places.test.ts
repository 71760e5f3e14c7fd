import { describe, expect, it } from 'vitest';
import { piecePlaces, type PieceLine } from '#garment/piece-places.ts';
import { boundsOf } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { bodyOf, garmentOf, madeFor } from './garment-files.ts';

/** The places of a kind on a piece of a garment as Heron has it. */
const placesOf = (garment: string, key: string, line: PieceLine, kind: 'corner' | 'notch') => {
	const piece = madeFor(garmentOf(garment), bodyOf('heron')).pieces.find((each) => each.key === key);
	if (!piece) throw new Error(`${garment} has no piece ${key}`);
	return { piece, places: piecePlaces(piece, line).filter((each) => each.kind === kind) };
};

/** How far each place lies from the next, the last from the first. */
const sidesOf = (places: readonly { readonly at: SheetPoint }[]): readonly number[] =>
	places.map(({ at }, i) => distance(at, places[(i + 1) % places.length]?.at ?? at));

describe('the places of a cut piece that are found by eye', () => {
	it.each(['cutting', 'stitching'] as const)(
		'a waistband is a rectangle: four corners, along its %s line',
		(line) => {
			const { piece, places } = placesOf('straight-skirt', 'waistband', line, 'corner');
			expect(places.map(({ number }) => number)).toEqual([1, 2, 3, 4]);
			const { left, right, top, bottom } = boundsOf([
				line === 'cutting' ? piece.cutting.outline : piece.outline
			]);
			const [width, height] = [right - left, bottom - top];
			expect([...sidesOf(places)].sort((a, b) => a - b)).toEqual([
				expect.closeTo(Math.min(width, height), 6),
				expect.closeTo(Math.min(width, height), 6),
				expect.closeTo(Math.max(width, height), 6),
				expect.closeTo(Math.max(width, height), 6)
			]);
		}
	);
	it('a notch is found at the edge of the cloth, as far out as that edge is cut outside the stitching line', () => {
		const cut = placesOf('course-dress', 'front', 'cutting', 'notch');
		const sewn = placesOf('course-dress', 'front', 'stitching', 'notch');
		expect(cut.places.length).toBeGreaterThan(2);
		const allowances = cut.piece.notches.map(
			({ edge }) => cut.piece.edges.find(({ name }) => name === edge)?.allowance
		);
		for (const [i, { at }] of cut.places.entries())
			expect(distance(at, sewn.places[i]?.at ?? at)).toBeCloseTo(allowances[i] ?? NaN, 1);
	});
});
