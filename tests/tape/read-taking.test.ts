import { describe, expect, it } from 'vitest';
import { BadInput } from '#shared/bad-input.ts';
import { readingsIn, readTaking } from '#tape/read-taking.ts';

const read = (text: string, unit: 'cm' | 'in' = 'cm', tape: 'rule' | 'tape' = 'tape') =>
	readTaking(readingsIn(text), unit, 'O–A', tape);

describe('what a tape said of one distance', () => {
	it('is one reading, or the mean of several', () => {
		expect(read('38.4')).toEqual({ length: 384, times: 1 });
		expect(read('38,4; 38,6')).toEqual({ length: 385, times: 2 });
		expect(read('38.4; 38.6;')).toEqual({ length: 385, times: 2 });
	});
	it('may be in inches and their fractions, however these are written', () => {
		for (const text of ['15 3/8', '15-3/8', '15.375', '15 3/8"', '39.0525 cm'])
			expect(read(text, 'in').length, text).toBeCloseTo(390.525, 6);
	});
	it('is refused where two readings are further apart than the tape explains: 4.4 of its errors', () => {
		expect(read('38.4; 38.8').times).toBe(2);
		expect(() => read('38.4; 38.9')).toThrow(BadInput);
		expect(read('38.4; 38.6', 'cm', 'rule').times).toBe(2);
		expect(() => read('38.4; 38.7', 'cm', 'rule')).toThrow(BadInput);
	});
	it('is refused where it is nothing, or no length', () => {
		for (const text of ['0', '-3', 'a lot', '38.4; a lot']) expect(() => read(text), text).toThrow(BadInput);
	});
});
