import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { readBody } from '#shared/body.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import type { OwnBodyFile } from '#ui/keeping/schemas.ts';
import { openedBody } from '#ui/pages/measurements/body-file.ts';
import {
	readingsOf,
	refreshed,
	standingFor,
	withSecond,
	withStanding
} from '#ui/pages/measurements/supposing.ts';
import { withTyped } from '#ui/keeping/in-unit.ts';

const FILE: OwnBodyFile = {
	unit: 'cm',
	allowances: {},
	bust: '96',
	waist: '78',
	hip: '102',
	neck: '37',
	shoulderWidth: '38,4'
};

const standing = (file: OwnBodyFile, key: MeasurementKey) =>
	standingFor(readBody(file), key, 'cm', undefined);

describe('a second reading', () => {
	it('is kept with the first, and their mean is the measurement', () => {
		const file = withSecond(FILE, 'bust', '97', 'cm');
		expect(file['bust']).toBe('96.5');
		expect(readingsOf(file, 'bust')).toEqual([960, 970]);
		// Typed in another unit, it keeps that unit.
		const inches = withSecond(FILE, 'bust', '38', 'in');
		expect(readingsOf(inches, 'bust')[1]).toBeCloseTo(965.2, 6);
		expect(readBody(inches).measurements.bust).toBeCloseTo(962.6, 6);
	});

	it('may be changed and taken away again; the first is never lost', () => {
		const twice = withSecond(withSecond(FILE, 'bust', '97', 'cm'), 'bust', '96,4', 'cm');
		expect(readingsOf(twice, 'bust')).toEqual([960, 964]);
		const none = withSecond(twice, 'bust', '', 'cm');
		expect(none['bust']).toBe('96');
		expect(readingsOf(none, 'bust')).toEqual([]);
	});

	it('is forgotten where the measurement is typed anew, and is refused where it is no length', () => {
		const file = withTyped(withSecond(FILE, 'bust', '97', 'cm'), 'bust', '95', 'cm');
		expect(readingsOf(file, 'bust')).toEqual([]);
		expect(refusalOf(() => withSecond(FILE, 'bust', 'wide', 'cm'))).toContain('"wide" is not a length');
	});
});

describe('what stands for a measurement that was not taken', () => {
	it('is worked out from nape to waist, where that was taken, and follows it', () => {
		const file = withTyped(FILE, 'napeToWaist', '40.5', 'cm');
		const found = standing(file, 'backLength');
		expect(found).toEqual({ how: 'workedOut', value: 425 });
		if (!found) return;
		const kept = withStanding(file, 'backLength', found);
		expect(readBody(kept)).toMatchObject({
			measurements: { backLength: 425 },
			supposed: { backLength: 'workedOut' }
		});
		const changed = refreshed(withTyped(kept, 'napeToWaist', '41', 'cm'), undefined);
		expect(readBody(changed).measurements.backLength).toBe(430);
	});

	it('is estimated from the others, and changes with them; typed over, it is taken', () => {
		const found = standing(FILE, 'bustSpan');
		expect(found?.how).toBe('estimated');
		if (!found) return;
		const kept = withStanding(FILE, 'bustSpan', found);
		const larger = refreshed(withTyped(kept, 'bust', '104', 'cm'), undefined);
		const [before, after] = [kept, larger].map((file) => readBody(file).measurements.bustSpan ?? 0);
		expect(after).toBeGreaterThan(before ?? Infinity);
		expect(readBody(withTyped(larger, 'bustSpan', '19', 'cm')).supposed).toEqual({});
	});

	it('is not made of next to nothing, nor of what the survey has nothing like', () => {
		expect(standing({ unit: 'cm', allowances: {}, bust: '96' }, 'hip')).toBeUndefined();
		expect(standing(FILE, 'acrossChest')).toBeUndefined();
	});
});

describe('a body’s file that is opened', () => {
	it('comes back as it was saved', () => {
		const file = {
			...withSecond(FILE, 'bust', '97', 'cm'),
			name: 'Teal',
			sides: { left: { shoulderLength: '12' }, right: { shoulderLength: '12,5' } },
			remarks: 'The left shoulder is lower.',
			survey: 'women'
		};
		expect(openedBody(JSON.parse(JSON.stringify(file)), 'body')).toEqual(file);
	});

	it('is refused where left and right are of no side, no measurement or no length', () => {
		const complaint = (sides: unknown): string => refusalOf(() => openedBody({ sides }, 'body'));
		expect(complaint({ middle: {} })).toContain('sides.middle');
		expect(complaint({ left: { bust: 90 } })).toContain('sides.left');
		expect(complaint({ right: { shoulderDrop: 'low' } })).toContain('sides.right.shoulderDrop');
		expect(refusalOf(() => openedBody({ remarks: 7 }, 'body'))).toContain('remarks');
		expect(refusalOf(() => openedBody({ survey: 'cats' }, 'body'))).toContain('survey');
	});
});
