import { expect, it } from 'vitest';
import type { Place, Placement } from '#shared/placement.ts';
import { check } from '#checker/check.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { draftOf } from '../drafting/small-method.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';

/** Far more than any placement may take, and far less than those below would without their bounds. */
const HANG_MS = 2000;

const [HERON] = DEMO_BODIES;
const MARKS = lessonMethod('10-the-sheet');

/** A curve all over the sheet, which has as many samples as any. */
const curve = (from: Place, leaving: Place, arriving: Place, to: Place) => ({ from, leaving, arriving, to });

it.each<[string, Placement]>([
	[
		'a loop out of one place and back',
		{ kind: 'line', segments: [curve([330.9, -1], [330.9, -1], [5000, 397], [330.9, -1])] }
	],
	[
		'a bend from one end of the sheet to the other',
		{ kind: 'line', segments: [curve([1749, -2225], [4638, 1695], [4852, -780], [366, 468])] }
	],
	[
		'twenty of them, there and back',
		{
			kind: 'line',
			segments: Array.from({ length: 20 }, (_, i) =>
				i % 2 === 0
					? curve([-5000, -5000], [5000, -5000], [-5000, 5000], [5000, 5000])
					: curve([5000, 5000], [-5000, 5000], [5000, -5000], [-5000, -5000])
			)
		}
	]
])('%s is judged, and holds nothing up', (_what, placement) => {
	if (!HERON) throw new Error('there is a demo body');
	const draft = draftOf(MARKS, HERON.body);
	const start = process.cpuUsage();
	expect(check(MARKS, 'bend', draft, placement).answer).toBe('wrong');
	const { user, system } = process.cpuUsage(start);
	expect((user + system) / 1000).toBeLessThan(HANG_MS);
});
