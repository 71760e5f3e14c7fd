import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { at } from '#geometry/point.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { followedThrough } from '#practice/follow-through.ts';
import { BACK, FRONT } from './methods.ts';

const heron = DEMO_BODIES.find(({ id }) => id === 'heron')?.body;
if (!heron) throw new Error('there is no Heron');

const draftOf = (method: Method): Draft => {
	const evaluation = evaluate(method, heron);
	if (evaluation.kind === 'refused') throw new Error('Heron is refused');
	return evaluation.draft;
};

describe('a draft followed through from a wrong point', () => {
	const back = draftOf(BACK);

	it('carries the slip on to what is worked from the point, and to nothing else', () => {
		// Heron's armhole level lies 22.2 cm down; here it is put 1 cm lower.
		const wrong = followedThrough(BACK, heron, back, 'A', at(0, 232));
		expect(wrong?.points['U']).toEqual(at(260, 232));
		expect(wrong?.points['Q']).toEqual(at(192, 232));
		// P is the middle of S, 4 cm down, and Q; M lies 1 cm in from it.
		expect(wrong?.points['P']).toEqual(at(192, 136));
		expect(wrong?.points['M']).toEqual(at(182, 136));
		for (const name of ['O', 'W', 'H', 'N', 'C', 'K', 'S', 'V', 'J'])
			expect(wrong?.points[name], name).toEqual(back.points[name]);
		expect(wrong?.lines['neck']).toEqual(back.lines['neck']);
		// The side from U down to V, 42.5 cm down, and a third of 5.5 further in than U.
		expect(wrong?.lines['side']?.length).toBeCloseTo(Math.hypot(55 / 3, 425 - 232), 9);
	});

	it('has no dart where the body has none', () => {
		const { measurements } = heron;
		const level = {
			...heron,
			measurements: { ...measurements, frontLength: measurements.backLength }
		} as Body;
		const evaluation = evaluate(FRONT, level);
		if (evaluation.kind === 'refused') throw new Error('the level body is refused');
		const wrong = followedThrough(FRONT, level, evaluation.draft, 'A', at(0, 232));
		expect(Object.keys(wrong?.points ?? {}).sort()).toEqual(Object.keys(evaluation.draft.points).sort());
		expect(wrong?.points).not.toHaveProperty('D1');
	});

	it('leaves the true draft as it was', () => {
		const copy = structuredClone(back);
		followedThrough(BACK, heron, back, 'A', at(0, 232));
		expect(back).toEqual(copy);
	});

	it('is none where the body would be refused for such points', () => {
		// The underarm must lie 1.5 cm outside the armhole corner, which lies 19.2 cm across.
		expect(followedThrough(BACK, heron, back, 'U', at(206, 222))).toBeUndefined();
		expect(followedThrough(BACK, heron, back, 'U', at(208, 222))).toBeDefined();
	});

	it('is none where a later step cannot be worked', () => {
		// The back's shoulder of 12.4 cm, swung from 10 cm above, does not reach a level 4 cm below the corner.
		expect(followedThrough(FRONT, heron, draftOf(FRONT), 'N', at(70, -100))).toBeUndefined();
	});
});
