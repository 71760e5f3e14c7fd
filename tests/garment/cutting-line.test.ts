import { describe, expect, it } from 'vitest';
import { cuttingLine } from '#garment/cutting-line.ts';
import { enclosedArea } from '#geometry/area.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { arcPath } from '#geometry/arc.ts';
import { pathEnd, pathReversed, pathStart, polyline } from '#geometry/path.ts';
import { at, distance } from '#geometry/point.ts';
import { segmentPoint } from '#geometry/segment.ts';
import { mm, radians } from '#shared/units.ts';
import { expectPlace } from '../geometry/close.ts';
import { cornersOf, cutCorners, edge, polygonEdges } from './edges.ts';

/** 120 wide and 200 long: 8 on the shoulder, 15 on the side, 30 on the hem, and a fold on the left. */
const HALF_PIECE = polygonEdges([0, 0, 8], [120, 0, 15], [120, 200, 30, 'hem'], [0, 200, 12, 'fold']);

describe('a rectangle', () => {
	it('has each edge its own allowance, and none on the fold whatever is said', () => {
		expect(cornersOf(cuttingLine(HALF_PIECE))).toEqual([
			[0, -8],
			[135, -8],
			[135, 230],
			[0, 230]
		]);
	});

	it('has the same run the other way round', () => {
		const back = [...HALF_PIECE].reverse().map((each) => ({ ...each, path: pathReversed(each.path) }));
		const cut = cuttingLine(back);
		expect([...cornersOf(cut)].sort()).toEqual([...cornersOf(cuttingLine(HALF_PIECE))].sort());
		expect(enclosedArea(cut.outline)).toBeCloseTo(-135 * 238, 6);
	});

	it('gives the part beside each edge by its name', () => {
		const { edges } = cuttingLine(HALF_PIECE);
		expect(edges.map(({ name }) => name)).toEqual(['edge 1', 'edge 2', 'edge 3', 'edge 4']);
		const [top, side, hem, fold] = edges.map(({ path }) => path);
		expect(top).toEqual(polyline(at(0, -8), at(120, -8)));
		expect(side).toEqual(polyline(at(135, 0), at(135, 200)));
		expect(hem).toEqual(polyline(at(120, 230), at(0, 230)));
		expect(fold).toEqual(polyline(at(0, 200), at(0, 0)));
	});

	it('without allowances is cut along its stitching line', () => {
		expect(cutCorners([0, 0, 0], [50, 0, 0], [50, 70, 0], [0, 70, 0])).toEqual([
			[0, 0],
			[50, 0],
			[50, 70],
			[0, 70]
		]);
	});

	it('drops edges of no length', () => {
		expect(cutCorners([0, 0, 5], [50, 0, 9], [50, 0, 7], [50, 70, 3], [0, 70, 4])).toEqual([
			[-4, -5],
			[57, -5],
			[57, 73],
			[-4, 73]
		]);
	});
});

describe('a mitred corner', () => {
	it('is where both cutting lines meet: a triangle of 3, 4 and 5', () => {
		// 10 outside a slope of 3 to 4 is 10 / 0.8 further up; and 10 further out on the left that is 7.5 more.
		const corners = cutCorners([0, 0, 10], [160, 120, 10], [0, 120, 10]);
		expect(corners[0]).toEqual([-10, -20]);
		expect(corners.at(-1)).toEqual([-10, 130]);
	});

	it('past two and a half allowances is cut off square', () => {
		// The half angle at (240, 0) has sine 7/25: the tip would lie 20 / 0.28 = 71.4 away.
		const [, upper, lower] = cutCorners([0, -70, 20], [240, 0, 20], [0, 70, 20]);
		expect(upper).toEqual([290, -6.25]);
		expect(lower).toEqual([290, 6.25]);
	});

	it('just within them is not', () => {
		// Half angle with sine 3/5: the tip lies 20 / 0.6 away.
		const corners = cutCorners([0, -90, 20], [120, 0, 20], [0, 90, 20]);
		expect(corners).toHaveLength(3);
		expect(corners[1]).toEqual([Number((120 + 20 / 0.6).toFixed(6)), 0]);
	});

	it('of different allowances cut off is square to where they would have met', () => {
		const { outline } = cuttingLine(polygonEdges([0, -20, 12], [240, 0, 30], [0, 20, 20]));
		const flat = outline.find(({ from, to }) => from.x > 240 && to.x > 240);
		const middle = flat && segmentPoint(flat, 0.5);
		expect(selfCrossings(outline)).toEqual([]);
		expect(middle && distance(middle, at(240, 0))).toBeLessThan(2.5 * 30 + 10);
		expect(Math.max(...outline.map(({ to }) => to.x))).toBeLessThan(240 + 2.6 * 30);
	});
});

describe('a corner by rule', () => {
	it('trim cuts a right angle off at the allowance', () => {
		const [, one, other] = cutCorners([0, 0, 20, 'seam', 'trim'], [100, 0, 20], [100, 90, 20], [0, 90, 20]);
		const cut = 20 * (Math.SQRT2 - 1);
		expect(one?.[0]).toBeCloseTo(100 + cut, 6);
		expect(one?.[1]).toBeCloseTo(-20, 6);
		expect(other?.[0]).toBeCloseTo(120, 6);
		expect(other?.[1]).toBeCloseTo(-cut, 6);
	});

	it('square ends the first allowance where its stitching line meets the next cutting line', () => {
		// The second edge goes by (-3, 4): its cutting line lies 8 / 0.8 = 10 beyond the corner on the first's line.
		const [, one, other] = cutCorners([0, 0, 20, 'seam', 'square'], [200, 0, 8], [80, 160, 5], [0, 160, 5]);
		expect(one).toEqual([210, -20]);
		expect(other).toEqual([210, 0]);
	});

	it('square at a blunt corner stands out from the next cutting line', () => {
		const [, one, other] = cutCorners([0, 0, 20, 'seam', 'square'], [200, 0, 8], [320, 160, 5], [0, 160, 5]);
		expect(one).toEqual([210, -20]);
		expect(other).toEqual([210, 0]);
	});

	it('square at a right angle is a mitre', () => {
		const corners = cutCorners([0, 0, 20, 'seam', 'square'], [200, 0, 8], [200, 50, 5], [0, 50, 5]);
		expect(corners[1]).toEqual([208, -20]);
		expect(corners).toHaveLength(4);
	});

	it('a hem may be mitred where it is asked for', () => {
		const slanted = cutCorners(
			[0, 0, 10],
			[100, 0, 10, 'seam', 'mitre'],
			[220, 160, 30, 'hem'],
			[0, 160, 0, 'fold']
		);
		// The side's line through (228, 154) by (3, 4) reaches the hem's cutting line at depth 190.
		expect(slanted[2]).toEqual([255, 190]);
	});
});

describe('a turned-up hem', () => {
	it('mirrors the side that flares outward', () => {
		const corners = cutCorners([0, 0, 10], [100, 0, 10], [220, 160, 30, 'hem'], [0, 160, 0, 'fold']);
		// Through (228, 154) by (3, 4): at the hem's depth, 160, it is at 232.5; from there back by (-3, 4) to depth 190.
		expect(corners.slice(2)).toEqual([
			[232.5, 160],
			[210, 190],
			[0, 190]
		]);
	});

	it('mirrors the side that runs inward, also where the hem comes first', () => {
		const corners = cutCorners([0, 0, 5, 'hem'], [120, 0, 7], [120, 80, 40, 'hem'], [60, 80, 10]);
		// The last side runs by (-3, -4) from (60, 80). Its line, through (52, 86), is at 47.5 at the hem; mirrored it goes on
		// from there by (-3, 4): at the hem's cutting line, 40 lower, it is 30 further out.
		expect(corners.slice(2, 5)).toEqual([
			[127, 120],
			[17.5, 120],
			[47.5, 80]
		]);
		// At the upper hem the same line is at -12.5, and 5 higher 3.75 further in.
		expect(corners.at(-1)).toEqual([-12.5, 0]);
		expect(corners[0]).toEqual([-8.75, -5]);
	});

	it('at a fold only runs on to the fold', () => {
		expect(cutCorners([0, 0, 6], [90, 0, 0, 'fold'], [90, 70, 25, 'hem'], [0, 70, 9])).toEqual([
			[-9, -6],
			[90, -6],
			[90, 95],
			[-9, 95]
		]);
	});
});

describe('at a fold', () => {
	it('a cutting line that slants runs on to the fold, or ends at it', () => {
		// Up to the fold by (-4, 3) and by (-4, -3) from both ends: the line 10 outside meets the fold 10 / 0.8 beyond the corner.
		const corners = cutCorners([0, 0, 10], [80, 60, 5], [80, 140, 10], [0, 200, 0, 'fold']);
		expect(corners[0]).toEqual([0, -12.5]);
		expect(corners.at(-1)).toEqual([0, 212.5]);
		const blunt = cutCorners([0, 0, 10], [80, -60, 5], [80, 260, 10], [0, 200, 0, 'fold']);
		expect(blunt[0]).toEqual([0, -12.5]);
		expect(blunt.at(-1)).toEqual([0, 212.5]);
	});
});

describe('edges that run on into each other', () => {
	it('with one allowance are cut in one line', () => {
		expect(cutCorners([0, 0, 9], [40, 0, 9], [100, 0, 7], [100, 50, 5], [0, 50, 3])).toEqual([
			[-3, -9],
			[107, -9],
			[107, 55],
			[-3, 55]
		]);
	});

	it('with different allowances have a step square to the stitching line', () => {
		expect(cutCorners([0, 0, 9], [40, 0, 25], [100, 0, 7], [100, 50, 5], [0, 50, 3])).toEqual([
			[-3, -9],
			[40, -9],
			[40, -25],
			[107, -25],
			[107, 55],
			[-3, 55]
		]);
	});

	it('with a small corner between them and different allowances keep both', () => {
		// The second edge falls by 7 in 24: its allowance ends square to it, down to the first cutting line 5 outside.
		const corners = cutCorners([0, 0, 5], [100, 0, 25], [340, 70, 6], [0, 70, 6]);
		expect(corners.slice(1, 3)).toEqual([
			[Number((100 + (5 * 7) / 24).toFixed(6)), -5],
			[107, -24]
		]);
	});
});

describe('a corner that points into the piece', () => {
	it('ends both cutting lines where they cross', () => {
		const corners = cutCorners([0, 0, 4], [30, 0, 5], [30, 40, 6], [90, 40, 7], [90, 100, 8], [0, 100, 9]);
		expect(corners).toEqual([
			[-9, -4],
			[35, -4],
			[35, 34],
			[97, 34],
			[97, 108],
			[-9, 108]
		]);
	});

	it('is filled where the edge between is shorter than the allowances', () => {
		// A slit 10 wide and 30 deep closes under 8 on either side.
		const cut = cuttingLine(
			polygonEdges(
				[0, 0, 8],
				[40, 0, 8],
				[40, 30, 8],
				[50, 30, 8],
				[50, 0, 8],
				[90, 0, 8],
				[90, 60, 8],
				[0, 60, 8]
			)
		);
		expect(selfCrossings(cut.outline)).toEqual([]);
		expect(enclosedArea(cut.outline)).toBeCloseTo(106 * 76, 1);
		expect(cut.outline.every(({ from, to }) => distance(from, to) > 1)).toBe(true);
	});

	it('with different allowances at a blunt corner keeps both', () => {
		const cut = cuttingLine(
			polygonEdges([0, 0, 30], [150, 40, 10], [300, 0, 10], [300, 100, 10], [0, 100, 10])
		);
		expect(selfCrossings(cut.outline)).toEqual([]);
		// The wider ends square to its edge beside the corner.
		const size = Math.hypot(150, 40);
		const end = at(150 + (30 * 40) / size, 40 - (30 * 150) / size);
		expect(Math.min(...cut.outline.map(({ from }) => distance(from, end)))).toBeLessThan(1e-6);
	});
});

describe('an edge with a corner in it', () => {
	it('is cut as one edge, mitred outside and crossed inside', () => {
		const side = edge('side', polyline(at(100, 0), at(80, 50), at(100, 100), at(100, 150)), [10]);
		const { outline, edges } = cuttingLine([
			edge('top', polyline(at(0, 0), at(100, 0)), [6]),
			side,
			edge('hem', polyline(at(100, 150), at(0, 150)), [20, 'hem']),
			edge('fold', polyline(at(0, 150), at(0, 0)), [0, 'fold'])
		]);
		expect(edges.map(({ name }) => name)).toEqual(['top', 'side', 'hem', 'fold']);
		expect(selfCrossings(outline)).toEqual([]);
		// The lines cross level with the waist at 80, as far out as 10 measured square to (2, 5).
		const waist = outline.find(({ from }) => Math.abs(from.y - 50) < 1e-6);
		expectPlace(waist?.from, 80 + (10 * Math.sqrt(29)) / 5, 50, 6);
		expect(edges[1]?.path).toHaveLength(3);
	});

	it('may go all round: a circle of 50 with 15 has 65', () => {
		const circle = arcPath(at(7, 9), at(57, 9), radians(2 * Math.PI));
		const { outline } = cuttingLine([edge('round', circle, [15])]);
		expect(Math.abs(enclosedArea(outline) / (Math.PI * 65 ** 2) - 1)).toBeLessThan(1e-4);
		expect(distance(pathStart(outline), pathEnd(outline))).toBe(0);
	});
});

describe('what cannot be cut', () => {
	it('throws, saying what is wrong', () => {
		const [top, side, hem, fold] = HALF_PIECE;
		if (!top || !side || !hem || !fold) throw new Error('the piece has four edges');
		expect(() => cuttingLine([top, hem, fold])).toThrow('edge 3 starts 200 mm from the end of edge 1');
		expect(() => cuttingLine([top, { ...side, allowance: mm(-3) }, hem, fold])).toThrow(
			'the allowance of edge 2 is -3 mm'
		);
		expect(() => cuttingLine([])).toThrow('at least one edge');
		const spot = edge('spot', polyline(at(1, 1), at(1, 1)), [5]);
		expect(() => cuttingLine([spot])).toThrow('at least one edge with a length');
	});
});
