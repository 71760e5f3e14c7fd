import { describe, expect, it } from 'vitest';
import { isProbeDue, NO_PROBES, probeSet, probesSchema, withFinished, withTaken } from '#practice/probe.ts';
import { z } from '#shared/shape.ts';
import { BACK } from './methods.ts';

const FINISHED = withFinished(NO_PROBES, ['back-block'], '2026-02-25');

describe('what has stayed of a part', () => {
	it('is to be tried from the seventh day on, over the end of a month too, and not of what was not finished', () => {
		expect(isProbeDue(FINISHED, 'back-block', '2026-03-03')).toBe(false);
		expect(isProbeDue(FINISHED, 'back-block', '2026-03-04')).toBe(true);
		expect(isProbeDue(FINISHED, 'back-block', '2026-07-01')).toBe(true);
		expect(isProbeDue(FINISHED, 'front-block', '2026-07-01')).toBe(false);
	});

	it('counts from the day on which the part was first finished', () => {
		expect(withFinished(FINISHED, ['back-block'], '2026-03-20')).toBe(FINISHED);
		const both = withFinished(FINISHED, ['back-block', 'front-block'], '2026-03-20');
		expect(both.parts).toMatchObject({
			'back-block': { finished: '2026-02-25' },
			'front-block': { finished: '2026-03-20' }
		});
	});

	it('is tried once: the first result stands', () => {
		const taken = withTaken(FINISHED, 'back-block', '2026-03-05', 4, 5);
		expect(isProbeDue(taken, 'back-block', '2026-03-05')).toBe(false);
		expect(withTaken(taken, 'back-block', '2026-04-05', 5, 5)).toBe(taken);
		expect(withTaken(taken, 'front-block', '2026-04-05', 5, 5)).toBe(taken);
		expect(z.parse(probesSchema, JSON.parse(JSON.stringify(taken)))).toEqual(taken);
		expect(() => z.parse(probesSchema, { parts: { a: { finished: '2026-13-01' } } })).toThrow();
	});

	it('takes five exercises of that part, no rule twice in a row and none shown first', () => {
		const set = probeSet(7, BACK, '2026-03-05');
		expect(set).toHaveLength(5);
		expect(new Set(set.map(({ method }) => method))).toEqual(new Set(['back-block']));
		expect(set.some(({ exampleFirst }) => exampleFirst)).toBe(false);
		for (const [i, { rule }] of set.entries()) expect(rule).not.toBe(set[i - 1]?.rule);
	});
});
