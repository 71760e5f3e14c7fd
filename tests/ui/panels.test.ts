import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm } from '#shared/units.ts';
import { boundsOf, pathLength } from '#geometry/path.ts';
import { evaluate, outlineOf, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { besideEachOther, type BesideEachOther } from '#ui/embeds/panels.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';

const FRONT = lessonMethod('50-front-levels');
const used = (name: string): Method => {
	const method = FRONT.uses[name];
	if (!method) throw new Error(`the front does not use ${name}`);
	return method;
};
const BACK = used('back');

const laid = DEMO_BODIES.flatMap(({ id, body }) => {
	const evaluation = evaluate(FRONT, body);
	const back = evaluation.kind === 'drafted' ? evaluation.draft.uses['back'] : undefined;
	if (evaluation.kind !== 'drafted' || !back) return [];
	const panels = besideEachOther(
		{ method: FRONT, draft: evaluation.draft },
		{ method: BACK, draft: back },
		mm(24)
	);
	if (!panels) throw new Error(`${id} has no outline`);
	return [{ id, front: evaluation.draft, back, panels }];
});
const each = (look: (front: Draft, back: Draft, panels: BesideEachOther, id: string) => void): void => {
	expect(laid.length).toBeGreaterThan(3);
	for (const { id, front, back, panels } of laid) look(front, back, panels, id);
};

describe('front and back beside each other', () => {
	it('the front’s centre line is at the far left, the back’s at the far right', () => {
		each((_, __, { front, back, farCentre, bounds }, id) => {
			expect(boundsOf([front.outline]).left, id).toBeCloseTo(0, 9);
			expect(boundsOf([back.outline]).right).toBeCloseTo(farCentre, 9);
			expect(bounds.left).toBeCloseTo(0, 9);
			expect(bounds.right).toBeCloseTo(farCentre, 9);
		});
	});

	it('side seam faces side seam, and they do not touch', () => {
		each((_, __, { front, back }, id) => {
			const gap = boundsOf([back.outline]).left - boundsOf([front.outline]).right;
			expect(gap, id).toBeGreaterThanOrEqual(24 - 1e-9);
			expect(gap).toBeLessThan(40);
		});
	});

	it('the waists are level, and the hem is where it is drafted', () => {
		each((front, back, panels, id) => {
			const down = (front.points['W']?.y ?? NaN) - (back.points['W']?.y ?? NaN);
			const [was, is] = [outlineOf(BACK, back), panels.back.outline];
			if (!was) throw new Error('no outline');
			expect(boundsOf([is]).bottom - boundsOf([was]).bottom, id).toBeCloseTo(down, 9);
			expect(pathLength(is)).toBeCloseTo(pathLength(was), 6);
			const levels = [panels.front.levels, panels.back.levels].map((all) =>
				all.map(([first]) => first.from.y)
			);
			const waist = front.points['W']?.y ?? NaN;
			for (const heights of levels)
				expect(Math.min(...heights.map((y) => Math.abs(y - waist)))).toBeCloseTo(0, 9);
		});
	});

	it('the dart is drawn where this body has one: its mouth closed, its sewn tip short of the bust point', () => {
		const darts = laid.map(({ front, panels: { dart } }) => {
			expect(dart !== undefined).toBe('D1' in front.points);
			if (!dart) return false;
			expect(dart.mouth).toHaveLength(3);
			expect(dart.tip).toEqual(front.points['Y']);
			return true;
		});
		expect(new Set(darts)).toEqual(new Set([true, false]));
	});

	it('nothing where there is no outline', () => {
		const [first] = laid;
		if (!first) throw new Error('no body');
		const bare = { ...BACK, outline: [] };
		expect(
			besideEachOther({ method: FRONT, draft: first.front }, { method: bare, draft: first.back }, mm(24))
		).toBeUndefined();
	});
});
