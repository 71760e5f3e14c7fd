import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { NO_CAUSE, saidWithoutCause, seen, spotsOf, type Seen } from '../../measure/outside/diagnosed.ts';
import { measuredBodies, mistakes } from '../../measure/outside/mistakes.ts';

/** A sample of what `npm run measure:missteps` measures: one body of sixteen, every mistake of the list. */
describe('mistakes that teachers know', () => {
	const list = mistakes();
	const all = seen(list, measuredBodies().slice(8, 9));
	const share = (some: readonly Seen[], holds: (one: Seen) => boolean): number =>
		some.filter(holds).length / some.length;

	it('are many, of every method, half of them held back', () => {
		expect(list.length).toBeGreaterThan(900);
		expect(new Set(list.map(({ method }) => method.id)).size).toBe(16);
		expect(list.filter(({ heldBack }) => heldBack).length / list.length).toBeCloseTo(0.5, 1);
	});

	it('are mostly named first, also those that were held back', () => {
		expect(all.length).toBeGreaterThan(700);
		expect(share(all, ({ first }) => first)).toBeGreaterThan(0.87);
		expect(
			share(
				all.filter(({ made }) => made.heldBack),
				({ first }) => first
			)
		).toBeGreaterThan(0.86);
	});

	it('are hardly ever named wrongly for certain', () => {
		expect(share(all, ({ kind, first }) => kind === 'certain' && !first)).toBeLessThan(0.007);
	});

	it.each(NO_CAUSE)('a mark without a cause, %s, hardly ever has one told for certain', (kind) => {
		const said = saidWithoutCause(spotsOf(all), kind, 2);
		expect(said.length).toBeGreaterThan(200);
		const certain = said.filter((each) => each.kind === 'certain').length / said.length;
		expect(certain).toBeLessThan(kind === 'on the way' ? 0.03 : 0.01);
	});

	it('are named first as often as the README says: as was measured of the half held back', () => {
		const page = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
		const held = /the half held back *\| *\d+ *\| *([\d.]+) %/.exec(page('tests/measure/missteps.md'));
		const claimed = /first is right (\d+) times in 100/.exec(page('README.md'));
		expect(Number(claimed?.[1])).toBe(Math.floor(Number(held?.[1])));
	});
});
