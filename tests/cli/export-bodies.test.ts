import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { fileName, fileNames } from '#exports/files/file-name.ts';
import { exportHere, HERON, newOutbox } from './export-here.ts';
import { newFolder } from './run-here.ts';

const heron = JSON.parse(readFileSync(HERON, 'utf8')) as Readonly<Record<string, number>>;
const KEYS = [
	...(['bust', 'waist', 'hip', 'neck', 'shoulderWidth', 'backLength'] as const),
	...(['waistToHip', 'frontLength', 'bustHeight', 'bustSpan'] as const)
];

const folder = newFolder();
const outbox = newOutbox();
afterAll(() => {
	folder.remove();
	outbox.remove();
});

/** A table of Herons of these names, each with a waist of its own so that their files can be told apart. */
const tableOf = (names: readonly string[], more: readonly string[] = []): string => {
	const rows = names.map(
		(name, i) =>
			`"${name.replaceAll('"', '""')}",${KEYS.map((key) => (key === 'waist' ? 75 + i : heron[key])).join(',')}`
	);
	return folder.write('class.csv', `${[`name,${KEYS.join(',')}`, ...rows, ...more].join('\n')}\n`);
};

const exported = async (into: string, table: string, ...words: readonly string[]) => {
	const run = await exportHere('course-dress', '--bodies', table, '--to', outbox.at(into), ...words);
	return { ...run, out: run.out.replaceAll(outbox.at(), ''), err: folder.short(run.err) };
};

const LONG = 'x'.repeat(300);
const ODD = [
	...[
		'Ana/Maria "1"',
		'CON',
		'👩🏽‍🎨🪡',
		LONG,
		'Heron',
		'heron',
		'Heron',
		'../up',
		'..',
		'nul.txt',
		'Ñandú ½',
		' . '
	],
	...['C:\\temp', 'a\u202Efdp.exe', '-rf']
];

/** Names that no file may have on the usual systems: reserved words, signs, ends, and more than 255 bytes. */
const isSafe = (name: string): boolean =>
	// eslint-disable-next-line no-control-regex
	!/[<>:"/\\|?*\u0000-\u001F\u007F\u202A-\u202E]/.test(name) &&
	!/^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(name) &&
	!/^[.-]|[. ]$/.test(name) &&
	Buffer.byteLength(name) <= 255;

describe('square-across export course-dress --bodies FILE.csv --to FOLDER', () => {
	it('names the files after the rows, safe on any system and none twice', async () => {
		const { code, out, err } = await exported('odd', tableOf(ODD), '--as', 'csv');
		expect({ code, err }).toEqual({ code: 0, err: '' });
		const names = outbox.list('odd');
		expect(names).toHaveLength(ODD.length);
		expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(ODD.length);
		expect(names.filter((name) => !isSafe(name))).toEqual([]);
		expect(names).toEqual(expect.arrayContaining(['Heron.csv', 'heron-2.csv', 'Heron-3.csv', 'Ñandú ½.csv']));
		expect(names).toContain('👩🏽‍🎨🪡.csv');
		// Each file that was told is there, in the order of the rows, and holds its own body.
		const told = out.trimEnd().split('\n');
		expect(told.map((line) => line.replace(/^\/odd\//, '')).sort()).toEqual(names);
		const texts = new Set(names.map((name) => outbox.text('odd', name)));
		expect(texts.size).toBe(ODD.length);
	});

	it('tells a row that is refused or cannot be read, makes the others, and ends with exit code 2', async () => {
		const flat = `flat,${KEYS.map((key) => (key === 'bust' ? 50 : heron[key])).join(',')}`;
		const unread = `unread,${KEYS.map((key) => (key === 'hip' ? '9x6' : heron[key])).join(',')}`;
		const { code, out, err } = await exported('some', tableOf(['Heron', 'Lark'], [flat, unread]));
		expect(code).toBe(2);
		expect(out.trimEnd().split('\n')).toEqual(['/some/Heron.pdf', '/some/Lark.pdf']);
		expect(outbox.list('some')).toEqual(['Heron.pdf', 'Lark.pdf']);
		expect(err.trimEnd().split('\n')).toEqual([
			expect.stringMatching(/^class\.csv: flat: bust \(50 cm\) and shoulderWidth \(38\.4 cm\) disagree: /),
			expect.stringMatching(/^class\.csv: row 4 \(line 5\), column hip: "9x6"/),
			'class.csv: 2 of 4 rows could not be made'
		]);
	});

	it('each piece in a file of its own, in a folder of the row', async () => {
		const { code } = await exported(
			'apart',
			tableOf(['Ana/Maria', 'Lark']),
			'--apart',
			'--pieces',
			'casing,front'
		);
		expect(code).toBe(0);
		expect(outbox.list('apart')).toEqual(['Ana-Maria', 'Lark']);
		expect(outbox.list('apart', 'Ana-Maria')).toEqual(['1 Front bodice.svg', '7 Casing.svg']);
	});

	it('of a draft', async () => {
		const to = outbox.at('drafts');
		const run = await exportHere('back-block', '--bodies', tableOf(['Heron']), '--to', to, '--as', 'svg');
		expect({ code: run.code, files: outbox.list('drafts') }).toEqual({ code: 0, files: ['Heron.svg'] });
	});

	it('what is wrong for all rows is told once, before any folder is made', async () => {
		const table = tableOf(['Heron', 'Lark']);
		for (const words of [
			['--pieces', 'sleeve'],
			['--paper', 'a9'],
			['--scale', 'huge']
		]) {
			const { code, err } = await exported('none', table, ...words);
			expect(code).toBe(2);
			expect(err).toMatch(/^export: there is no [^\n]+\n$/);
		}
		expect(outbox.list()).not.toContain('none');
	});

	it('a folder that is a file, and a file’s name for a folder, are told', async () => {
		const table = tableOf(['Heron']);
		const file = folder.write('taken', '');
		const run = await exportHere('course-dress', '--bodies', table, '--to', file);
		expect({ code: run.code, err: folder.short(run.err) }).toEqual({
			code: 2,
			err: 'taken: this is a file, not a folder\n'
		});
		const { err } = await exported('dress.svg', table);
		expect(err).toMatch(/^export: many files go into a folder.*--as svg\n$/);
	});
});

describe('names of files', () => {
	it.each([
		['Heron', 'Heron'],
		['St. Mary', 'St. Mary'],
		['Ana/Maria "1"', 'Ana-Maria -1-'],
		['', 'pattern'],
		['..', 'pattern'],
		['///', 'pattern'],
		['\u0000\u0007', 'pattern'],
		['\uD800', 'pattern'],
		[LONG, 'x'.repeat(60)],
		[`a.${LONG}`, `a.${'x'.repeat(58)}`],
		['e\u0301', 'é']
	])('%j is %j', (name, safe) => {
		expect(fileName(name)).toBe(safe);
	});

	it('an emoji of several parts is kept whole or left out', () => {
		const [artist] = ['👩🏽‍🎨'];
		const cut = fileName(artist.repeat(30));
		expect(cut.length).toBeGreaterThan(40);
		expect(cut.replaceAll(artist, '')).toBe('');
	});

	it('are different in one folder, even after a cut and where one looks like another’s number', () => {
		const names = fileNames([LONG, `${LONG}y`, 'A', 'a', 'A-2', 'CON', 'con']);
		expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
		expect(names.filter((name) => !isSafe(name))).toEqual([]);
	});
});
