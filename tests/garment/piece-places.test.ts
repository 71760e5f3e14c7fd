import { describe, expect, it } from 'vitest';
import { pieceCurves, piecePlaces, type PieceLine } from '#garment/piece-places.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { boundsOf, pathEnd, pathLength, pathStart } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { segmentPoint } from '#geometry/segment.ts';
import { bodyOf, garmentOf, madeFor } from './garment-files.ts';

/** The places of a kind on a piece of a garment as Heron has it. */
const placesOf = (garment: string, key: string, line: PieceLine, kind: 'corner' | 'notch') => {
	const piece = madeFor(garmentOf(garment), bodyOf('heron')).pieces.find((each) => each.key === key);
	if (!piece) throw new Error(`${garment} has no piece ${key}`);
	return { piece, places: piecePlaces(piece, line).filter((each) => each.kind === kind) };
};

/** How far each place lies from the next, the last from the first. */
const sidesOf = (places: readonly { readonly at: SheetPoint }[]): readonly number[] =>
	places.map((each, i) => distance(each.at, places[(i + 1) % places.length]?.at ?? each.at));

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
		for (const [i, each] of cut.places.entries())
			expect(distance(each.at, sewn.places[i]?.at ?? each.at)).toBeCloseTo(allowances[i] ?? NaN, 1);
	});
});

describe('the curved edges of a cut piece', () => {
	it('a waistband has none', () => {
		const { piece } = placesOf('straight-skirt', 'waistband', 'cutting', 'corner');
		expect([...pieceCurves(piece, 'cutting'), ...pieceCurves(piece, 'stitching')]).toEqual([]);
	});
	it('a circle skirt has its waist and its hem: eighths of circles, as it is half a circle of two pieces on the fold, that are the skirt apart', () => {
		const { piece, places } = placesOf('circle-skirt', 'front', 'stitching', 'corner');
		const [waist, hem, ...others] = pieceCurves(piece, 'stitching');
		expect([waist?.edges, hem?.edges, others]).toEqual([['waist'], ['hem'], []]);
		for (const curve of [waist, hem]) {
			if (!curve) throw new Error('it has both');
			const place = (number: number) => places.find((each) => each.number === number)?.at;
			for (const [corner, end] of [
				[curve.from, pathStart(curve.path)],
				[curve.to, pathEnd(curve.path)]
			] as const)
				expect(distance(place(corner) ?? at(NaN, 0), end)).toBeLessThan(1e-6);
		}
		const radius = (path = hem?.path): number => (path ? (4 * pathLength(path)) / Math.PI : NaN);
		const side = piece.edges.find(({ name }) => name === 'side')?.length ?? NaN;
		expect(radius() - radius(waist?.path)).toBeCloseTo(side, 0);
	});
	it('an armhole runs on the cutting line as far out as it is cut, and two halves of a cap are one curve', () => {
		const { piece } = placesOf('course-dress', 'back', 'cutting', 'corner');
		const armhole = pieceCurves(piece, 'cutting').find(({ edges }) => edges.includes('armhole'));
		const sewn = piece.edges.find(({ name }) => name === 'armhole');
		if (!armhole || !sewn) throw new Error('there is an armhole');
		const middle = segmentPoint(sewn.path[0], 0.5);
		expect(distance(nearestOnPath(armhole.path, middle), middle)).toBeCloseTo(sewn.allowance, 1);
		const sleeve = placesOf('sleeved-bodice', 'sleeve', 'cutting', 'corner').piece;
		const cap = pieceCurves(sleeve, 'cutting').find(({ edges }) => edges.length === 2);
		expect([cap?.from, cap?.to, cap?.edges.length]).toEqual([4, 1, 2]);
	});
});
