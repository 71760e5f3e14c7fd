import { describe, expect, it } from 'vitest';
import {
	CORNER_SHARE,
	cornerCurve,
	curveCorner,
	thirdsCurve,
	type CurveEnd
} from '#geometry/corner-curve.ts';
import { at } from '#geometry/point.ts';
import { expectPlace } from './close.ts';

const ACROSS = { dx: 1, dy: 0 };
const DOWN = { dx: 0, dy: 1 };
const UP = { dx: 0, dy: -1 };

/** Leaves (1, 2) straight across and arrives at (7, 10) straight down: the corner is (7, 2). */
const start: CurveEnd = { point: at(1, 2), heading: ACROSS };
const end: CurveEnd = { point: at(7, 10), heading: DOWN };

describe('curveCorner', () => {
	it('lies ahead of the start and behind the end', () => {
		expectPlace(curveCorner(start, end), 7, 2);
	});

	it('there is none where an end would have to go backward', () => {
		expect(curveCorner(start, { ...end, heading: UP })).toBeUndefined();
		expect(curveCorner({ ...start, heading: { dx: -1, dy: 0 } }, end)).toBeUndefined();
		expect(curveCorner({ ...start, point: at(7, 2) }, end)).toBeUndefined();
	});

	it('there is none between parallel ends', () => {
		expect(curveCorner({ ...start, heading: DOWN }, end)).toBeUndefined();
	});
});

describe('cornerCurve', () => {
	it('sets each handle 0.552 of the way to the corner', () => {
		expect(CORNER_SHARE).toBeCloseTo(0.5522847498, 10);
		const curve = cornerCurve(start, end);
		expectPlace(curve.leaving, 1 + 6 * CORNER_SHARE, 2);
		expectPlace(curve.arriving, 7, 10 - 8 * CORNER_SHARE);
		expect([curve.from, curve.to]).toEqual([at(1, 2), at(7, 10)]);
	});

	it('without a corner goes a third of the chord, 10, along each heading', () => {
		const curve = cornerCurve(start, { ...end, heading: UP });
		expectPlace(curve.leaving, 1 + 10 / 3, 2);
		expectPlace(curve.arriving, 7, 10 + 10 / 3);
	});
});

describe('thirdsCurve', () => {
	it('lays both handles a third of the chord from their ends', () => {
		const curve = thirdsCurve(
			{ point: at(2, 3), heading: { dx: 0.6, dy: 0.8 } },
			{ point: at(11, 15), heading: DOWN }
		);
		expectPlace(curve.leaving, 5, 7);
		expectPlace(curve.arriving, 11, 10);
	});

	it('of no chord has its handles on the spot', () => {
		const curve = thirdsCurve(start, { ...end, point: at(1, 2) });
		expect([curve.leaving, curve.arriving]).toEqual([at(1, 2), at(1, 2)]);
	});
});
