import DxfParser from 'dxf-parser';
import { parse } from 'csv-parse/sync';
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { askOf } from '../exports/raster.ts';
import { pageTexts, plain } from '../exports/sheet-options.ts';
import { exportHere, HERON, linesIn, newOutbox } from './export-here.ts';
import { lengthOf, patternHere } from './pattern-here.ts';
import { draftHere, newFolder } from './run-here.ts';
import { COMMAND, IN_TURN, runCli, runProcess, type CliRun } from './run-cli.ts';

const outbox = newOutbox();
const folder = newFolder();
afterAll(() => {
	outbox.remove();
	folder.remove();
});

const heron = JSON.parse(readFileSync(HERON, 'utf8')) as Readonly<Record<string, number | string>>;
const bodyFile = (more: object): string => folder.write('body.json', JSON.stringify({ ...heron, ...more }));

/** Exports into a file of the outbox, which must go well and say nothing. */
const made = async (to: string, id: string, ...words: readonly string[]): Promise<Buffer> => {
	const body = words.includes('--body') ? [] : ['--body', HERON];
	const run = await exportHere(id, ...body, '--to', outbox.at(to), ...words);
	expect(run).toEqual({ code: 0, out: '', err: '' });
	return outbox.bytes(to);
};

const pages = (bytes: Buffer): number => Number(/Pages: +(\d+)/.exec(askOf('pdfinfo', bytes))?.[1]);

describe('square-across export course-dress, each kind of file', () => {
	it('a PDF that other programs find sound', async () => {
		const bytes = await made('dress.pdf', 'course-dress');
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax or stream encoding errors found');
		expect(pages(bytes)).toBeGreaterThan(15);
	});

	it('an SVG in millimetres, whose cutting lines are as long as the pieces say', async () => {
		const svg = (await made('dress.svg', 'course-dress')).toString();
		const { pieces } = madeFor(garmentOf('course-dress'), bodyOf('heron'));
		const side = pieces.find(({ key }) => key === 'skirt')?.edges.find(({ name }) => name === 'side');
		const lines = linesIn(svg, 'piece-6-skirt-stitching').map(lengthOf);
		expect(lines.some((length) => Math.abs(length - (side?.length ?? NaN)) < 0.01)).toBe(true);
	});

	it('a DXF with a block for each piece, as an independent parser reads it', async () => {
		const text = (await made('dress.dxf', 'course-dress')).toString();
		expect(Object.keys(new DxfParser().parseSync(text)?.blocks ?? {})).toHaveLength(8);
	});

	it('a table of the edges', async () => {
		const rows: Record<string, string>[] = parse(await made('dress.csv', 'course-dress'), { columns: true });
		expect(rows.filter(({ what }) => what === 'edge').length).toBeGreaterThan(30);
	});

	it('the JSON of the pattern command', async () => {
		const text = (await made('dress.json', 'course-dress')).toString();
		expect(text).toBe((await patternHere('course-dress', '--body', HERON, '--json')).out);
	});

	it('--as says the kind where the name does not; capitals do not matter', async () => {
		expect((await made('dress', 'course-dress', '--as', 'SVG')).toString()).toMatch(/^<svg /);
		expect((await made('dress.CSV', 'course-dress')).toString()).toMatch(/^what,piece,/);
	});
});

describe('papers', () => {
	// ISO 216 and 8 1/2 by 11 inches, in points of 1/72 inch; a roll is as long as it must be.
	it.each([
		['a4', 595.276, 841.89],
		['letter', 612, 792],
		['a3', 841.89, 1190.55],
		['a0', 2383.94, 3370.39],
		['roll-60', 1700.79, undefined],
		['ROLL-90', 2551.18, undefined]
	])('%s', async (paper, width, height) => {
		const bytes = await made('paper.pdf', 'course-dress', '--paper', paper);
		const info = askOf('pdfinfo', bytes, '-l', '99');
		const [, wide, high] = /Page +2 size: +([\d.]+) x ([\d.]+)/.exec(info) ?? [];
		expect(Number(wide)).toBeCloseTo(width, 1);
		if (height !== undefined) expect(Number(high)).toBeCloseTo(height, 1);
		else expect((Number(high) / 72) * 25.4).toBeLessThan(3000);
		expect(askOf('qpdf', bytes, '--check')).toContain('No syntax');
	});

	it('a sheet for the floor has the check squares beside the pieces, and the cover is a page of A4', async () => {
		const bytes = await made('floor.pdf', 'course-dress', '--paper', 'a0');
		expect(askOf('pdfinfo', bytes, '-l', '2')).toMatch(/Page +1 size: +595\.276 x 841\.89/);
		const [cover = '', sheet = ''] = pageTexts(bytes).map(plain);
		expect(cover).toContain('The large sheet has the same two squares');
		for (const text of [cover, sheet]) {
			expect(text).toContain('Each side is 100 mm.');
			expect(text).toContain('Each side is 4 inches.');
		}
	});
});

describe('what is chosen', () => {
	it('only the named pieces', async () => {
		const svg = (await made('two.svg', 'course-dress', '--pieces', 'skirt, front')).toString();
		expect([...svg.matchAll(/<g id="([^"]+)"><title>/g)].map(([, id]) => id)).toEqual([
			'piece-1-front-bodice',
			'piece-2-skirt'
		]);
	});

	it.each([
		['half', 2],
		['quarter', 4]
	])('at %s scale every cutting line is that much shorter', async (scale, times) => {
		const cutting = async (...words: readonly string[]): Promise<number> => {
			const svg = (await made('scaled.svg', 'course-dress', '--pieces', 'front', ...words)).toString();
			return linesIn(svg, 'piece-1-front-bodice-cutting').reduce((sum, line) => sum + lengthOf(line), 0);
		};
		expect(await cutting('--scale', scale)).toBeCloseTo((await cutting()) / times, 2);
		const small = await made('small.pdf', 'course-dress', '--scale', scale);
		expect(pages(small)).toBeLessThan(pages(outbox.bytes('dress.pdf')));
		expect(plain(pageTexts(small)[0] ?? '')).toContain('for class work: do not cut cloth by it');
	});

	it('each piece in a file of its own', async () => {
		const words = ['course-dress', '--body', HERON, '--to', outbox.at('apart'), '--apart'];
		expect(await exportHere(...words)).toEqual({ code: 0, out: '', err: '' });
		const names = outbox.list('apart');
		expect(names).toHaveLength(8);
		expect(names.slice(0, 2)).toEqual(['1 Front bodice.svg', '2 Back bodice.svg']);
		expect(outbox.text('apart', '6 Skirt.svg')).toContain('<g id="piece-1-skirt-cutting"');
		expect(await exportHere(...words, '--as', 'dxf', '--pieces', 'casing')).toMatchObject({ code: 0 });
		expect(outbox.list('apart').filter((name) => name.endsWith('.dxf'))).toEqual(['7 Casing.dxf']);
	});

	it('the allowances and edges of the body’s file', async () => {
		const wide = bodyFile({ allowances: { skirtLength: 70 }, edges: { 'skirt.hem': 5 } });
		const rows: Record<string, string>[] = parse(await made('w.csv', 'course-dress', '--body', wide), {
			columns: true
		});
		const skirt = rows.filter(({ piece, what }) => piece === 'Skirt' && what === 'edge');
		expect(skirt.find(({ name }) => name === 'side')?.['length_mm']).toBe('700');
		expect(skirt.find(({ name }) => name === 'hem')?.['allowance_mm']).toBe('50');
	});
});

describe('the same input gives the same bytes', () => {
	const kinds = ['pdf', 'svg', 'dxf', 'csv', 'json'];
	/** Every kind of file, made by one process in a time zone. */
	const madeIn = async (zone: string, name: string): Promise<CliRun> => {
		const lines = kinds.map((kind) =>
			JSON.stringify(['export', 'course-dress', '--body', HERON, '--to', outbox.at(`${name}.${kind}`)])
		);
		return runProcess(process.execPath, [IN_TURN], { input: lines.join('\n'), env: { TZ: zone } });
	};

	// Two processes make five files each, one process after the other: a busy machine takes long over it.
	it('in two processes of two time zones', { timeout: 240_000 }, async () => {
		for (const [zone, name] of [
			['Pacific/Auckland', 'one'],
			['America/Lima', 'two']
		] as const)
			expect(await madeIn(zone, name)).toEqual({ code: 0, out: `${zone} 0 0 0 0 0`, err: '' });
		for (const kind of kinds)
			expect(outbox.bytes(`one.${kind}`).equals(outbox.bytes(`two.${kind}`)), kind).toBe(true);
	});

	it('a date is written into a PDF, and is all that differs', async () => {
		const plainFile = await made('undated.pdf', 'back-block');
		const dated = await made('dated.pdf', 'back-block', '--date', '2026-01-31');
		expect(askOf('pdfinfo', dated, '-isodates')).toContain('CreationDate:    2026-01-31T00:00:00Z');
		expect(dated.equals(plainFile)).toBe(false);
		expect(dated.equals(await made('again.pdf', 'back-block', '--date', '2026-01-31'))).toBe(true);
	});
});

describe('square-across export of a draft', () => {
	it('as a PDF, whole and at half scale', async () => {
		const whole = await made('draft.pdf', 'back-block');
		const half = await made('half.pdf', 'back-block', '--scale', 'half', '--paper', 'a3');
		for (const bytes of [whole, half]) expect(askOf('qpdf', bytes, '--check')).toContain('No syntax');
		expect([pages(whole), pages(half)]).toEqual([7, 2]);
	});

	it('as an SVG whose lines are as long as the draft says', async () => {
		const svg = (await made('draft.svg', 'back-block')).toString();
		const { out } = await draftHere('back-block', '--body', HERON, '--json');
		const { lines } = JSON.parse(out) as { lines: Readonly<Record<string, { length: number }>> };
		const drawn = [...svg.matchAll(/<path d="([^"]+)"/g)].map(([, data = '']) => lengthOf(data));
		for (const { length } of Object.values(lines))
			expect(drawn.some((each) => Math.abs(each - length) < 0.01)).toBe(true);
	});

	it('as a table and as the JSON of the draft command', async () => {
		const rows: Record<string, string>[] = parse(await made('draft.csv', 'back-block'), { columns: true });
		expect(rows.find(({ name }) => name === 'O')).toMatchObject({ across_mm: '0', down_mm: '0' });
		const json = (await made('draft.json', 'back-block')).toString();
		expect(json).toBe((await draftHere('back-block', '--body', HERON, '--json')).out);
	});
});

describe('words that are not plain English', () => {
	const señora = (): string => bodyFile({ name: 'Señora “Ñandú” 4½' });

	it('Spanish letters and fractions are read back from a PDF', async () => {
		const bytes = await made('es.pdf', 'course-dress', '--body', señora());
		const [first = ''] = pageTexts(bytes);
		expect(plain(first)).toMatch(/For Señora “Ñandú” 4 ?1\/2\./);
	});

	it('a drawing file has them in the code page that it names, plain quotes, and a fraction apart from its whole', async () => {
		const text = (await made('es.dxf', 'course-dress', '--body', señora())).toString('latin1');
		expect(text).toContain('$DWGCODEPAGE\r\n  3\r\nANSI_1252');
		expect(text).toContain('For Señora "Ñandú" 4 1/2');
	});

	it('inches are written as on a tape', async () => {
		const inches = Object.entries(heron).map(([key, value]) => [
			key,
			typeof value === 'number' ? value / 2.54 : value
		]);
		const file = folder.write('in.json', JSON.stringify({ ...Object.fromEntries(inches), unit: 'in' }));
		const text = plain(pageTexts(await made('in.pdf', 'course-dress', '--body', file)).join(' '));
		expect(text).toMatch(/Allowance 3\/8(″|′′)/);
		expect((await made('in.dxf', 'course-dress', '--body', file)).toString()).toContain('Allowance 3/8"');
	});
});

it('works as a process of its own, with the body from a pipe', async () => {
	const run = await runCli(['export', 'course-dress', '--body', '-', '--to', outbox.at('piped.svg')], {
		input: readFileSync(HERON, 'utf8')
	});
	expect(run).toEqual({ code: 0, out: '', err: '' });
	expect(outbox.bytes('piped.svg').equals(outbox.bytes('dress.svg'))).toBe(true);
});

describe('one line on standard error, exit code 2, no file', () => {
	const to = outbox.at('never.pdf');

	it.each<[words: readonly string[], line: string | RegExp]>([
		[[], 'export: name the garment or the method, such as course-dress'],
		[['course-dress', '--to', to], 'export: give --body FILE for one body, or --bodies FILE.csv for many'],
		[
			['course-dress', '--body', HERON],
			'export: give --to FILE, such as dress.pdf, or for many files a folder'
		],
		[['course-dress', '--body', 'a', '--bodies', 'b', '--to', to], /not both \(a, b\)$/],
		[
			['linet-dress', '--body', HERON, '--to', to],
			/^export: there is no garment or method "linet-dress" \(did you mean "course-dress"\?\); there are /
		],
		[
			['course-dress', '--body', HERON, '--to', 'dress.pfd'],
			'export: "dress.pfd" does not end in .pdf, .svg, .dxf, .csv, .json; say --as pdf|svg|dxf|csv|json'
		],
		[
			['course-dress', '--body', HERON, '--to', to, '--as', 'sgv'],
			'export: there is no kind of file "sgv" (did you mean "svg"?); there are pdf, svg, dxf, csv, json'
		],
		[['course-dress', '--body', HERON, '--to', to, '--as', 'svg'], /ends in \.pdf, but --as says svg$/],
		[
			['course-dress', '--body', HERON, '--to', to, '--paper', 'a5'],
			/^export: there is no paper "a5" .*; there are a4, letter, a3, a0, roll-60, roll-90$/
		],
		[
			['course-dress', '--body', HERON, '--to', to, '--scale', 'third'],
			/^export: there is no scale "third".*; there are full, half, quarter$/
		],
		[
			['course-dress', '--body', HERON, '--to', to, '--scale', 'toString'],
			/^export: there is no scale "toString"/
		],
		[
			['course-dress', '--body', HERON, '--to', to, '--pieces', 'front,frontband'],
			/^export: there is no piece "frontband" \(did you mean "frontBand"\?\); there are front, back, /
		],
		[
			['course-dress', '--body', HERON, '--to', to, '--pieces', ' , '],
			'export: no piece is named after --pieces, so there is nothing to draw'
		],
		...['yesterday', '1', '2026-02-30', '2026-1-31'].map((date): [readonly string[], string] => [
			['course-dress', '--body', HERON, '--to', to, '--date', date],
			`export: "${date}" is not a date such as 2026-01-31`
		]),
		[
			['course-dress', '--body', HERON, '--to', 'dress.dxf', '--scale', 'half'],
			'export: --scale is for pdf, svg, not for dxf'
		],
		[
			['course-dress', '--body', HERON, '--to', 'd.svg', '--paper', 'a3'],
			'export: --paper is for pdf, not for svg'
		],
		[
			['course-dress', '--body', HERON, '--to', 'd', '--apart', '--as', 'csv'],
			/^export: --apart is for pdf, svg, dxf/
		],
		[
			['course-dress', '--body', HERON, '--to', to, '--apart'],
			/many files go into a folder.*say --to FOLDER --as pdf$/
		],
		[
			['back-block', '--body', HERON, '--to', 'back.dxf'],
			'export: back-block is a draft, and a dxf file holds the pieces of a garment; take pdf, svg, csv, json'
		],
		[
			['back-block', '--body', HERON, '--to', to, '--pieces', 'front'],
			'export: back-block is a draft, which has no pieces to choose or to set apart'
		],
		[['course-dress', '--body', 'gone.json', '--to', to], 'gone.json: there is no such file'],
		[
			['course-dress', '--body', HERON, '--to', outbox.at('no', 'folder.pdf')],
			/folder\.pdf: there is no such folder$/
		],
		[
			['course-dress', '--body', HERON, '--to', outbox.at(), '--as', 'pdf'],
			/: this is a folder, not a file$/
		],
		[
			['course-dress', '--body', HERON, '--to', `${HERON}/x.pdf`],
			/x\.pdf: a part of this path is not a folder$/
		],
		[['course-dress', '--body', HERON, '--to', HERON, '--apart'], /json" is a file's name/],
		[['course-dress', '--body', HERON, '--to', COMMAND, '--apart'], /: this is a file, not a folder$/],
		[
			['course-dress', '--body', HERON, '--to', outbox.at(`${'x'.repeat(300)}.pdf`)],
			/: this name is too long$/
		]
	])('%j', async (words, line) => {
		const { code, out, err } = await exportHere(...words);
		expect(err).toMatch(/^[^\n]+\n$/);
		if (typeof line === 'string') expect(err.trimEnd()).toBe(line);
		else expect(err.trimEnd()).toMatch(line);
		expect({ code, out }).toEqual({ code: 2, out: '' });
		expect(outbox.list()).not.toContain('never.pdf');
	});

	it('a train of five metres is longer than a skirt may be', async () => {
		const { code, err } = await exportHere(
			...['course-dress', '--body', bodyFile({ allowances: { skirtLength: 500 } }), '--to', to]
		);
		expect(code).toBe(2);
		expect(folder.short(err)).toMatch(
			/^body\.json: allowances\.skirtLength: .* must lie from \d+ cm to \d+ cm, not 500 cm/
		);
	});

	it('a body that no pattern can be made for is told with both measurements', async () => {
		const { code, err } = await exportHere('course-dress', '--body', bodyFile({ bust: 50 }), '--to', to);
		expect(code).toBe(2);
		expect(folder.short(err)).toMatch(
			/^body\.json: bust \(50 cm\) and shoulderWidth \(38\.4 cm\) disagree: /
		);
	});
});
