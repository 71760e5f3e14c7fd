import { describe, expect, it } from 'vitest';
import { surveyFigures } from '../reference/survey-bodies.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody, type Measurements } from '#shared/body.ts';
import { doubtOf, doubtsOf } from '#shared/doubts.ts';
import type { NeededKey } from '#shared/measurements.ts';
import { mm } from '#shared/units.ts';

const HERON = DEMO_BODIES[0]?.body.measurements ?? {};

describe('what is asked about a measurement', () => {
	// What people typed, and what the tape said: common slips of a class, no source.
	it.each<[NeededKey, number, string, number]>([
		['bust', 9.6, 'point', 96],
		['hip', 10.2, 'point', 102],
		['bust', 38, 'inches', 96.5],
		['bust', 243.8, 'centimetres', 96],
		['hip', 2, 'hundred', 102],
		['frontLength', 88, 'twice', 44],
		['shoulderWidth', 384, 'point', 38.4]
	])('%s %d cm: %s', (of, typed, slip, meant) => {
		const doubt = doubtOf(of, { ...HERON, [of]: mm(typed * 10) });
		const offered = doubt?.slips.find((each) => each.slip === slip);
		expect(offered?.value).toBeCloseTo(meant * 10, 0);
	});

	it('a neck of 60 cm is asked about, and nothing is offered that no neck measures', () => {
		const doubt = doubtOf('neck', { ...HERON, neck: mm(600) });
		expect(doubt?.range).toEqual([200, 550]);
		expect(doubt?.slips).toEqual([{ slip: 'twice', value: 300 }]);
	});

	it('what the other measurements let expect decides between two slips', () => {
		// 26 cm may be half a small child's chest, which no grown woman's can be: hers was a number in inches at most.
		const child = readBody({ waist: 50, hip: 54, neck: 26, shoulderWidth: 24, backLength: 24 }).measurements;
		const slips = (measurements: Measurements) =>
			doubtOf('bust', { ...measurements, bust: mm(260) })?.slips.map(({ slip }) => slip);
		expect(slips(child)).toContain('half');
		expect(slips(HERON)).not.toContain('half');
	});

	it('asks nothing about the invented bodies, nor about any of 300 women of the survey', () => {
		for (const { body } of DEMO_BODIES) expect(doubtsOf(body.measurements), body.name).toEqual([]);
		const women = surveyFigures();
		expect(women).toHaveLength(300);
		for (const figure of women) expect(doubtsOf(readBody(figure).measurements)).toEqual([]);
	});
});
