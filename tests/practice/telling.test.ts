import { describe, expect, it } from 'vitest';
import type { Body } from '#shared/body.ts';
import type { Misstep } from '#checker/missteps/misstep.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { draftSoFar, pointSteps } from '#practice/draft-so-far.ts';
import { draftedBodies, generatedBody } from '#practice/generate-body.ts';
import { tellingBody } from '#practice/telling.ts';
import { BACK, FRONT, seeds } from './methods.ts';

/** Two tolerances of a point, 2 mm each. */
const APART_MM = 4;

/** The usual eases, by which a girth is also taken: a learner takes another girth with its own ease or with the bust's. */
const EASES_MM = { bust: 80, waist: 40, hip: 60 } as const;

/** Whether another girth taken for the bust would put the underarm within two tolerances of its place, with either ease. */
const hidesGirths = (body: Body): boolean =>
	(['waist', 'hip'] as const).some((other) =>
		[EASES_MM.bust, EASES_MM[other]].every((ease) => {
			const taken = (body.measurements[other] ?? NaN) + ease;
			return Math.abs(taken - (body.measurements.bust ?? NaN) - EASES_MM.bust) < 4 * APART_MM;
		})
	);

/** Pairs of missteps, each with its own note, that lie nearer than two tolerances. */
const nearPairs = (missteps: readonly Misstep[]): number => {
	let near = 0;
	for (const [i, one] of missteps.entries())
		for (const other of missteps.slice(0, i)) {
			const apart = Math.hypot(one.place.x - other.place.x, one.place.y - other.place.y);
			if (one.note !== other.note && apart < APART_MM) near++;
		}
	return near;
};

describe('a telling body', () => {
	it('never hides that the waist or the hip was taken for the bust, as one in ten does otherwise', () => {
		expect(seeds(100).filter((seed) => hidesGirths(generatedBody(seed, BACK))).length).toBeGreaterThan(5);
		expect(seeds(100).filter((seed) => hidesGirths(tellingBody(seed, BACK, 'U').body))).toEqual([]);
	});

	it('keeps every misstep of the waist level apart, from each other and from the right place', () => {
		for (const seed of seeds(20)) {
			const told = tellingBody(seed, BACK, 'W');
			const { missteps, right } = told;
			expect(told).toMatchObject({ nearPairs: 0, nearRight: 0, confusion: 0 });
			expect(nearPairs(missteps)).toBe(0);
			expect(missteps.length).toBeGreaterThan(15);
			for (const { place, note } of missteps)
				expect(Math.hypot(place.x - right.x, place.y - right.y), note).toBeGreaterThanOrEqual(APART_MM);
		}
	});

	it('says how many pairs stay too near where no body can part them', () => {
		// Some rules hold allowances alone: no measurement moves their missteps apart.
		for (const step of ['C', 'M', 'U', 'J']) {
			const { missteps, confusion, ...told } = tellingBody(1, BACK, step);
			const near = nearPairs(missteps);
			expect(near).toBeGreaterThan(0);
			expect(told.nearPairs, step).toBe(near);
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

	it('leaves fewer pairs too near than the first body of the seed that has the step', () => {
		const [first, told] = [{ near: 0 }, { near: 0 }];
		for (const { name } of pointSteps(FRONT)) {
			for (const seed of seeds(3)) {
				const { missteps } = tellingBody(seed, FRONT, name);
				told.near += nearPairs(missteps);
				for (const { body, draft } of draftedBodies(seed, FRONT)) {
					if (!draft.points[name]) continue;
					first.near += nearPairs(pointMissteps(FRONT, name, body, draftSoFar(FRONT, draft, name)));
					break;
				}
			}
		}
		expect(told.near).toBeLessThan(0.75 * first.near);
	});

	it('is the same for the same seed, method and step, and bears the seed’s own name', () => {
		expect(tellingBody(9, FRONT, 'U')).toEqual(tellingBody(9, FRONT, 'U'));
		expect(tellingBody(9, FRONT, 'U').body.name).toBe(generatedBody(9, BACK).name);
	});

	it('is asked for points alone', () => {
		expect(() => tellingBody(1, BACK, 'armhole')).toThrow('no drawn body has a point "armhole"');
	});
});
