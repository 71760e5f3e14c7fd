import { describe, expect, it } from 'vitest';
import type { Notch, Piece } from '#garment/piece.ts';
import { polygon, rectangle, seamOf, sewn } from './hand-made.ts';
import { bodyOf, garments, madeFor } from './garment-files.ts';

const notchesOn = (pieces: readonly Piece[], key: string): readonly Notch[] =>
	pieces.find((piece) => piece.key === key)?.notches ?? [];

/** Where the notches of a piece lie along their edges. */
const places = (pieces: readonly Piece[], key: string): readonly string[] =>
	notchesOn(pieces, key).map(({ edge, along }) => `${edge} ${Number(along.toFixed(6))}`);

describe('notches', () => {
	const edges = { front: rectangle(0, 0, 100, 300), back: rectangle(0, 0, 120, 300) };

	it('lie equally far from the beginning of the seam, single on a front and double on a back', () => {
		const rule = seamOf('side', ['front.right'], ['back.right'], { notches: [0.25, 0.5] });
		const { pieces } = sewn(edges, [rule]);
		expect(places(pieces, 'front')).toEqual(['right 75', 'right 150']);
		expect(places(pieces, 'back')).toEqual(['right 75', 'right 150']);
		expect(notchesOn(pieces, 'front')[0]).toMatchObject({
			at: { x: 100, y: 75 },
			style: 'single',
			seam: 'side'
		});
		expect(notchesOn(pieces, 'back')[0]).toMatchObject({ at: { x: 120, y: 75 }, style: 'double' });
	});

	it('of two pieces cut alike, sewn to each other, are one on the piece', () => {
		const { pieces } = sewn(edges, [seamOf('side', ['front.right'], ['front.right'], { notches: [0.25] })]);
		expect(places(pieces, 'front')).toEqual(['right 75']);
	});

	it('of a turned seam count from the other end of the second', () => {
		const rule = seamOf('side', ['front.right'], ['back.left'], { notches: [0.25], turned: true });
		const { pieces } = sewn(edges, [rule]);
		expect(places(pieces, 'front')).toEqual(['right 75']);
		// The left side runs upward: 75 from the top is 225 from its own beginning.
		expect(places(pieces, 'back')).toEqual(['left 225']);
		expect(notchesOn(pieces, 'back')[0]?.at).toEqual({ x: 0, y: 75 });
	});

	it('share out evenly what is to be eased in', () => {
		const uneven = { front: rectangle(0, 0, 100, 300), back: rectangle(0, 0, 100, 330) };
		const rule = seamOf('side', ['front.right'], ['back.right'], { notches: [0.4] });
		const { pieces } = sewn(uneven, [rule]);
		expect([places(pieces, 'front'), places(pieces, 'back')]).toEqual([['right 120'], ['right 132']]);
	});

	it('too near to a corner are left out', () => {
		const rule = seamOf('side', ['front.right'], ['back.right'], { notches: [0.026, 0.027, 0.975] });
		const { pieces } = sewn(edges, [rule]);
		// 7.8 and 292.5 mm are nearer than 8 to an end of 300, and 8.1 is not.
		expect(places(pieces, 'front')).toEqual(['right 8.1']);
	});

	it('of a chain lie on the edge that the seam has come to, gone along as the seam goes', () => {
		const chain = {
			back: rectangle(0, 0, 100, 200),
			front: rectangle(0, 0, 100, 200),
			band: rectangle(0, 0, 200, 30)
		};
		const waist = seamOf('waist', ['back.bottom', 'front.bottom'], ['band.top'], { notches: [0.2, 0.7] });
		const { pieces } = sewn(chain, [waist, seamOf('side', ['front.right'], ['back.right'], { notches: [] })]);
		// The bottoms begin at the sides, where back and front meet: 40 from the back's far end is 60 from its beginning.
		expect(places(pieces, 'back')).toEqual(['bottom 60']);
		expect(places(pieces, 'front')).toEqual(['bottom 40']);
		expect(places(pieces, 'band')).toEqual(['top 40', 'top 140']);
	});

	it('of a chain pass over the mouth of a closed dart', () => {
		const front = polygon([0, 0, 'a'], [50, 0, 'mouth', 'dart'], [70, 0, 'b'], [120, 0, 'c'], [0, 200, 'd']);
		const rule = seamOf('waist', ['front.a', 'front.b'], ['band.top'], { notches: [0.75] });
		const { pieces } = sewn({ front, band: rectangle(0, 0, 100, 30) }, [rule]);
		expect(places(pieces, 'front')).toEqual(['b 25']);
		expect(notchesOn(pieces, 'front')[0]?.at).toEqual({ x: 95, y: 0 });
	});
});

describe.each(garments())('$name', (garment) => {
	it('has on both single edges of every seam its notches at the same share of the length', () => {
		const { pieces, seams } = madeFor(garment, bodyOf('heron'));
		let looked = 0;
		for (const { name, chains, firstLength, secondLength } of seams) {
			const [first, second] = [chains.first[0], chains.second[0]];
			if (!first || !second || chains.first.length + chains.second.length > 2) continue;
			const shares = ({ piece, edge, reversed }: typeof first, length: number) =>
				notchesOn(pieces, piece)
					.filter((notch) => notch.seam === name && notch.edge === edge)
					.map(({ along }) => (reversed ? length - along : along) / length);
			const [one, other] = [shares(first, firstLength), shares(second, secondLength)];
			expect(other, name).toHaveLength(one.length);
			for (const [i, share] of one.entries()) expect(other[i], name).toBeCloseTo(share, 9);
			looked += one.length;
		}
		expect(looked).toBeGreaterThan(0);
	});
});
