import { describe, expect, it } from 'vitest';
import { pathEnd, pathLength, pathStart, pointAtLength, polyline, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { pathPart, pathSection, segmentPart } from '#geometry/section.ts';
import { cubic, segmentPoint, straight, type Segment } from '#geometry/segment.ts';
import { mm } from '#shared/units.ts';
import { expectPlace } from './close.ts';

/** An arch 10 wide and 7.5 high. */
const ARCH = cubic(at(0, 0), at(0, 10), at(10, 10), at(10, 0));
/** Down 10, across 20, up 5: 35 long. */
const HOOK = polyline(at(0, 0), at(0, 10), at(20, 10), at(20, 5));
const LOPSIDED = cubic(at(30, 5), at(50, 5), at(60, 45), at(110, 40));
/** Straight, curved, straight. */
const SEAM: Path = [straight(at(0, 5), at(30, 5)), LOPSIDED, straight(at(110, 40), at(110, 100))];

const expectSegment = (segment: Segment, expected: Segment): void => {
	expect(segment.kind).toBe(expected.kind);
	for (const t of [0, 0.2, 0.5, 0.9, 1]) {
		const { x, y } = segmentPoint(expected, t);
		expectPlace(segmentPoint(segment, t), x, y);
	}
};

describe('segmentPart', () => {
	it('halves an arch by hand', () => {
		expectSegment(segmentPart(ARCH, 0, 0.5), cubic(at(0, 0), at(0, 5), at(2.5, 7.5), at(5, 7.5)));
		expectSegment(segmentPart(ARCH, 0.5, 1), cubic(at(5, 7.5), at(7.5, 7.5), at(10, 5), at(10, 0)));
	});

	it('runs as the whole does between its parameters', () => {
		const part = segmentPart(LOPSIDED, 0.3, 0.8);
		for (const t of [0, 0.25, 0.6, 1]) {
			const { x, y } = segmentPoint(LOPSIDED, 0.3 + 0.5 * t);
			expectPlace(segmentPoint(part, t), x, y);
		}
	});

	it('of a straight piece is straight, and of the whole is the same', () => {
		expectSegment(segmentPart(straight(at(1, 2), at(9, 6)), 0.25, 0.75), straight(at(3, 3), at(7, 5)));
		expect(segmentPart(ARCH, 0, 1)).toBe(ARCH);
	});
});

describe('pathSection', () => {
	it('of straight pieces, by hand', () => {
		expect(pathSection(HOOK, mm(4), mm(13))).toEqual(polyline(at(0, 4), at(0, 10), at(3, 10)));
		expect(pathSection(HOOK, mm(12), mm(15))).toEqual(polyline(at(2, 10), at(5, 10)));
	});

	it('keeps whole segments as they are', () => {
		const section = pathSection(SEAM, mm(10), mm(pathLength(SEAM) - 10));
		expect(section).toHaveLength(3);
		expect(section?.[1]).toBe(LOPSIDED);
		expect(pathSection(SEAM, mm(0), pathLength(SEAM))).toEqual(SEAM);
		expect(pathSection(SEAM, mm(30), mm(pathLength(SEAM) - 60))?.[0]).toBe(LOPSIDED);
	});

	it('is as long as it was asked to be, and lies where the path does', () => {
		for (const [from, to] of [
			[33, 61],
			[5, 47.5],
			[71, 150]
		] as const) {
			const section = pathSection(SEAM, mm(from), mm(to));
			if (!section) throw new Error('there is such a section');
			expect(pathLength(section)).toBeCloseTo(to - from, 5);
			const [start, middle, end] = [from, (from + to) / 2, to].map((along) => pointAtLength(SEAM, mm(along)));
			expectPlace(pathStart(section), start?.x ?? NaN, start?.y ?? NaN, 5);
			expectPlace(pathEnd(section), end?.x ?? NaN, end?.y ?? NaN, 5);
			const halfway = pointAtLength(section, mm((to - from) / 2));
			expectPlace(halfway, middle?.x ?? NaN, middle?.y ?? NaN, 5);
		}
	});

	it('two sections that meet make the whole', () => {
		const [head, tail] = [pathSection(SEAM, mm(0), mm(77)), pathSection(SEAM, mm(77), pathLength(SEAM))];
		if (!head || !tail) throw new Error('there are such sections');
		expect(pathLength(head) + pathLength(tail)).toBeCloseTo(pathLength(SEAM), 5);
		const { x, y } = pathEnd(head);
		expectPlace(pathStart(tail), x, y);
	});

	it('forgives noise at either end', () => {
		expect(pathSection(HOOK, mm(-1e-9), mm(35 + 1e-9))).toEqual(HOOK);
		expect(pathSection(HOOK, mm(10 - 1e-9), mm(30 + 1e-9))).toEqual(polyline(at(0, 10), at(20, 10)));
	});

	it('is not there outside the path, nor where it has no length', () => {
		expect(pathSection(HOOK, mm(-0.1), mm(5))).toBeUndefined();
		expect(pathSection(HOOK, mm(5), mm(35.1))).toBeUndefined();
		expect(pathSection(HOOK, mm(7), mm(7))).toBeUndefined();
		expect(pathSection(HOOK, mm(9), mm(8))).toBeUndefined();
		expect(pathSection(polyline(at(3, 3), at(3, 3)), mm(0), mm(0))).toBeUndefined();
	});
});

describe('pathPart', () => {
	it('goes by positions: the second half of the first piece, and a quarter of the second', () => {
		expect(pathPart(HOOK, 0.5, 1.25)).toEqual(polyline(at(0, 5), at(0, 10), at(5, 10)));
		expect(pathPart(HOOK, 2, 3)).toEqual(polyline(at(20, 10), at(20, 5)));
	});

	it('is not there where it has no length', () => {
		expect(pathPart(HOOK, 1.5, 1.5)).toBeUndefined();
		expect(pathPart(HOOK, 2, 1)).toBeUndefined();
	});
});
