import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { BLOCK_ALLOWANCES, checkAllowance } from '#shared/allowances.ts';
import { english } from '../support/speech.ts';
import { isMeasurementKey, MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { movedPath } from '#shared/renamed.ts';
import { mm } from '#shared/units.ts';

describe('nearest names', () => {
	it.each([
		['bustt', 'bust'],
		['ShoulderWidht', 'shoulderWidth'],
		['waisttohip', 'waistToHip'],
		['nek', 'neck']
	])('%s is a slip for %s', (unknown, near) => {
		expect(nearestName(unknown, MEASUREMENT_KEYS)).toBe(near);
		expect(english.words.input.didYouMean({ near })).toBe(` (did you mean "${near}"?)`);
	});

	it('offers nothing where nothing is near', () => {
		expect(nearestName('xyzzyq', MEASUREMENT_KEYS)).toBeUndefined();
		expect(english.words.input.didYouMean({ near: undefined })).toBe('');
		expect(nearestName('85-circle-skirt'.repeat(1000), ['85-circle-skirt'])).toBeUndefined();
		expect(nearestName('bust', [])).toBeUndefined();
	});
});

describe('what was renamed', () => {
	it('is near its old name, where it is there at all', () => {
		const ids = ['course-dress', 'straight-skirt', 'circle-skirt'];
		expect(nearestName('swift-three-quarter-skirt', ids)).toBe('circle-skirt');
		expect(nearestName('swift-three-quarter-skirt', ['course-dress'])).toBeUndefined();
	});

	it.each([
		['/patterns/swift-half-skirt', '/patterns/circle-skirt'],
		['/es/patterns/swift-full-skirt', '/es/patterns/circle-skirt'],
		['/lessons/85-swift-quarter-skirt', '/lessons/85-circle-skirt'],
		['/es/lessons/88-swift-full-skirt', '/es/lessons/85-circle-skirt'],
		['/drafts/swift-half-skirt/print', '/drafts/circle-skirt/print'],
		['/patterns/linnet-dress', '/patterns/course-dress'],
		['/es/drafts/linnet-front/print', '/es/drafts/dress-front/print'],
		['/lessons/64-linnet-contour-dart', '/lessons/64-dress-armhole-dart'],
		['/lessons/80-dunlin-front', '/lessons/80-straight-skirt-front'],
		['/es/patterns/dunlin-skirt', '/es/patterns/straight-skirt'],
		['/es/lessons/25-back-width', '/es/lessons/25-shoulder-width'],
		['/patterns/pipit-bodice', '/patterns/sleeved-bodice'],
		['/patterns/circle-skirt', undefined],
		['//elsewhere.example/patterns/swift-half-skirt', undefined]
	])('%s is now %s', (before, now) => {
		expect(movedPath(before)).toBe(now);
	});
});

describe('measurements', () => {
	it('has one entry for each key, in the same order', () => {
		const { measurements } = english.words.nouns;
		expect(Object.keys(measurements)).toEqual(MEASUREMENT_KEYS);
		expect(measurements.waistToHip.title).toBe('Waist to hip');
		expect(isMeasurementKey('height')).toBe(false);
	});
});

describe('allowances', () => {
	it('each default lies within its range', () => {
		for (const each of BLOCK_ALLOWANCES) expect(checkAllowance(each, each.default, '')).toBe(each.default);
	});

	it('the ends of a range belong to it, and beyond them lies an error with range and value', () => {
		const hollow = BLOCK_ALLOWANCES.find(({ key }) => key === 'hollowFront');
		if (!hollow) throw new Error('hollowFront is gone');
		expect(checkAllowance(hollow, mm(0), '')).toBe(0);
		expect(checkAllowance(hollow, mm(30), '')).toBe(30);
		expect(refusalOf(() => checkAllowance(hollow, mm(30.1), 'x.json: '))).toBe(
			'x.json: hollowFront: the front armhole hollow must lie from 0 cm to 3 cm, not 3.01 cm'
		);
	});

	// The defaults of the body block: common practice, no source.
	it('holds the block’s own numbers', () => {
		const inCm = Object.fromEntries(
			BLOCK_ALLOWANCES.map(({ key, default: usual, range }) => [
				key,
				[usual, ...range].map((each) => each / 10)
			])
		);
		expect(inCm).toEqual({
			bustEase: [8, -4, 30],
			waistEase: [4, -4, 30],
			hipEase: [6, -4, 30],
			sideMost: [3, 0, 6],
			waistDartTop: [2, 0, 8],
			armholeDrop: [3, 1, 6],
			neckAllow: [1, 0, 2],
			frontNeckDrop: [1, 0, 4],
			backNeckDepth: [2.5, 1.5, 4],
			shoulderDropBack: [4, 1, 8],
			shoulderDropFront: [5, 1, 9],
			hollowBack: [1, 0, 3],
			hollowFront: [1.5, 0, 3],
			dartBelow: [6, 3, 12],
			dartShort: [2.5, 0, 5]
		});
	});
});
