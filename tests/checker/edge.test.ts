import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { checkEdge } from '#checker/check-edge.ts';
import { placementOfPath } from '#checker/placed.ts';
import { pathReversed, polyline, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { cubic } from '#geometry/segment.ts';

/** A symmetrical curve 200 mm wide, that is deepest half way: three quarters of what its handles are. */
const curve = (deep: number, from = 0): Path => [
	cubic(at(0, from), at(60, from + (deep * 4) / 3), at(140, from + (deep * 4) / 3), at(200, from))
];
const RIGHT = curve(40);
const checked = (placed: Path, error?: number) =>
	checkEdge({ ...placementOfPath(placed), ...(error === undefined ? {} : { error: mm(error) }) }, RIGHT);
const worst = (placed: Path): number => {
	const verdict = checked(placed);
	if (!('findings' in verdict)) throw new Error('it was judged');
	const course = verdict.findings.find(({ aspect }) => aspect === 'course');
	return course?.aspect === 'course' ? course.away : NaN;
};

describe('the edge of a paper piece against the pattern', () => {
	it('is right as the pattern has it, from either end', () => {
		expect(checked(RIGHT).answer).toBe('right');
		expect(checked(pathReversed(RIGHT)).answer).toBe('right');
	});
	it('is judged by how far it strays, which for one that is 8 mm too deep is 8 mm', () => {
		expect(worst(curve(48))).toBeCloseTo(8, 2);
		expect(checked(curve(48)).answer).toBe('wrong');
		expect(checked(curve(41)).answer).toBe('right');
	});
	it('is judged by its ends: 3 mm is more than a corner may lie off', () => {
		const verdict = checked(curve(40, 3));
		expect(verdict.answer).toBe('wrong');
		const failed = 'findings' in verdict ? verdict.findings.filter(({ within }) => !within) : [];
		expect(failed.map(({ aspect }) => aspect)).toEqual(['start', 'end']);
	});
	it('is judged by its length where it wavers about the right way', () => {
		const saw = Array.from({ length: 38 }, (_, i) => at(5 * i + 10, i % 2 === 0 ? 2 : 0));
		const straight = polyline(at(0, 0), at(200, 0));
		const path = polyline(at(0, 0), at(5, 0), ...saw, at(200, 0));
		const verdict = checkEdge(placementOfPath(path), straight);
		expect(verdict.answer).toBe('wrong');
		const failed = 'findings' in verdict ? verdict.findings.filter(({ within }) => !within) : [];
		expect(failed.map(({ aspect }) => aspect)).toEqual(['length']);
	});
	it('is right or wrong only where it is wherever the measuring may have put it', () => {
		for (const [deep, error, answer] of [
			[40, 1.5, 'right'],
			[42, 1.5, 'cannot-tell'],
			[44, 1.5, 'cannot-tell'],
			[48, 1.5, 'wrong'],
			[48, 6, 'cannot-tell'],
			[40, 2.5, 'cannot-tell']
		] as const)
			expect(checked(curve(deep), error).answer, `${String(deep)} ± ${String(error)}`).toBe(answer);
	});
});
