import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody, type Measurements } from '#shared/body.ts';
import type { NeededKey } from '#shared/measurements.ts';
import { NEEDED_KEYS } from '#shared/measurements.ts';
import { judge } from '#shared/plausible/doubts.ts';
import type { Slip } from '#shared/speech/en/doubts.ts';
import { mm } from '#shared/units.ts';

const HERON = DEMO_BODIES[0]?.body.measurements ?? {};
const judged = (measurements: Measurements) => judge({ measurements }, 'cm');
const [MEAN_HIP, MEAN_WAIST] = [mm(967), mm(726)];

/** Bodies that the survey does not have, in cm. Children after common size tables, large sizes made up by hand: no source. */
const STRANGERS: Readonly<Record<string, readonly number[]>> = {
	'a child of six': [60, 54, 64, 27, 28, 27, 14, 27, 15, 12],
	'a child of nine': [67, 59, 71, 29, 31, 31, 16, 31.5, 18, 14],
	'a small child': [53, 51, 54, 25, 24, 23.5, 11, 23, 12, 10.5],
	'bust 134': [134, 120, 140, 44, 43, 44.5, 22, 51, 34.5, 25],
	'bust 152': [152, 142, 158, 47, 45, 45, 22.5, 53, 37, 27.5],
	'bust 170': [170, 165, 176, 50, 46, 45.5, 23, 55, 40, 30]
};
const bodyOf = (numbers: readonly number[]): Measurements =>
	readBody(Object.fromEntries(NEEDED_KEYS.map((key, i) => [key, numbers[i]]))).measurements;

/** A hip much fuller than the bust; hips nearer to the waist than on bodies as broad in the shoulder: made to be so. */
const ODD: Readonly<Record<string, readonly NeededKey[]>> = { plover: ['hip'], gannet: ['waistToHip'] };

describe('what is asked about measurements', () => {
	// What people typed, and what the tape said: common slips of a class, no source.
	it.each<[NeededKey, number, Slip, number]>([
		['bust', 9.6, 'point', 96],
		['hip', 10.2, 'point', 102],
		['bust', 38, 'inches', 96.5],
		['bust', 243.8, 'centimetres', 96],
		['hip', 2, 'hundred', 102],
		['bust', 69, 'digits', 96],
		['waist', 39, 'half', 78],
		['shoulderWidth', 384, 'point', 38.4]
	])('%s %d cm: %s', (of, typed, slip, meant) => {
		const { doubts } = judged({ ...HERON, [of]: mm(typed * 10) });
		expect(doubts.map((doubt) => doubt.of)).toEqual([of]);
		const offered = doubts[0]?.offers.find((each) => each.slip === slip);
		expect(offered?.value).toBeCloseTo(meant * 10, 0);
	});

	it('two that stand in each other’s fields are told as one thing', () => {
		const { doubts } = judged({ ...HERON, waist: mm(1020), hip: mm(780) });
		expect(doubts).toHaveLength(1);
		expect(doubts[0]).toMatchObject({ kind: 'swapped' });
		expect([doubts[0]?.of, doubts[0]?.other].sort()).toEqual(['hip', 'waist']);
	});

	it('what was measured in the place of another is named', () => {
		const { doubts } = judged({ ...HERON, hip: mm(780) });
		expect(doubts.map(({ of }) => of)).toEqual(['hip']);
		expect(doubts[0]?.offers).toContainEqual({ slip: 'instead', other: 'waist' });
	});

	it('a neck of 60 cm is asked about, and nothing is offered that no neck measures', () => {
		const [doubt] = judged({ ...HERON, neck: mm(600) }).doubts;
		expect(doubt).toMatchObject({ of: 'neck', kind: 'plain', plain: [200, 550] });
		for (const { value } of doubt?.offers ?? []) expect(value).toBeLessThan(550);
	});

	it('all numbers at once in the other unit are told once, and of no field', () => {
		const inches = Object.fromEntries(Object.entries(HERON).map(([key, value]) => [key, mm(value / 2.54)]));
		expect(judged(inches)).toMatchObject({ unit: 'inches', doubts: [] });
	});

	it('asks nothing about the invented bodies, but where one was made odder than nearly all of the survey', () => {
		for (const { id, body } of DEMO_BODIES)
			expect(
				judge(body, 'cm').doubts.map(({ of }) => of),
				id
			).toEqual(ODD[id] ?? []);
	});

	it.each(Object.entries(STRANGERS))(
		'%s is asked nothing, and said to be unknown to the survey',
		(_, numbers) => {
			const { doubts, known, unit } = judged(bodyOf(numbers));
			expect(doubts).toEqual([]);
			expect(unit).toBeUndefined();
			expect(known).toBe(false);
		}
	);

	it('a slip in a body that the survey does not know is still found where it is gross', () => {
		const child = bodyOf(STRANGERS['a child of six'] ?? []);
		expect(judged({ ...child, hip: mm(6400) }).doubts.map(({ of }) => of)).toEqual(['hip']);
	});

	it('what no tape took is not compared, since it was made of the others', () => {
		const body = { measurements: { ...HERON, bust: mm(700) }, supposed: { bust: 'estimated' } } as const;
		expect(judge(body, 'cm').doubts).toEqual([]);
	});

	it('a single measurement near the survey’s mean is asked nothing', () => {
		expect(judged({ hip: MEAN_HIP }).doubts).toEqual([]);
		expect(judged({ waist: MEAN_WAIST }).doubts).toEqual([]);
		expect(judged({}).doubts).toEqual([]);
	});
});
