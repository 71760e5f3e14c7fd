import { LONG, type Hostile } from './bodies.ts';

/** A method file of a few steps; `id` is what the command line is asked for. */
const method = (steps: string, head = ''): string =>
	`id: hostile\nname: A hostile method\n${head}steps:\n  - { kind: corner, name: O, label: the corner }\n${steps}`;
const by = (formula: string): string =>
	method(`  - { kind: mark, name: A, label: a point, from: O, go: down, by: "${formula}" }\n`);

const bomb = Array.from({ length: 12 }, (_, i) =>
	i === 0
		? 'a0: &a0 [x, x, x, x, x, x, x, x, x]'
		: `a${i}: &a${i} [${Array.from({ length: 9 }, () => `*a${i - 1}`).join(', ')}]`
).join('\n');

/** What is wrong as YAML, whatever it holds. */
export const yamlSlips: Hostile = {
	'a tab': 'id: hostile\nname: x\nsteps:\n\t- { kind: corner }\n',
	'a key twice': `${method('')}id: other\n`,
	'two documents': `${method('')}---\n${method('')}`,
	'an alias that loops': 'id: hostile\nname: x\nsteps: &a\n  - *a\n',
	'an alias of nothing': 'id: hostile\nname: *nowhere\n',
	'an alias bomb': `${bomb}\nid: hostile\n`,
	'an unknown tag': 'id: !!js/function "function () {}"\nname: x\n',
	'a merge key': 'base: &b { id: hostile }\n<<: *b\nname: x\nsteps: []\n',
	'a bracket that never ends': 'id: hostile\nsteps: [\n',
	'a quote that never ends': 'id: "hostile\nsteps: []\n',
	'lists nested 20,000 deep': `id: hostile\nsteps: ${'['.repeat(20_000)}${']'.repeat(20_000)}\n`,
	'brackets 20,000 deep that never end': `id: hostile\nsteps: ${'['.repeat(20_000)}`,
	'dashes 5,000 deep': `id: hostile\nsteps:\n  ${'- '.repeat(5000)}x\n`,
	'a key of two million letters': `id: hostile\n${LONG}: 1\n`,
	'20,000 keys': `id: hostile\n${Array.from({ length: 20_000 }, (_, i) => `k${i}: 1`).join('\n')}\n`
};

/** What has no name to be found by. */
export const namelessFiles: Hostile = {
	'nothing at all': '',
	'a text': 'hostile\n',
	'a list': '- hostile\n',
	'bytes that are no text': Buffer.from([0xff, 0xfe, 0x00, 0x80, 0xc0, 0xaf, 0x00]),
	'null characters': 'id: hostile\u0000\n'
};

/** Where some of them are wrong: line and column, as editors write them. */
export const placedSlips: Readonly<Record<string, string>> = {
	'a tab': '4:1',
	'a key twice': '5:1',
	'two documents': '5:1',
	'an alias that loops': '4:3',
	'an unknown tag': '1:5',
	'lists nested 20,000 deep': '2:47'
};

/** What is wrong with a method that can be read. */
export const hostileMethods: Hostile = {
	'no name': 'id: hostile\nsteps: []\n',
	'an id that is a number': 'id: 7\nname: x\nsteps: []\n',
	'no steps': 'id: hostile\nname: x\n',
	'steps that are a number': 'id: hostile\nname: x\nsteps: 7\n',
	'an empty list of steps': 'id: hostile\nname: x\nsteps: []\n',
	'a step of no kind': method('  - { name: A }\n'),
	'a kind of no name': method('  - { kind: spiral, name: A, label: a point }\n'),
	'a kind called toString': method('  - { kind: toString, name: A, label: a point }\n'),
	'a kind called __proto__': method('  - { kind: __proto__, name: A, label: a point }\n'),
	'a step twice': method('  - { kind: corner, name: O, label: the corner }\n'),
	'a step from itself': method('  - { kind: mark, name: A, label: a point, from: A, go: down, by: bust }\n'),
	'a step from a later one': method(
		'  - { kind: mark, name: A, label: a, from: B, go: down, by: bust }\n  - { kind: mark, name: B, label: b, from: A, go: down, by: bust }\n'
	),
	'a step called __proto__': method(
		'  - { kind: mark, name: __proto__, label: a, from: O, go: down, by: bust }\n'
	),
	'uses of itself': method('', 'uses: { own: hostile }\n'),
	'uses of nothing': method('', 'uses: { own: nowhere }\n'),
	'no formula': by(''),
	'a formula of no measurement': by('bst'),
	'a formula of a key of the language': by('constructor'),
	'a formula of __proto__': by('__proto__'),
	'a formula called as a function': by('bust()'),
	'a formula divided by nothing': by('bust / (1 - 1)'),
	'a formula divided by naught': by('bust / 0'),
	'a formula beyond all': by('bust * 1e308 * 1e308'),
	'a formula of 1e3080': by('bust * 1e3080'),
	'a formula of 1e3080 alone': by('1e3080'),
	'a formula of endless digits': by('9'.repeat(100_000)),
	'a formula of 5,000 commas': by(`distance(${'O,'.repeat(5000)}O)`),
	'a formula with a statement': by('bust; process.exit(7)'),
	'a formula with a member': by('bust.constructor'),
	'a formula with a list': by('[bust]'),
	'a formula with a choice of signs': by('bust ? waist : hip'),
	'a formula that is a number': method('  - { kind: mark, name: A, label: a, from: O, go: down, by: 7 }\n'),
	'a formula of areas': by('bust * bust'),
	'a length and a number': by('bust + 3'),
	'a formula of 5,000 terms': by(Array.from({ length: 5000 }, () => 'bust').join(' + ')),
	'a formula of 5,000 brackets': by(`${'('.repeat(5000)}bust${')'.repeat(5000)}`),
	'a formula of 5,000 minus signs': by(`${'-'.repeat(5000)}bust`),
	'a formula of two million letters': by(LONG),
	'a distance of nothing': by('distance(O, Q)'),
	'a length of nothing': by('length(back.shoulder)'),
	'a name of 100,000 letters': method(
		`  - { kind: mark, name: ${'A'.repeat(100_000)}, label: a, from: O, go: down, by: bust }\n`
	).replace('from: O', 'from: Q'),
	'a label that is a list': method('  - { kind: mark, name: A, label: [a], from: O, go: down, by: bust }\n'),
	'a key of no name': method('', 'stepps: 7\n'),
	'a curve through one point': method(
		'  - { kind: curve, name: c, label: a curve, rule: corner, through: [{ point: O, heading: down }] }\n'
	)
};

const garment = (pieces: string, more = ''): string =>
	`id: hostile\nname: A hostile garment\nabout: x\nuses:\n  back: back-block\npieces:\n${pieces}${more}`;
const piece = (edges: string): string =>
	`  - key: back\n    name: Back\n    draft: back\n    notch: double\n    edges:\n${edges}    grain: [C, H]\n    cut: [{ in: fabric, count: 1 }]\n`;

/** What is wrong with a garment that can be read as YAML. */
export const hostileGarments: Hostile = {
	'no pieces': 'id: hostile\nname: x\n',
	'pieces that are a number': 'id: hostile\nname: x\nabout: x\nuses: {}\npieces: 7\n',
	'a draft of nothing': garment(piece('      - { name: a, kind: seam, lines: [neck] }\n')).replace(
		'draft: back',
		'draft: front'
	),
	'a method of nothing': garment(piece('      - { name: a, kind: seam, lines: [neck] }\n')).replace(
		'back-block',
		'nowhere'
	),
	'a line of nothing': garment(piece('      - { name: a, kind: seam, lines: [nowhere] }\n')),
	'a line called __proto__': garment(piece('      - { name: a, kind: seam, lines: [__proto__] }\n')),
	'an outline that does not close': garment(
		piece('      - { name: a, kind: seam, lines: [neck] }\n      - { name: b, kind: seam, lines: [hip] }\n')
	),
	'an allowance divided by nothing': garment(
		piece('      - { name: a, kind: seam, lines: [neck], allowance: seamAllowance / (1 - 1) }\n')
	),
	'an allowance beyond all': garment(
		piece('      - { name: a, kind: seam, lines: [neck], allowance: seamAllowance * 1e308 * 1e308 }\n')
	),
	'a kind of edge of no name': garment(piece('      - { name: a, kind: ruffle, lines: [neck] }\n')),
	'a key of no name': garment(piece('      - { name: a, kind: seam, lines: [neck] }\n'), 'seem: 7\n'),
	'a grain of nothing': garment(piece('      - { name: a, kind: seam, lines: [neck] }\n')).replace(
		'[C, H]',
		'[C, Q9]'
	),
	'a count beyond all': garment(piece('      - { name: a, kind: seam, lines: [neck] }\n')).replace(
		'count: 1',
		'count: 1e999'
	)
};
