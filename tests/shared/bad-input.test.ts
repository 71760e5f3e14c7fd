import { describe, expect, it } from 'vitest';
import { BadInput, shown, slipWords } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { english } from '../support/speech.ts';

const deep = (levels: number): unknown => JSON.parse('['.repeat(levels) + ']'.repeat(levels));

describe('a value that is shown', () => {
	it.each([
		['two', '"two"'],
		['a "b"', '"a "b""'],
		[7, '7'],
		[Number.POSITIVE_INFINITY, 'Infinity'],
		[{ a: [1] }, '{"a":[1]}'],
		['x'.repeat(99), `"${'x'.repeat(56)}...`],
		[1.5, '1.5'],
		[NaN, 'NaN'],
		[null, 'null'],
		[undefined, 'undefined'],
		[[1, 'a', [true, null]], '[1,"a",[true,null]]'],
		[{ a: { b: [] }, c: undefined, 'd"': '"' }, '{"a":{"b":[]},"d\\"":"\\""}'],
		['x'.repeat(58), `"${'x'.repeat(58)}"`],
		['x'.repeat(59), `"${'x'.repeat(56)}...`]
	])('%j is %s', (value, text) => {
		expect(shown(value)).toBe(text);
	});

	it('is cut at once, however deep or long it is', () => {
		expect(shown(deep(5000))).toBe(`${'['.repeat(57)}...`);
		expect(shown({ ['k'.repeat(1e7)]: 'x'.repeat(1e7) })).toBe(`{"${'k'.repeat(55)}...`);
		expect(shown(new Array(1e6).fill(7))).toBe(`[${'7,'.repeat(28)}...`);
	});
});

describe('bad input', () => {
	const slip = (reason: string) => message('command', 'refused', { reasons: [reason] });

	it('is one line of bounded length, whatever place it names', () => {
		expect(slipWords(new BadInput('body.json: bust', slip('missing')), english)).toBe(
			'body.json: bust: missing'
		);
		expect(slipWords(new BadInput('k'.repeat(1e7), slip('unknown')), english)).toHaveLength(
			160 + ': unknown'.length
		);
	});
});
