import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { polyline } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { cubic } from '#geometry/segment.ts';
import { levelCrossings, widthAtLevel } from '#geometry/width.ts';

const close = (value: number, wanted: number): void => {
	expect(Math.abs(value - wanted)).toBeLessThan(1e-9);
};

describe('the crossings of a level', () => {
	it('are worked on straight lines by their shares', () => {
		expect(levelCrossings(polyline(at(0, 0), at(100, 50), at(200, 0)), mm(25))).toEqual([50, 150]);
	});
	it('count a corner on the level once', () => {
		expect(levelCrossings(polyline(at(0, 0), at(100, 50), at(80, 100)), mm(50))).toEqual([100]);
	});
	it('are found on a curve that rises and falls again', () => {
		// By symmetry of y = 4·h·t(1−t), and x = 100·t: y = 75 where t = 1/4 and 3/4 of a curve with handles at 4h/3.
		const h = 100;
		const curve = cubic(at(0, 0), at(100 / 3, (4 * h) / 3), at(200 / 3, (4 * h) / 3), at(100, 0));
		const [one = NaN, other = NaN] = levelCrossings([curve], mm(75));
		close(one, 25);
		close(other, 75);
	});
});

describe('the width of an outline', () => {
	// A rectangle 200 wide and 300 deep.
	const box = polyline(at(0, 0), at(200, 0), at(200, 300), at(0, 300), at(0, 0));
	it('is the way across', () => {
		expect(widthAtLevel(box, [], mm(100))).toBe(200);
	});
	it('is nothing where the outline does not reach', () => {
		expect(widthAtLevel(box, [], mm(301))).toBe(0);
	});
	it('reaches a corner that the level only touches: an underarm, to which an armhole comes up from below', () => {
		const dipped = polyline(
			at(0, 0),
			at(150, 0),
			at(150, 110),
			at(200, 100),
			at(200, 300),
			at(0, 300),
			at(0, 0)
		);
		expect(widthAtLevel(dipped, [], mm(100))).toBeCloseTo(200, 6);
	});
	it('is less by what an upright dart takes at that level', () => {
		const [tip, left, right] = [at(100, 50), at(90, 150), at(110, 150)];
		const dart = { legs: [polyline(tip, left), polyline(tip, right)] as const, tip };
		expect(widthAtLevel(box, [dart], mm(150 - 1e-9))).toBeCloseTo(180, 6);
		expect(widthAtLevel(box, [dart], mm(100))).toBeCloseTo(190, 9);
		expect(widthAtLevel(box, [dart], mm(49))).toBe(200);
	});
	it('goes on beyond a sideways dart in the cloth that it is sewn to', () => {
		// The side is the upright line x = 200. The dart's tip lies 100 from it, its legs 0 and 20 degrees below level: folded shut, the
		// part above is turned down by 20 degrees onto the lower leg, or the part below up onto the upper.
		const tip = at(100, 100);
		const angle = (20 * Math.PI) / 180;
		const legs = [polyline(tip, at(200, 100)), polyline(tip, at(200, 100 + 100 * Math.tan(angle)))] as const;
		// A level just above both legs goes straight to the side.
		expect(widthAtLevel(box, [{ legs, tip }], mm(99))).toBe(200);
		// One 10 below the tip comes to the lower leg, and goes on in the part above, which is turned about the tip by 20 degrees. That
		// part's side, 100 from the tip, is met where (x − 100)·cos 20° + 10·sin 20° = 100.
		const wanted = 100 + (100 - 10 * Math.sin(angle)) / Math.cos(angle);
		close(widthAtLevel(box, [{ legs, tip }], mm(110)), wanted);
	});
});
