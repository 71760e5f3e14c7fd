import { describe, expect, it } from 'vitest';
import { crossings, selfCrossings } from '#geometry/kernel/crossings.ts';
import { polyline, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { cubic } from '#geometry/segment.ts';
import { expectPlace } from './close.ts';

describe('crossings', () => {
	it('of two straight lines', () => {
		const found = crossings(polyline(at(0, 0), at(8, 6)), polyline(at(4, -5), at(4, 50)));
		expect(found).toHaveLength(1);
		expectPlace(found[0], 4, 3);
	});

	it('counts an end that touches, and not a near miss', () => {
		const level = polyline(at(0, 3), at(9, 3));
		expect(crossings(level, polyline(at(5, 3), at(5, 8)))).toHaveLength(1);
		expect(crossings(level, polyline(at(5, 3.001), at(5, 8)))).toHaveLength(0);
	});

	it('of a level and the parabola y = 4 - 4 ((x - 5) / 5)²', () => {
		const third = 16 / 3;
		const arch: Path = [cubic(at(0, 0), at(10 / 3, third), at(20 / 3, third), at(10, 0))];
		const found = [...crossings(arch, polyline(at(-1, 3), at(11, 3)))].sort((a, b) => a.x - b.x);
		expect(found).toHaveLength(2);
		expectPlace(found[0], 2.5, 3, 6);
		expectPlace(found[1], 7.5, 3, 6);
	});
});

describe('selfCrossings', () => {
	it('a square has none, a bow tie has one', () => {
		expect(selfCrossings(polyline(at(0, 0), at(9, 0), at(9, 9), at(0, 9)))).toEqual([]);
		const bow = selfCrossings(polyline(at(0, 0), at(10, 10), at(10, 0), at(0, 10)));
		expect(bow.length).toBeGreaterThan(0);
		expectPlace(bow[0], 5, 5);
	});

	it('the side that closes an outline counts', () => {
		const [found, ...more] = selfCrossings(polyline(at(0, 0), at(10, 0), at(10, 10), at(20, 5)));
		expectPlace(found, 10, 2.5);
		expect(more).toEqual([]);
	});

	it('a single curve that loops crosses itself', () => {
		const loop: Path = [cubic(at(0, 0), at(30, 20), at(-20, 20), at(10, 0))];
		expect(selfCrossings(loop).length).toBeGreaterThan(0);
	});
});
