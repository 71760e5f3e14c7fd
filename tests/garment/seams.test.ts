import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { runBetween, runsAtFolds } from '#garment/seams.ts';
import { pathEnd, pathStart, polyline } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { mm } from '#shared/units.ts';
import { edgeOf, polygon, rectangle, seamOf, sewn } from './hand-made.ts';

const degrees = (angle: number | undefined): number => ((angle ?? Number.NaN) * 180) / Math.PI;

describe('the report of a seam', () => {
	const edges = { front: rectangle(0, 0, 100, 300), back: rectangle(0, 0, 120, 304) };

	it('has both lengths, and how much longer the second is', () => {
		const [report] = sewn(edges, [seamOf('side', ['front.right'], ['back.right'], { within: mm(4) })]).seams;
		expect(report).toMatchObject({
			firstLength: 300,
			secondLength: 304,
			ease: 0,
			difference: 4,
			tolerance: 4,
			within: true
		});
		expect([report?.first, report?.second]).toEqual([['front.right'], ['back.right']]);
	});

	it.each([
		[3.99, false],
		[4, true]
	])('is within %d mm: %s', (within, wanted) => {
		const rule = seamOf('side', ['back.right'], ['front.right'], { within: mm(within) });
		const [report] = sewn(edges, [rule]).seams;
		expect(report?.difference).toBe(-4);
		expect(report?.within).toBe(wanted);
	});

	it('takes ease off: 5 mm wanted and 4 there is 1 too short', () => {
		const ease = { kind: 'number', value: 5 } as const;
		const [report] = sewn(edges, [seamOf('side', ['front.right'], ['back.right'], { ease })]).seams;
		expect(report).toMatchObject({ ease: 5, difference: -1, within: true });
	});

	it('adds the edges of a chain, and passes over those that a body does not have', () => {
		const rule = seamOf(
			'round',
			['front.right', 'front.bottom', 'front.dart'],
			['back.right', 'back.bottom']
		);
		const [report] = sewn(edges, [rule]).seams;
		expect([report?.firstLength, report?.secondLength]).toEqual([400, 424]);
		expect(report?.chains.first).toHaveLength(2);
	});
});

describe('the edges of a chain each go on where the one before ends', () => {
	const ways = (
		edges: Parameters<typeof sewn>[0],
		...seams: Parameters<typeof sewn>[1]
	): readonly string[] => {
		const [report] = sewn(edges, seams).seams;
		const written = ({ edge, reversed }: { edge: string; reversed: boolean }): string =>
			`${edge}${reversed ? ' back' : ''}`;
		return [...(report?.chains.first ?? []), ...(report?.chains.second ?? [])].map(written);
	};

	it('in one piece, either way round, and over a closed dart', () => {
		const front = polygon([0, 0, 'a'], [50, 0, 'mouth', 'dart'], [70, 0, 'b'], [120, 0, 'c'], [0, 200, 'd']);
		const edges = { front, band: rectangle(0, 0, 100, 30) };
		expect(ways(edges, seamOf('waist', ['front.a', 'front.b'], ['band.top']))).toEqual(['a', 'b', 'top']);
		expect(ways(edges, seamOf('waist', ['front.b', 'front.a'], ['band.top']))).toEqual([
			'b back',
			'a back',
			'top'
		]);
	});

	it('in two pieces, by the seam that joins them beside it', () => {
		const edges = {
			back: rectangle(0, 0, 100, 200),
			front: rectangle(0, 0, 90, 200),
			band: rectangle(0, 0, 190, 30)
		};
		// Back and front meet at the right sides, where the bottom of each begins: the back's is gone along toward that.
		const waist = seamOf('waist', ['back.bottom', 'front.bottom'], ['band.top']);
		const side = seamOf('side', ['front.right'], ['back.right']);
		expect(ways(edges, waist, side)).toEqual(['bottom back', 'bottom', 'top']);
		expect(ways(edges, waist, seamOf('centre', ['back.left'], ['front.left']))).toEqual([
			'bottom',
			'bottom back',
			'top'
		]);
	});

	it('in a piece on the fold and its other half, which meet at the fold', () => {
		const edges = {
			front: polygon([0, 0, 'top'], [90, 0, 'side'], [90, 200, 'bottom'], [0, 200, 'centre', 'fold']),
			band: rectangle(0, 0, 180, 30)
		};
		// The fold comes before the top: the first half is gone along back to it.
		expect(ways(edges, seamOf('waist', ['front.top', 'front.top'], ['band.top']))).toEqual([
			'top back',
			'top',
			'top'
		]);
	});

	it('and the second side is turned round where the seam says so', () => {
		const edges = { front: rectangle(0, 0, 100, 200), band: rectangle(0, 0, 100, 30) };
		const rule = seamOf('top', ['front.top'], ['band.bottom', 'band.left'], { turned: true });
		expect(ways(edges, rule)).toEqual(['top', 'left back', 'bottom back']);
	});
});

describe('the run across a seam', () => {
	/** A piece whose hem leaves the side at so many degrees more than square. */
	const leaning = (more: number) => {
		const drop = 100 * Math.tan((more * Math.PI) / 180);
		return polygon([0, 0, 'top'], [100, 0, 'side'], [100, 200, 'hem'], [0, 200 + drop, 'centre']);
	};
	const runs = { start: 'the top', end: 'the hem' };
	const across = (front: number, back: number) =>
		sewn({ front: leaning(front), back: leaning(back) }, [
			seamOf('side', ['front.side'], ['back.side'], { runs })
		]).runs;

	it('is straight where the two angles make a straight line', () => {
		const [top, hem] = across(7, -7);
		expect(top).toMatchObject({ run: { label: 'the top' }, corner: 0, within: true });
		expect(degrees(hem?.corner)).toBeCloseTo(0, 9);
	});

	it.each([
		[6, 4, 10, false],
		[-6, -4, -10, false],
		[2, 2.9, 4.9, true],
		[2, 3.1, 5.1, false]
	])('with planted leanings of %d and %d degrees has a corner of %d', (front, back, corner, within) => {
		const [top, hem] = across(front, back);
		expect(top?.within).toBe(true);
		expect(degrees(hem?.corner)).toBeCloseTo(corner, 9);
		expect(hem?.within).toBe(within);
	});

	it('of a turned seam looks at the other end of the second', () => {
		const front = leaning(10);
		// The back's side runs upward: what is its hem comes to its beginning.
		const back = polygon([0, 0, 'centre'], [0, 200, 'hem'], [100, 200, 'side'], [100, 0, 'top']);
		const turned = seamOf('side', ['front.side'], ['back.side'], { runs, turned: true });
		const [top, hem] = sewn({ front, back }, [turned]).runs;
		expect(degrees(top?.corner)).toBeCloseTo(0, 9);
		expect(degrees(hem?.corner)).toBeCloseTo(10, 9);
	});

	it('of a chain looks at its last edge for the end', () => {
		const [top, hem] = sewn(
			{
				front: polygon(
					[0, 0, 'top'],
					[100, 0, 'upper'],
					[100, 80, 'lower'],
					[100, 200, 'hem'],
					[0, 210, 'left']
				),
				back: leaning(0)
			},
			[seamOf('side', ['front.upper', 'front.lower'], ['back.side'], { runs })]
		).runs;
		expect(degrees(top?.corner)).toBeCloseTo(0, 9);
		// Down by 10 over 100.
		expect(degrees(hem?.corner)).toBeCloseTo(degrees(Math.atan(0.1)), 9);
	});
});

describe('runs within a piece', () => {
	it('at a fold are square, or tell by how much they are not', () => {
		const edges = {
			skirt: polygon([0, 0, 'top'], [100, 0, 'side'], [100, 200, 'hem'], [0, 203, 'centre', 'fold'])
		};
		const [hem, top] = runsAtFolds(edges, { skirt: 'Skirt' });
		expect(hem && english.words.garments.run(hem)).toBe('Skirt: hem at the fold');
		// 3 down over 100: 1.72 degrees, still within the two that a fold allows.
		expect(degrees(hem?.corner)).toBeCloseTo(degrees(-Math.atan(0.03)), 9);
		expect([hem?.within, top?.within, top?.corner]).toEqual([true, true, 0]);
		const steeper = {
			skirt: polygon([0, 0, 'top'], [100, 0, 'side'], [100, 196, 'hem'], [0, 200, 'c', 'fold'])
		};
		expect(runsAtFolds(steeper, {}).map(({ within }) => within)).toEqual([false, true]);
	});

	it('from one edge to the next turn by the angle between them', () => {
		const first = edgeOf('first', polyline(at(0, 0), at(100, 0)));
		const second = edgeOf('second', polyline(at(100, 0), at(200, 10)));
		expect(pathStart(second.path)).toEqual(pathEnd(first.path));
		const [run] = runBetween(
			{ label: 'the neckline', first: { piece: 'p', edge: 'first' }, second: { piece: 'p', edge: 'second' } },
			{ p: [first, second] }
		);
		expect(degrees(run?.corner)).toBeCloseTo(degrees(Math.atan(0.1)), 9);
		expect(run?.within).toBe(false);
	});
});
