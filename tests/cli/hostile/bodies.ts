import { readFileSync } from 'node:fs';
import { bodyFile } from '../check-here.ts';

/** What is written into a file, by a name that says what is wrong with it. */
export type Hostile = Readonly<Record<string, string | Buffer>>;

const HERON = JSON.parse(readFileSync(bodyFile('heron'), 'utf8')) as Readonly<Record<string, unknown>>;
const { about: _, ...PLAIN } = HERON;

/** Heron's file, with some of it changed. */
export const heronWith = (changes: Readonly<Record<string, unknown>>): string =>
	JSON.stringify({ ...PLAIN, ...changes });

/** JSON nested so deep, as text: no program of ours could write it. */
export const deep = (levels: number): string => '['.repeat(levels) + ']'.repeat(levels);
const deepObject = (levels: number): string => '{"a":'.repeat(levels) + '1' + '}'.repeat(levels);

/** Heron's file with a value that is put in as text. */
const heronRaw = (key: string, text: string): string =>
	heronWith({ [key]: '@@' }).replace('"@@"', () => text);

/** Longer than any line that is shown by ten thousand times; more would only take longer. */
export const LONG = 'x'.repeat(2 * 1024 * 1024);

/** Values that no length is. */
const NO_LENGTHS: Readonly<Record<string, unknown>> = {
	true: true,
	null: null,
	'an empty text': '',
	'a blank': ' ',
	'an empty list': [],
	'a list of one': [96],
	'an object': {},
	'a negative number': -96,
	zero: 0,
	'a very small number': 1e-300,
	'a very large number': 1e300,
	'a number beyond all': '1e999',
	'no number': 'NaN',
	endless: 'Infinity',
	hexadecimal: '0x60',
	'Arabic digits': '٩٦',
	'two signs': '--96',
	'two units': '96 cm mm',
	'a part of nothing': '1/0',
	'nothing of nothing': '0/0',
	'two fractions': '½½',
	'two commas': '9,6,5',
	'a thousand spaces': `9${' '.repeat(1000)}x`,
	'a hundred thousand spaces': `9${' '.repeat(100_000)}x`,
	'a hundred thousand digits': '9'.repeat(100_000),
	'a hundred thousand fractions': '1/2 '.repeat(25_000),
	'ten megabytes': LONG,
	'a line break': '9\n6',
	'a terminal code': '\u001b[31m96',
	'a null character': '96\u0000',
	'half a character': '\ud800'
};

const lengths = (): Hostile =>
	Object.fromEntries(
		['bust', 'backLength'].flatMap((key) =>
			Object.entries(NO_LENGTHS).map(([name, value]) => [`${key}: ${name}`, heronWith({ [key]: value })])
		)
	);

/** What stands in a file of Heron's, but with one more key written as text: JSON would not let a program write it. */
const heronAnd = (more: string): string => heronWith({}).replace('{', () => `{${more},`);

/** Keys that a reader of JSON loses without a word: those that stand twice, and one that no object can hold. */
const lostKeys = (): Hostile => ({
	'bust twice': heronAnd('"bust":90'),
	'bust twice, once spelled by its number': heronAnd('"\\u0062ust":90'),
	'the name twice': heronAnd('"name":"Ash"'),
	'an allowance twice': heronAnd('"allowances":{"bustEase":4,"bustEase":6}'),
	'allowances twice': heronAnd('"allowances":{},"allowances":{}'),
	'a key twice, 20,000 deep': heronAnd(`"note":${'['.repeat(20_000)}{"a":1,"a":2}${']'.repeat(20_000)}`),
	'a measurement called __proto__': heronAnd('"__proto__":{"bust":7}'),
	'a measurement called __proto__, as a number': heronAnd('"__proto__":7'),
	'an allowance called __proto__': heronAnd('"allowances":{"__proto__":{"a":1}}'),
	'a note with __proto__ in it': heronAnd('"note":{"__proto__":1}')
});

/** Heron's centimetres, said to be something else. */
const mistakenUnits = (): Hostile => ({
	'centimetres said to be inches': heronWith({ unit: 'in' }),
	'centimetres said to be inches, of somebody small': heronWith({
		...{
			unit: 'in',
			bust: 76,
			waist: 58,
			hip: 82,
			neck: 31,
			shoulderWidth: 31,
			backLength: 36,
			frontLength: 38
		},
		...{ bustHeight: 22, bustSpan: 15, waistToHip: 16 }
	}),
	'centimetres said to be millimetres': heronWith({ unit: 'mm' }),
	'millimetres said to be centimetres': heronWith({ bust: 960, backLength: 425 })
});

/** Body files that must be refused, whatever the method. */
export const hostileBodies = (): Hostile => ({
	...lengths(),
	...lostKeys(),
	...mistakenUnits(),
	'nothing at all': '',
	'a blank': ' \n',
	'half a file': heronWith({}).slice(0, 60),
	'two files in one': heronWith({}) + heronWith({}),
	null: 'null',
	'a number': '96',
	'a text': '"Heron"',
	'a list': '[96]',
	'a list nested 5,000 deep': deep(5000),
	'a list nested 100,000 deep': deep(100_000),
	'an object nested 20,000 deep': deepObject(20_000),
	'a key of ten megabytes': heronWith({ [LONG]: 1 }),
	'a thousand keys of no name': heronWith(
		Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`k${i}`, 1]))
	),
	'UTF-16': Buffer.from(heronWith({}), 'utf16le'),
	'bytes that are no text': Buffer.from([0xff, 0xfe, 0x00, 0x80, 0xc0, 0xaf, 0x00]),
	'bust nested 20,000 deep': heronRaw('bust', deep(20_000)),
	'bust an object nested 20,000 deep': heronRaw('bust', deepObject(20_000)),
	'bust a number of 100,000 digits': heronRaw('bust', '9'.repeat(100_000)),
	'bust 1e999': heronRaw('bust', '1e999'),
	'unit furlong': heronWith({ unit: 'furlong' }),
	'unit a number': heronWith({ unit: 1 }),
	'unit toString': heronWith({ unit: 'toString' }),
	'unit nested 20,000 deep': heronRaw('unit', deep(20_000)),
	'unit of ten megabytes': heronWith({ unit: LONG }),
	'name a number': heronWith({ name: 7 }),
	'name nested 20,000 deep': heronRaw('name', deep(20_000)),
	'a measurement called constructor': heronWith({ constructor: 5 }),
	'a measurement called toString': heronWith({ toString: 5 }),
	'a measurement called hasOwnProperty': heronWith({ hasOwnProperty: 5 }),
	'a measurement misspelt': heronWith({ bustt: 5 }),
	'a measurement with a terminal code': heronWith({ '\u001b[31mbust': 5 }),
	'allowances a number': heronWith({ allowances: 5 }),
	'allowances a list': heronWith({ allowances: [5] }),
	'allowances null': heronWith({ allowances: null }),
	'allowances nested 20,000 deep': heronRaw('allowances', deep(20_000)),
	'an allowance nested 20,000 deep': heronRaw('allowances', `{"bustEase":${deep(20_000)}}`),
	'an allowance of no name': heronWith({ allowances: { ease: 5 } }),
	'an allowance called constructor': heronWith({ allowances: { constructor: 5 } }),
	'an allowance with a key of ten megabytes': heronWith({ allowances: { [LONG]: 5 } }),
	'an allowance of 1e300': heronWith({ allowances: { bustEase: 1e300 } }),
	'an allowance of -1e300': heronWith({ allowances: { bustEase: -1e300 } }),
	'an allowance of ten megabytes': heronWith({ allowances: { bustEase: LONG } }),
	'an allowance that is no length': heronWith({ allowances: { bustEase: true } }),
	'only a name': JSON.stringify({ name: 'Heron' }),
	'a waist wider than any': heronWith({ waist: 10_000 }),
	'a neck of 300': heronWith({ neck: 300 }),
	'a name of 100,000 letters': heronWith({ name: 'x'.repeat(100_000) }),
	'a name of 201 letters': heronWith({ name: 'x'.repeat(201) }),
	'an allowance in another unit than it can be': heronWith({ allowances: { bustEase: '4 ells' } }),
	'an allowance called toString': heronWith({ allowances: { toString: 5 } })
});

const COLUMNS = ['name', 'bust', 'waist', 'hip', 'neck', 'shoulderWidth', 'backLength', 'waistToHip'];
export const ROW = ['Heron', 96, 78, 102, 37, 38.4, 42.5, 20.5].join(',');
/** A table's heading, and a row below it. */
export const HEADING = COLUMNS.join(',');

/** Tables that are of no use as a whole. */
export const hostileTables = (): Hostile => ({
	'nothing at all': '',
	'blank lines': '\n\n\n',
	'a heading alone': HEADING,
	'no heading': ROW,
	'one column': 'bust\n96',
	'a heading of 20,000 columns': `${Array.from({ length: 20_000 }, (_, i) => `c${i}`).join(',')}\n1`,
	'a heading of ten megabytes': `${LONG}\n1`,
	'a column twice': `${HEADING},bust\n${ROW},96`,
	'a quote that never ends': `"${HEADING}\n${ROW}`,
	JSON: heronWith({}),
	'bytes that are no text': Buffer.from([0xff, 0xfe, 0x00, 0x80, 0xc0, 0xaf, 0x00]),
	'UTF-16': Buffer.from(`${HEADING}\n${ROW}`, 'utf16le'),
	'null characters': '\u0000'.repeat(1000),
	'a column called __proto__ for one that is needed': `${HEADING.replace('bust', '__proto__')}\n${ROW}`,
	'20,000 columns twice': `${HEADING}${',a'.repeat(20_000)}\n${ROW}`,
	'terminal codes for a column': `${HEADING.replace('bust', '\u001b[31mbust')}\n${ROW}`,
	'a measurement misspelt': `${HEADING.replace('bust', 'bustt')}\n${ROW}`
});

/** Tables that go on after a bad row: each has three. */
export const tablesWithBadRows = (): Hostile => {
	const three = (cells: string, heading = HEADING): string => `${heading}\n${ROW}\n${cells}\n${ROW}\n`;
	const cell = (text: string): string => three(ROW.replace('96', () => text));
	return {
		'too many cells': three(`${ROW},1,2,3`),
		'20,000 cells': three(`${ROW}${',1'.repeat(20_000)}`),
		'too few cells': three('Heron,96'),
		'a cell of ten megabytes': cell(LONG),
		'a cell of 100,000 spaces': cell(`"9${' '.repeat(100_000)}x"`),
		'a cell of 100,000 digits': cell('9'.repeat(100_000)),
		'a name with a terminal code': three(`\u001b[31mHeron,,78,102,37,38.4,42.5,20.5`),
		'a null character': cell('96\u0000'),
		'a negative cell': cell('-96'),
		'no number': cell('NaN'),
		'a quoted line break': cell('"9\n6"'),
		'a column of ten megabytes': `${HEADING},${LONG}\n${ROW},1\n${ROW},1\n${ROW},1\n`,
		'centimetres said to be inches': `${HEADING},unit\n${ROW},cm\n${ROW},in\n${ROW},cm\n`,
		'a cell of a sum of 5,000 terms': cell(Array.from({ length: 5000 }, () => '1').join('+')),
		'a cell of 1e999': cell('1e999'),
		'a cell called __proto__': cell('__proto__'),
		'a unit of no name': `${HEADING},unit\n${ROW},cm\n${ROW},furlong\n${ROW},\n`
	};
};

/** What a body's file may say of a garment's edges, and should not. */
export const hostileEdges = (): Hostile => {
	const edges = (text: string): string => heronRaw('edges', text);
	return {
		null: edges('null'),
		'a number': edges('7'),
		'a list': edges('[1.5]'),
		'nested 20,000 deep': edges(deep(20_000)),
		'an object nested 20,000 deep': edges(deepObject(20_000)),
		'one nested 20,000 deep': edges(`{"front.side":${deep(20_000)}}`),
		'of no name': edges('{"side":1}'),
		'called __proto__': edges('{"__proto__":1}'),
		'called constructor': edges('{"constructor":1}'),
		'with a name of two million letters': edges(`{"${LONG}":1}`),
		'with a terminal code': edges('{"\\u001b[31mfront.side":1}'),
		'one twice': edges('{"front.side":1,"front.side":2}'),
		'beyond all': edges('{"front.side":1e999}'),
		'less than nothing': edges('{"front.side":-1}'),
		'as wide as a sheet': edges('{"front.side":400}'),
		'no length': edges('{"front.side":"wide"}'),
		'100,000 spaces': edges(`{"front.side":"9${' '.repeat(100_000)}x"}`)
	};
};
