import { english, speechFor } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf, ruleOf } from '../support/refusal.ts';
import { BLOCK_ALLOWANCES } from '#shared/allowances.ts';
import { readAllowance, readBody, readMeasurement } from '#shared/body.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { FURTHER_KEYS, NEEDED_KEYS } from '#shared/measurements.ts';
import { MM_PER, printRange } from '#shared/units.ts';

const complaint = (input: unknown): string => refusalOf(() => readBody(input, 'x.json: '));

describe('readBody', () => {
	it('reads numbers and written lengths in the unit named, and allowances with them', () => {
		const body = readBody({
			name: 'Lark',
			unit: 'in',
			bust: '37 3/4',
			waist: 29,
			hip: '101 cm',
			note: 'a note',
			about: 'invented',
			allowances: { bustEase: 2 }
		});
		expect(body.name).toBe('Lark');
		expect(body.unit).toBe('in');
		expect(body.measurements).toEqual({ bust: 37.75 * 25.4, waist: 29 * 25.4, hip: 1010 });
		expect(body.allowances).toEqual({ bustEase: 50.8 });
	});

	it('reads what may be measured as well, each within a range of its own', () => {
		const further = { shoulderDrop: 4.5, scyeDepth: 20, upperArm: 29, sideWaistToFloor: '105 cm' };
		expect(readBody(further).measurements).toEqual({
			shoulderDrop: 45,
			scyeDepth: 200,
			upperArm: 290,
			sideWaistToFloor: 1050
		});
		for (const key of FURTHER_KEYS) {
			expect(complaint({ [key]: 0.4 }), key).toMatch(new RegExp(`^x\\.json: ${key}: .* must lie from `));
			expect(complaint({ [key]: 299 }), key).toContain(' must lie from ');
		}
	});

	it('reads what the tape said each time, and which measurements no tape took; a wrong one is named with its place', () => {
		const body = readBody({
			unit: 'in',
			bust: '37 7/8',
			readings: { bust: ['37 3/4', 38] },
			supposed: { neck: 'estimated' },
			neck: 14,
			sides: { left: { shoulderLength: 5 } },
			remarks: 'Left shoulder lower.'
		});
		expect(body.readings).toEqual({ bust: [37.75 * 25.4, 38 * 25.4] });
		expect(body.supposed).toEqual({ neck: 'estimated' });
		expect(Object.keys(body.measurements)).toEqual(['bust', 'neck']);
		expect(complaint({ readings: { bust: [96, 'wide'] } })).toContain(
			'x.json: readings.bust: "wide" is not a length'
		);
		expect(complaint({ readings: { bist: [96] } })).toContain(
			'x.json: readings.bist: there is no measurement'
		);
		expect(complaint({ readings: { bust: 96 } })).toContain('x.json: readings.bust: ');
		expect(complaint({ supposed: { bust: 'guessed' } })).toContain('x.json: supposed.bust: ');
		expect(complaint({ supposed: { bist: 'estimated' } })).toContain('x.json: supposed.bist: there is no ');
	});

	it('reads the shoulder width by the name that it had, and not by both at once', () => {
		expect(readBody({ backWidth: 38.4 }).measurements).toEqual({ shoulderWidth: 384 });
		expect(complaint({ backWidth: 38.4, shoulderWidth: 39 })).toBe(
			'x.json: backWidth: this is called shoulderWidth now, which stands beside it; leave one of them out'
		);
	});

	it('is not in inches where its sizes are those of centimetres', () => {
		const { measurements } = DEMO_BODIES[0]?.body ?? readBody({});
		const inCm = Object.fromEntries(Object.entries(measurements).map(([key, value]) => [key, value / 10]));
		expect(complaint({ ...inCm, unit: 'in' })).toBe(
			'x.json: unit: no body is so large in inches: the bust would be 243.84 cm; if these are centimetres, write cm'
		);
		const spanish = speechFor('es');
		expect(ruleOf(() => readBody({ ...inCm, unit: 'in' }), spanish)).toBe(
			'ningún cuerpo es tan grande en pulgadas: el contorno de busto mediría 243,84 cm; si son centímetros, escribe cm'
		);
		// One that is broad is not one that was measured in centimetres.
		expect(readBody({ unit: 'in', bust: 70, waist: 68, hip: 72, backLength: 17 }).measurements.bust).toBe(
			1778
		);
	});

	it('is in centimetres, and takes the fallback name, where the file says nothing', () => {
		expect(readBody({ bust: '96,5' }, '', 'heron')).toEqual({
			name: 'heron',
			unit: 'cm',
			measurements: { bust: 965 },
			allowances: {}
		});
		expect(readBody({ name: '' }, '', 'heron').name).toBe('heron');
	});

	it.each<[seen: unknown, message: string]>([
		[null, 'x.json: body: Invalid input: expected object, received null; seen: null'],
		[[1], 'x.json: body: Invalid input: expected object, received array; seen: [1]'],
		[{ name: 5 }, 'x.json: name: Invalid input: expected string, received number; seen: 5'],
		[{ unit: 'yd' }, 'x.json: unit: Invalid option: expected one of "cm"|"mm"|"in"; seen: "yd"'],
		[{ bustt: 96 }, 'x.json: bustt: there is no measurement of this name (did you mean "bust"?)'],
		[{ qqqqqq: 96 }, 'x.json: qqqqqq: there is no measurement of this name'],
		[{ bust: true }, 'x.json: bust: a length is a number or a text such as "37 3/4", not true'],
		[{ bust: '9x6' }, 'x.json: bust: "9x6" is not a length; write a number such as 96'],
		[{ bust: 4 }, 'x.json: bust: the bust must lie from 5 cm to 300 cm, not 4 cm (written 4, unit cm)'],
		[{ bust: -96 }, 'x.json: bust: the bust must lie from 5 cm to 300 cm, not -96 cm'],
		[
			{ unit: 'in', hip: 200 },
			'x.json: hip: the hip must lie from 2″ to 118 1/16″, not 200″ (written 200, unit in)'
		],
		[{ allowances: [4] }, 'x.json: allowances: Invalid input: expected record, received array; seen: [4]'],
		[
			{ allowances: { bustEasy: 4 } },
			'x.json: allowances.bustEasy: there is no allowance of this name (did you mean "bustEase"?)'
		],
		[
			{ allowances: { hipEase: 30.1 } },
			'x.json: allowances.hipEase: the hip ease must lie from -4 cm to 30 cm, not 30.1 cm'
		],
		[
			{ unit: 'in', allowances: { armholeDrop: 3 } },
			'the armhole drop must lie from 7/16″ to 2 5/16″, not 3″ (written 3, unit in)'
		],
		[{ bust: 4.999 }, 'must lie from 5 cm to 300 cm, not 4.999 cm (written 4.999, unit cm)']
	])('refuses %j and names file, field, rule and value', (input, message) => {
		expect(complaint(input)).toContain(message);
	});
});

describe('one value at a time', () => {
	it('reads a measurement at the ends of what a body can be', () => {
		expect(readMeasurement('neck', '5', 'cm')).toBe(50);
		expect(readMeasurement('neck', '3000', 'mm')).toBe(3000);
		expect(ruleOf(() => readMeasurement('neck', '3001', 'mm'))).toContain('not 3001 mm');
	});

	it('reads an allowance of a method’s own only where that method is named', () => {
		const own = { key: 'firstDepth', words: 'the first depth', default: 100, range: [50, 200] } as never;
		expect(readAllowance('firstDepth', '7', 'cm', [own])).toBe(70);
		expect(ruleOf(() => readAllowance('firstDepth', '7', 'cm'))).toContain(
			'there is no allowance of this name'
		);
	});
});

describe('a field that stands before the reader', () => {
	it('is answered in its own unit, with nothing said of files', () => {
		expect(ruleOf(() => readMeasurement('hip', '200', 'in'))).toBe(
			'the hip must lie from 2″ to 118 1/16″, not 200″'
		);
		expect(ruleOf(() => readAllowance('armholeDrop', '3/8', 'in'))).toBe(
			'the armhole drop must lie from 7/16″ to 2 5/16″, not 3/8″'
		);
		expect(ruleOf(() => readAllowance('armholeDrop', '61', 'mm'))).toBe(
			'the armhole drop must lie from 10 mm to 60 mm, not 61 mm'
		);
	});

	it.each(['cm', 'mm', 'in'] as const)('accepts the limits that it names, in %s', (unit) => {
		for (const { key, range } of BLOCK_ALLOWANCES) {
			const [least = '', most = ''] = /^from (.*) to (.*)$/.exec(printRange(range, unit))?.slice(1) ?? [];
			const [low, high] = [readAllowance(key, least, unit), readAllowance(key, most, unit)];
			expect(low - range[0], key).toBeLessThan(MM_PER.in / 16);
			expect(range[1] - high, key).toBeLessThan(MM_PER.in / 16);
		}
	});
});

describe('the demo bodies', () => {
	it('are invented, and say so', () => {
		for (const demo of DEMO_BODIES) {
			expect(english.words.measurements.demoBody(demo)).toMatch(
				/^An invented body: nobody was measured\. [A-Z]/
			);
			expect(speechFor('es').words.measurements.demoBody(demo)).toMatch(
				/^Un cuerpo inventado: no se midió a nadie\. [A-Z]/
			);
		}
	});

	it('have different names and every measurement', () => {
		expect(DEMO_BODIES.map(({ id }) => id)).toEqual([
			'heron',
			'wren',
			'plover',
			'lark',
			'gannet',
			'eider',
			'siskin'
		]);
		for (const { id, body } of DEMO_BODIES) {
			expect(body.name.toLowerCase()).toBe(id);
			expect(Object.keys(body.measurements).sort()).toEqual([...NEEDED_KEYS].sort());
		}
	});

	it('one is written in inches, with the fractions that a tape shows', () => {
		const lark = DEMO_BODIES.find(({ id }) => id === 'lark');
		expect(lark?.body.unit).toBe('in');
		expect(lark?.body.measurements.bust).toBeCloseTo(958.85, 9);
		expect(lark?.body.measurements.waistToHip).toBeCloseTo(9.0625 * 25.4, 9);
	});

	it('Heron has the numbers of the printed example', () => {
		expect(DEMO_BODIES[0]?.body.measurements).toEqual({
			bust: 960,
			waist: 780,
			hip: 1020,
			neck: 370,
			shoulderWidth: 384,
			backLength: 425,
			frontLength: 455,
			bustHeight: 265,
			bustSpan: 195,
			waistToHip: 205
		});
	});
});
