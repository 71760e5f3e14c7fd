import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { MM_PER } from '#shared/units.ts';
import type { Placement } from '#shared/placement.ts';
import { diagnose, diagnosisWords } from '#checker/missteps/diagnose.ts';
import { readSum } from '#drafting/formula/sum.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { moved } from '#geometry/point.ts';
import { backBlock, frontBlock } from '../../drafting/lesson-method.ts';
import { draftOf } from '../../drafting/small-method.ts';
import { notesOf } from './notes.ts';
import { TOLD_SLIPS, type ToldSlip } from './told-slips.ts';

const METHODS = { back: backBlock(), front: frontBlock() };

const diagnosed = ({ body: name, panel, step, at, typed }: ToldSlip) => {
	const body = DEMO_BODIES.find((each) => each.body.name === name)?.body;
	if (!body) throw new Error(`there is no ${name}`);
	const draft = draftOf(METHODS[panel], body);
	const begin = typed && draft.points[typed.from];
	const place = begin && moved(begin, COMPASS[typed.go], readSum(typed.sum, typed.unit).value);
	const placement: Placement = {
		kind: 'point',
		at: place ? [place.x, place.y] : [at[0] * MM_PER.cm, at[1] * MM_PER.cm],
		...(typed ? { typed: { form: 'distance', ...typed } } : {})
	};
	return diagnose(METHODS[panel], step, body, draft, placement);
};

const titled = TOLD_SLIPS.map(
	(slip) => [`${slip.body}, ${slip.panel} ${slip.step}: ${slip.tale}`, slip] as const
);

describe('slips as a teacher tells them', () => {
	it('there are many, of every body, with and without a guess', () => {
		expect(TOLD_SLIPS.length).toBeGreaterThan(60);
		expect(new Set(TOLD_SLIPS.map(({ body }) => body)).size).toBeGreaterThanOrEqual(6);
		expect(new Set(TOLD_SLIPS.map(({ notes }) => Math.min(notes.length, 2)))).toEqual(new Set([0, 1, 2]));
	});

	it.each(titled)('%s', (_, slip) => {
		const diagnosis = diagnosed(slip);
		expect(notesOf(diagnosis)).toEqual(slip.notes);
		expect(diagnosisWords(diagnosis)).toMatch(
			slip.notes.length === 0 ? /^$/ : slip.notes.length === 1 ? /^You / : /^Either you .* or you /
		);
	});
});
