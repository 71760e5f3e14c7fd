import { describe, expect, it } from 'vitest';
import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import { DESKS, findingOf, HERON_BACK, marked, verdictOn } from './drafts.ts';

describe('a point, against A of Heron, 222 mm down', () => {
	it('is told how far off it lies, and how far across and down: 9 and 12 make 15', () => {
		const verdict = verdictOn(HERON_BACK, 'A', marked(9, 234));
		expect(verdict.answer).toBe('wrong');
		expect(findingOf(verdict, 'place')).toEqual({
			aspect: 'place',
			within: false,
			note: 'place',
			offBy: 15,
			across: 9,
			down: 12,
			tolerance: 2
		});
	});

	it('across is positive outward, down is positive downward', () => {
		expect(findingOf(verdictOn(HERON_BACK, 'A', marked(-3, 218)), 'place')).toMatchObject({
			offBy: 5,
			across: -3,
			down: -4
		});
	});

	it.each([
		[0, 224],
		[0, 220],
		[2, 222],
		[-2, 222],
		[1.2, 223.6],
		[-1.6, 220.8]
	])('exactly 2 mm off, at %d, %d, is right', (across, down) => {
		expect(verdictOn(HERON_BACK, 'A', marked(across, down)).answer).toBe('right');
	});

	it.each([
		[0, 224.001],
		[2.001, 222],
		[1.2006, 223.6008],
		[-1.5, 220.5]
	])('a thousandth of a millimetre more, at %d, %d, is wrong', (across, down) => {
		expect(verdictOn(HERON_BACK, 'A', marked(across, down)).answer).toBe('wrong');
	});

	it('the note holds no numbers, so that a class’s mistakes can be counted', () => {
		const notes = [marked(9, 234), marked(0, 300)].map(
			(placed) => findingOf(verdictOn(HERON_BACK, 'A', placed), 'place').note
		);
		expect(new Set(notes).size).toBe(1);
		expect(notes[0]).not.toMatch(/\d/);
	});
});

describe('the edge of the tolerance, wherever the point lies', () => {
	const points = DESKS.flatMap((desk) =>
		Object.entries(desk.draft.points).map(([step, { x, y }]) => ({ desk, step, x, y }))
	);

	it('is the same 2 mm for every point of every body, though sums of such numbers end in noise', () => {
		expect(points.length).toBeGreaterThan(100);
		expect(POINT_TOLERANCE).toBe(2);
		for (const { desk, step, x, y } of points) {
			for (const [right, down] of [
				[2, 0],
				[-2, 0],
				[0, 2],
				[0, -2],
				[1.2, 1.6],
				[-1.6, 1.2]
			] as const) {
				const spot = `${desk.body} ${step} ${right} ${down}`;
				expect(verdictOn(desk, step, marked(x + right, y + down)).answer, spot).toBe('right');
				const beyond = marked(x + right * 1.0005, y + down * 1.0005);
				expect(verdictOn(desk, step, beyond).answer, spot).toBe('wrong');
			}
		}
	});
});
