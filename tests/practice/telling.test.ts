import { describe, expect, it } from 'vitest';
import type { MeasurementKey } from '#shared/measurements.ts';
import type { Body } from '#shared/body.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { pointSteps } from '#practice/draft-so-far.ts';
import { draftedBodies, generatedBody } from '#practice/generate-body.ts';
import { tellingBody } from '#practice/telling.ts';
import { BACK, FRONT, seeds } from './methods.ts';

/** Two tolerances of a point, 2 mm each. */
const APART_MM = 4;

const gap = (body: Body, a: MeasurementKey, b: MeasurementKey): number =>
	Math.abs((body.measurements[a] ?? NaN) - (body.measurements[b] ?? NaN));

/** Whether another girth taken for the bust would put the underarm within two tolerances of its place: a quarter of 16 mm. */
const hidesGirths = (body: Body): boolean =>
	gap(body, 'bust', 'hip') < 4 * APART_MM || gap(body, 'bust', 'waist') < 4 * APART_MM;

describe('a telling body', () => {
	it('never hides that the waist or the hip was taken for the bust, as one in ten does otherwise', () => {
		expect(seeds(100).filter((seed) => hidesGirths(generatedBody(seed, BACK))).length).toBeGreaterThan(5);
		expect(seeds(100).filter((seed) => hidesGirths(tellingBody(seed, BACK, 'U').body))).toEqual([]);
	});

	it('keeps every misstep of the waist level apart, from each other and from the right place', () => {
		for (const seed of seeds(20)) {
			const { missteps, right, nearPairs, nearRight, confusion } = tellingBody(seed, BACK, 'W');
			expect({ nearPairs, nearRight, confusion }).toEqual({ nearPairs: 0, nearRight: 0, confusion: 0 });
			expect(missteps.length).toBeGreaterThan(15);
			for (const [i, one] of missteps.entries()) {
				expect(Math.hypot(one.place.x - right.x, one.place.y - right.y)).toBeGreaterThanOrEqual(APART_MM);
				for (const other of missteps.slice(0, i)) {
					if (other.note === one.note) continue;
					const apart = Math.hypot(one.place.x - other.place.x, one.place.y - other.place.y);
					expect(apart, `${one.note} ${other.note}`).toBeGreaterThanOrEqual(APART_MM);
				}
			}
		}
	});

	it('says how many pairs stay too near where no body can part them', () => {
		// Some rules hold allowances alone: no measurement moves their missteps apart.
		for (const step of ['C', 'M', 'U', 'J']) {
			const { missteps, nearPairs, confusion } = tellingBody(1, BACK, step);
			let near = 0;
			for (const [i, one] of missteps.entries())
				for (const other of missteps.slice(0, i))
					if (
						one.note !== other.note &&
						Math.hypot(one.place.x - other.place.x, one.place.y - other.place.y) < APART_MM
					)
						near++;
			expect(near).toBeGreaterThan(0);
			expect(nearPairs, step).toBe(near);
			expect(confusion).toBeGreaterThan(0);
		}
	});

	it('is for every point of both blocks a body that has the point, without a warning', () => {
		for (const method of [BACK, FRONT]) {
			for (const { name } of pointSteps(method)) {
				const { body, draft, right, draws } = tellingBody(5, method, name);
				expect(draws).toBe(24);
				const evaluation = evaluate(method, body);
				expect(evaluation).toEqual({ kind: 'drafted', draft });
				expect(draft.points[name]).toEqual(right);
				expect(draft.warnings, name).toEqual([]);
			}
		}
	});

	it('is less to confuse than the first body of the seed, over both blocks', () => {
		const first = (seed: number, step: string): Body | undefined => {
			for (const { body, draft } of draftedBodies(seed, FRONT)) if (draft.points[step]) return body;
			return undefined;
		};
		const changed = pointSteps(FRONT).filter(({ name }) => {
			const told = seeds(3).map((seed) => tellingBody(seed, FRONT, name).body);
			return told.some((body, seed) => JSON.stringify(body) !== JSON.stringify(first(seed, name)));
		});
		expect(changed.length).toBeGreaterThan(15);
	});

	it('is the same for the same seed, method and step, and bears the seed’s own name', () => {
		expect(tellingBody(9, FRONT, 'U')).toEqual(tellingBody(9, FRONT, 'U'));
		expect(tellingBody(9, FRONT, 'U').body.name).toBe(generatedBody(9, BACK).name);
	});

	it('is asked for points alone', () => {
		expect(() => tellingBody(1, BACK, 'armhole')).toThrow('no drawn body has a point "armhole"');
	});
});
