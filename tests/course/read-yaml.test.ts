import { describe, expect, it } from 'vitest';
import { effortOf } from '../support/effort.ts';
import { refusalOf } from '../support/refusal.ts';
import { speechFor } from '../support/speech.ts';
import { readYaml } from '#course/read-yaml.ts';

const said = (text: string): string => refusalOf(() => readYaml(text, 'm.yaml'));
const bomb = ['a: &a [x, x]', ...'b c d e f g h i'.split(' ').map((k) => `${k}: &${k} [*a, *a]`)];

describe('a file that is written as it must be', () => {
	it('is read as it is', () => {
		expect(readYaml('a: 1\nb:\n  - x\n  - { c: "[[" }\n', 'm.yaml')).toEqual({ a: 1, b: ['x', { c: '[[' }] });
		expect(readYaml('', 'm.yaml')).toBeNull();
	});
});

describe('a slip is named with file, line and column', () => {
	it.each([
		['a tab', 'a:\n\tb: 1\n', 'm.yaml:2:1: a tab stands where spaces must'],
		['a key twice', 'a: 1\nb:\n  c: 1\n  c: 2\n', 'm.yaml:4:3: "c" stands here twice'],
		[
			'two documents',
			'a: 1\n---\nb: 2\n',
			'm.yaml:2:1: a second document begins here; the file may hold one'
		],
		['an alias that is its own part', 'a: &a [*a]\n', 'm.yaml:1:7: anchors and aliases'],
		['an alias bomb', bomb.join('\n'), 'm.yaml:1:7: anchors and aliases'],
		['an unknown tag', 'a: !!python/name x\n', 'm.yaml:1:4: tags (!) are not known here'],
		['a bracket left open', 'a: [1, 2\nb: 3\n', 'm.yaml:2:1: this is not YAML ('],
		['nested brackets', `a: ${'['.repeat(20_000)}`, 'm.yaml:1:43: this is nested more than 40 levels deep'],
		['nested dashes', `${'- '.repeat(20_000)}x`, 'm.yaml:1:1: this is nested more than 40 levels deep'],
		[
			'nested lines',
			Array.from({ length: 300 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
			'm.yaml:41:1: this is nested more than 40 levels deep'
		],
		['a long file', `a: ${'x'.repeat(100_000)}`, 'm.yaml: a file of this kind may have 64 kB'],
		['a long key twice', `${'k'.repeat(900)}: 1\n${'k'.repeat(900)}: 2`, 'stands here twice']
	])('%s', (_, text, complaint) => {
		expect(effortOf(() => said(text))).toBeLessThan(2000);
		expect(said(text)).toContain(complaint);
		expect(said(text).length).toBeLessThan(400);
	});

	it('in the language of whoever reads it', () => {
		expect(refusalOf(() => readYaml('a: 1\na: 2', 'm.yaml'), speechFor('es'))).toBe(
			'm.yaml:2:1: «a» está aquí dos veces'
		);
	});

	it('many keys are no burden', () => {
		const keys = Array.from({ length: 9000 }, (_, i) => `k${String(i)}: 1`)
			.join('\n')
			.slice(0, 64_000);
		const whole = keys.slice(0, keys.lastIndexOf('\n'));
		expect(effortOf(() => readYaml(whole, 'm.yaml'))).toBeLessThan(3000);
	});
});
