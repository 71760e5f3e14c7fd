import { describe, expect, it } from 'vitest';
import { readBody, type Body } from '#shared/body.ts';
import type { AllowanceValues } from '#shared/allowances.ts';
import { mm } from '#shared/units.ts';
import { makePattern } from '#garment/pattern.ts';
import type { Garment } from '#garment/garment.ts';
import { garments } from '../garment/garment-files.ts';
import { tangles } from './dress-pattern.ts';
import { figureOf, surveyRows, type Figure } from './survey-bodies.ts';

/** One body in so many, as it is, far larger and as small as a child. */
const EVERY = 25;
const SIZES = [1, 1.45, 0.65] as const;

const sized = (figure: Figure, size: number): Body =>
	readBody(Object.fromEntries(Object.entries(figure).map(([key, cm]) => [key, Number(cm) * size])));
const BODIES: readonly Body[] = (['women', 'men'] as const)
	.flatMap((sample) => surveyRows(sample).map(figureOf))
	.filter((_, i) => i % EVERY === 0)
	.flatMap((figure) => SIZES.map((size) => sized(figure, size)));

/** What makes a band or a facing wide for its place: together, and with a neck that is shallow or deep. */
const WIDE: readonly AllowanceValues[] = [
	{},
	{ bandWidth: mm(50), neckDownBack: mm(0), neckOut: mm(0), facingShoulder: mm(60), facingWaist: mm(90) },
	{ bandWidth: mm(50), backNeckDepth: mm(15), neckAllow: mm(20), facingShoulder: mm(60) },
	{ bandWidth: mm(15), neckDownFront: mm(100), neckDownBack: mm(60), facingShoulder: mm(60) },
	{ bandWidth: mm(40), neckOut: mm(40), shoulderIn: mm(0), buttonStand: mm(40), facingWaist: mm(45) }
];

const tangled = (
	garment: Garment,
	allowances: AllowanceValues
): { made: number; wrong: readonly string[] } => {
	const made = BODIES.flatMap((body, i) => {
		const work = makePattern(garment, body, { allowances, edges: {} });
		return work.kind === 'made' ? [{ i, pattern: work.pattern }] : [];
	});
	const wrong = made.flatMap(({ i, pattern }) => tangles(pattern).map((each) => `${each} of ${String(i)}`));
	return { made: made.length, wrong };
};

describe('no outline crosses itself, on the stitching or the cutting line', () => {
	it.each(garments().map((garment) => [garment.id, garment] as const))(
		'%s, for people of the survey, as large and as small as they come',
		(_, garment) => {
			const { made, wrong } = tangled(garment, {});
			expect(wrong).toEqual([]);
			expect(made).toBeGreaterThan(60);
		}
	);

	it.each(WIDE)('the dress with a wide band and facing: %j', (allowances) => {
		const dress = garments().find(({ id }) => id === 'course-dress');
		if (!dress) throw new Error('there is no dress');
		const { made, wrong } = tangled(dress, allowances);
		expect(wrong).toEqual([]);
		expect(made).toBeGreaterThan(20);
	});
});
