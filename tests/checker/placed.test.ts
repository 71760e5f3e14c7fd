import { describe, expect, it } from 'vitest';
import { placementSchema } from '#shared/placement.ts';
import { pathOfPlacement, placementOfPath, placeOfPoint, pointOfPlace } from '#checker/placed.ts';
import { at } from '#geometry/point.ts';
import { cubic, straight } from '#geometry/segment.ts';
import { DESKS } from './drafts.ts';

describe('a line and its placement', () => {
	it('straight and curved pieces keep their places', () => {
		const placement = placementOfPath([
			straight(at(1, 2), at(3, 4)),
			cubic(at(3, 4), at(5, 6), at(7, 8), at(9, 10))
		]);
		expect(placement).toEqual({
			kind: 'line',
			segments: [
				{ from: [1, 2], to: [3, 4] },
				{ from: [3, 4], leaving: [5, 6], arriving: [7, 8], to: [9, 10] }
			]
		});
		expect(placementSchema.parse(placement)).toEqual(placement);
	});

	it('every line of every draft comes back as it went', () => {
		for (const { draft } of DESKS)
			for (const { path } of Object.values(draft.lines))
				expect(pathOfPlacement(placementOfPath(path))).toEqual(path);
	});

	it('a place is across, then down', () => {
		expect(placeOfPoint(at(12, 34))).toEqual([12, 34]);
		expect(pointOfPlace([12, 34])).toEqual({ x: 12, y: 34 });
	});
});
