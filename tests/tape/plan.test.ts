import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import { paperOf, readingsOf, taped } from './taped.ts';

/** Every draft that has enough points of its own, by the folder of its first lesson. */
const DRAFTS = [
	'10-the-sheet',
	'40-back-levels',
	'50-front-levels',
	'61-dress-back-top',
	'62-dress-front-top',
	'68-dress-back-waist',
	'69-dress-facing',
	'70-dress-skirt',
	'71-dress-casing',
	'72-dress-binding',
	'80-straight-skirt-front',
	'82-straight-skirt-back',
	'84-waistband',
	'85-circle-skirt',
	'90-sleeve-frame'
];

describe.each(DRAFTS)('the distances of %s', (lesson) => {
	const { plan, given } = paperOf(lessonMethod(lesson));

	it('are few: no more than a fifth over the fewest, two for each point less three', () => {
		expect(plan.least).toBe(2 * plan.points.length - 3);
		expect(plan.takings.length).toBeGreaterThanOrEqual(plan.least);
		expect(plan.takings.length).toBeLessThanOrEqual(plan.least * 1.2);
	});

	it('can be taken: between different points, not shorter than 3 cm, within a tape of 150 cm, none twice', () => {
		const pairs = plan.takings.map(({ from, to }) => [from, to].toSorted().join(' '));
		expect(new Set(pairs).size).toBe(pairs.length);
		for (const { from, to, length } of plan.takings) {
			expect(from).not.toBe(to);
			expect(length).toBeGreaterThanOrEqual(30);
			expect(length).toBeLessThanOrEqual(1500);
		}
	});

	it('pin every point down, each as soon as two of them reach it', () => {
		const found = new Set([plan.takings[0]?.from, plan.takings[0]?.to]);
		for (const [i, { from, to }] of plan.takings.entries()) {
			if (found.has(from) && found.has(to)) continue;
			const [fresh, known] = found.has(from) ? [to, from] : [from, to];
			expect(found.has(known)).toBe(true);
			const other = plan.takings[i + 1];
			expect([other?.from, other?.to]).toContain(fresh);
			found.add(fresh);
		}
		expect(found.size).toBe(plan.points.length);
		const paper = paperOf(lessonMethod(lesson));
		const { measured, open } = taped(paper, readingsOf(paper));
		expect(open).toEqual([]);
		expect(Object.keys(measured)).toHaveLength(plan.points.filter((name) => !given.has(name)).length);
	});
});

it('there are as few for every demo body', () => {
	const method = lessonMethod('40-back-levels');
	for (const { body, id } of DEMO_BODIES) {
		const { plan } = paperOf(method, body);
		expect(plan.takings.length, id).toBeLessThanOrEqual(plan.least * 1.2);
		expect(plan.takings.length, id).toBeGreaterThanOrEqual(plan.least);
	}
});
