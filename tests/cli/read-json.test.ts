import { describe, expect, it } from 'vitest';
import { readJson } from '../../src/cli/read-json.ts';
import { refusalOf } from '../support/refusal.ts';

const reading = (text: string): unknown => readJson({ text, place: 'heron.json', name: 'heron' });

describe('JSON is read with every key that it holds', () => {
	it('whatever stands in its texts and lists', () => {
		const value = { a: [{ b: 1 }, { b: 2 }], b: '"a": {', 'c"\\': { a: ': "b"' }, '': 1, d: ['a', 'a'] };
		expect(reading(JSON.stringify(value))).toEqual(value);
		expect(reading(JSON.stringify(value, undefined, 2))).toEqual(value);
	});

	it.each([
		['{"bust":96,"bust":69}', 'heron.json: bust: this key stands here twice'],
		['{"bust" : 96, "bu\\u0073t"\n:\n69}', 'heron.json: bust: this key stands here twice'],
		['{"a":[1,{"b":{"c":1}, "b":2}]}', 'heron.json: a.b: this key stands here twice'],
		['[{"a":1},{"a":1,"a":1}]', 'heron.json: a: this key stands here twice'],
		['{"body":{"__proto__":{"bust":7}}}', 'heron.json: body.__proto__: nothing can have this name'],
		['{"a":', 'heron.json: this is not JSON: Unexpected end of JSON input']
	])('%s', (text, slip) => {
		expect(refusalOf(() => reading(text))).toBe(slip);
	});

	it('with the place cut where it lies deep', () => {
		const deep = `${'{"a":'.repeat(20_000)}{"b":1,"b":2}${'}'.repeat(20_000)}`;
		expect(refusalOf(() => reading(deep)).length).toBeLessThan(400);
	});
});
