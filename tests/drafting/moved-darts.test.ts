import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { enclosedArea } from '#geometry/area.ts';
import { polyline } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { lessonMethod } from './lesson-method.ts';
import { draftOf } from './small-method.ts';

const found = ({ points }: Draft, name: string): SheetPoint => {
	const point = points[name];
	if (!point) throw new Error(`there is no ${name}`);
	return point;
};
const close = (a: number, b: number): void => expect(Math.abs(a - b)).toBeLessThan(1e-9);

describe.each(DEMO_BODIES.map(({ body }) => [body.name, body] as const))(
	'the darts of the dress front moved into the waist: %s',
	(_, body) => {
		const draft = draftOf(lessonMethod('62-dress-front-top'), body);
		const point = (name: string): SheetPoint => found(draft, name);
		const far = (a: string, b: string): number => distance(point(a), point(b));
		/** The angle at T between two points, by the law of cosines. */
		const angle = (a: string, b: string): number => {
			const [p, q] = [far('T', a), far('T', b)];
			return Math.acos(Math.min(1, (p * p + q * q - far(a, b) ** 2) / (2 * p * q)));
		};
		const hasDart = draft.points['E3'] !== undefined;

		it('opens the waist by the sum of both angles: 2 d sin(half of it)', () => {
			const sum = angle('G1', 'G2') + (hasDart ? angle('D1', 'E') : 0);
			close(far('F', 'F1'), 2 * far('T', 'F') * Math.sin(sum / 2));
		});

		it('keeps the distance of all that turned from T, and the area of the panel', () => {
			for (const [after, before] of [
				['G3', 'G2'],
				['U2', 'U1'],
				['V1', 'V0'],
				['F1', 'F']
			] as const)
				close(far('T', after), far('T', before));
			const area = (...names: readonly string[]): number => {
				const [first, second, ...rest] = [...names, names[0] ?? ''].map(point);
				if (!first || !second) throw new Error('a panel has three corners');
				return enclosedArea(polyline(first, second, ...rest));
			};
			if (hasDart) close(area('T', 'E3', 'V1', 'F1') / area('T', 'E', 'V0', 'F'), 1);
			close(area('T', 'U2', 'V2', 'F2') / area('T', 'U1', 'V0', 'F'), 1);
		});

		it('the back’s side swings, as long as it was, until its waist is as long as the front’s', () => {
			const back = draftOf(lessonMethod('68-dress-back-waist'), body);
			const wanted = draft.lines['waist']?.length ?? NaN;
			expect(Math.abs((back.lines['waist']?.length ?? NaN) - wanted)).toBeLessThan(10 * SAME_PLACE);
			const [before, after] = [back.lines['sideStart']?.length ?? NaN, back.lines['side']?.length ?? NaN];
			close(before, after);
		});
	}
);
