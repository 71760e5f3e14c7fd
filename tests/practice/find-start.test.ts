import { describe, expect, it } from 'vitest';
import { judge, judgedWords } from '#practice/exercises/kinds.ts';
import { english } from '../support/speech.ts';
import { made } from './answers.ts';

describe('where a rule starts', () => {
	// The drafting rules of the blocks: "U from A across", "S swung from N", "D from U toward V", "T from B across".
	it.each([
		['back-block', 'U', 'A'],
		['back-block', 'J', 'H'],
		['front-block', 'S', 'N'],
		['front-block', 'D', 'U'],
		['front-block', 'T', 'B']
	])('of %s: %s is measured from %s', (method, step, start) => {
		const asked = made('find-start', 1, method, step);
		expect(judge(asked, { point: start }).answer).toBe('right');
		const others = Object.keys(asked.soFar.points).filter(
			(name) => name !== start && !asked.used.includes(name)
		);
		expect(others.length).toBeGreaterThan(2);
		for (const point of others) expect(judge(asked, { point }).answer, point).toBe('wrong');
	});

	it('what the rule uses besides is neither right nor a mistake', () => {
		const judged = judge(made('find-start', 1, 'front-block', 'D'), { point: 'V' });
		expect(judged.answer).toBe('unfinished');
		expect(judgedWords(judged, english).headline).toBe(
			'The rule of D uses V too, but the measuring does not begin there.'
		);
	});

	it('the first help names a few points, the start among them, and does not say which', () => {
		for (const [method, step] of [
			['back-block', 'U'],
			['front-block', 'D'],
			['front-block', 'T']
		] as const) {
			const { among, start, soFar } = made('find-start', 1, method, step);
			expect(among).toHaveLength(3);
			expect(among).toContain(start);
			expect(Object.keys(soFar.points).filter((name) => among.includes(name))).toEqual(among);
		}
	});

	it('what does not stand on the sheet, or is no name, costs nothing', () => {
		const asked = made('find-start', 1, 'back-block', 'U');
		for (const answer of [{ point: 'U' }, { point: 'constructor' }, { point: 3 }, 'A'])
			expect(judge(asked, answer).answer).toBe('not-valid');
		expect(judge(asked, undefined).answer).toBe('unfinished');
	});
});
