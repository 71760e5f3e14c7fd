import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { enclosedArea } from '#geometry/area.ts';
import { pathMovedBy } from '#geometry/motion.ts';
import { boundsOf } from '#geometry/path.ts';
import { closedOutline, ontoOtherHalf } from '#ui/drawing/closed.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';

/** Drafts whose other half lies beyond a fold or a centre seam; of the others the whole is drafted. */
const HALVES = [
	'back-block',
	'front-block',
	'dress-back',
	'dress-skirt',
	'dress-casing',
	'straight-skirt-front',
	'straight-skirt-back',
	'circle-skirt',
	'sleeved-bodice'
];
/** Drafts that are only a beginning, and close nothing. */
const OPEN = ['first-marks', 'dress-back-top'];

describe.each([...lessonMethods().values()].map((method) => ({ id: method.id, method })))(
	'the outline of $id',
	({ id, method }) => {
		const drafts = DEMO_BODIES.flatMap(({ body }) => {
			const evaluation = evaluate(method, body);
			return evaluation.kind === 'drafted' ? [evaluation.draft] : [];
		});

		it('closes for every invented body', () => {
			for (const draft of drafts) expect(closedOutline(method, draft) === undefined).toBe(OPEN.includes(id));
		});

		it('is mirrored on its fold where it is a half: both halves are as large, and meet only there', () => {
			for (const draft of drafts) {
				const [outline, other] = [closedOutline(method, draft), ontoOtherHalf(method, draft)];
				expect(other !== undefined).toBe(HALVES.includes(id));
				if (!outline || !other) continue;
				const mirrored = pathMovedBy(other, outline);
				expect(enclosedArea(mirrored)).toBeCloseTo(-enclosedArea(outline), 3);
				expect(boundsOf([mirrored]).right).toBeCloseTo(boundsOf([outline]).left, 6);
			}
		});

		it('is open while a line of it is not drawn', () => {
			const [draft] = drafts;
			if (!draft || OPEN.includes(id)) return;
			const gone = method.outline.find((name) => name in draft.lines) ?? '';
			const { [gone]: _, ...lines } = draft.lines;
			expect(closedOutline(method, { lines })).toBeUndefined();
		});
	}
);
