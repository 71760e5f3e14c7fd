import { describe, expect, it } from 'vitest';
import { inField, toKeep, withTyped } from '#ui/keeping/in-unit.ts';
import { readBody } from '#shared/body.ts';
import { speechFor } from '../support/speech.ts';

const CM = speechFor('en', 'cm');
const IN = speechFor('en', 'in');
const file = { name: 'Mine', unit: 'cm' as const, allowances: {}, bust: '96', waist: 78 };

describe('a body’s numbers in the one unit of the screen', () => {
	it('stand as they were typed, or worked into the other unit', () => {
		expect(inField('96', 'cm', CM)).toBe('96');
		expect(inField('37 3/4', 'in', IN)).toBe('37 3/4');
		// 96 / 2.54 = 37.795, and the nearest sixteenth is 37 13/16.
		expect(inField('96', 'cm', IN)).toBe('37 13/16');
		expect(inField('38 in', 'cm', CM)).toBe('96.52');
		expect(inField(960, 'mm', CM)).toBe('96');
		expect(inField(undefined, 'cm', IN)).toBe('');
	});

	it('one that is changed takes the unit in which it was typed; the others are not touched', () => {
		const changed = withTyped(file, 'bust', '38', 'in');
		expect(changed).toEqual({ ...file, bust: '38 in' });
		expect(readBody(changed).measurements.bust).toBeCloseTo(38 * 25.4, 9);
		expect(withTyped(changed, 'bust', '97', 'cm').bust).toBe('97');
		expect(withTyped(file, 'bust', '', 'in')).not.toHaveProperty('bust');
	});

	it('what names its unit keeps it', () => {
		expect(toKeep('38"', 'cm', 'cm')).toBe('38"');
		expect(toKeep('96 cm', 'in', 'cm')).toBe('96 cm');
	});

	it('what no body measures is refused in the unit of the screen', () => {
		expect(() => withTyped(file, 'bust', '300', 'in')).toThrow();
		expect(withTyped(file, 'bust', '300', 'cm').bust).toBe('300');
	});
});
