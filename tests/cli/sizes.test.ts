import { afterAll, describe, expect, it } from 'vitest';
import { askOf, wordsOf } from '../exports/raster.ts';
import { exportHere, HERON, newOutbox } from './export-here.ts';
import { draftHere, mainHere } from './run-here.ts';

const out = newOutbox();
afterAll(() => out.remove());

interface Sure {
	readonly coverage: number;
	readonly readingErrors: Readonly<Record<string, number>>;
	readonly points: Readonly<
		Record<string, { readonly within: number; readonly by: Readonly<Record<string, number>> }>
	>;
}

describe('square-across draft --how-sure', () => {
	it('prints how far each point can move and by what: A by half a shoulder width read to 5 mm', async () => {
		const { code, out: text } = await draftHere('back-block', '--body', HERON, '--how-sure');
		expect(code).toBe(0);
		expect(text).toMatch(/^The back block for Heron: how far each point can move/);
		expect(text).toMatch(/^A +4\.9 +shoulderWidth 100 %$/m);
		expect(text).toMatch(/^O +0$/m);
	});

	it('takes an error of one’s own, and prints JSON', async () => {
		const { out: text } = await draftHere(
			...['back-block', '--body', HERON, '--how-sure', '--json'],
			...['--reading-error', 'shoulderWidth=10', '--reading-error', 'largeGirth=12']
		);
		const sure = JSON.parse(text) as Sure;
		expect(sure.coverage).toBe(0.95);
		expect(sure.readingErrors).toMatchObject({ shoulderWidth: 10, bust: 12, waist: 12, neck: 4 });
		expect(sure.points['A']?.within).toBeCloseTo(1.959964 * 5, 3);
	});

	it.each([
		[
			['--reading-error', 'bust'],
			'--reading-error: a reading error is KEY=MM, such as bust=6 or length=4, not "bust"'
		],
		[
			['--reading-error', 'bsut=4'],
			'--reading-error: no measurement is called "bsut"; kinds are largeGirth, smallGirth and length'
		],
		[['--reading-error', 'bust=400'], '--reading-error bust: a reading strays from 0.05 cm to 5 cm'],
		[['--bodies', 'x.csv'], 'draft: there is no option --bodies (did you mean "--body"?)']
	])('says what is wrong with %j', async (words, says) => {
		const { code, err } = await draftHere('back-block', '--body', HERON, '--how-sure', ...words);
		expect({ code, err: err.trim() }).toEqual({ code: 2, err: says });
	});
});

describe('standard sizes at the command line', () => {
	it('drafts for one, in the words of the language', async () => {
		const { out: text } = await draftHere('back-block', '--size', '42', '--json');
		expect(JSON.parse(text)).toMatchObject({ body: 'Size 42', points: { U: [260, expect.any(Number)] } });
		const spanish = await draftHere('back-block', '--size', 'men:50', '--json', '--language', 'es');
		expect(JSON.parse(spanish.out)).toMatchObject({ body: 'Talla 50, Hombre' });
	});

	it('tells what there is where one is not, and that one body is enough', async () => {
		const { err } = await draftHere('back-block', '--size', '43');
		expect(err).toMatch(/^--size: the table "women" has no size "43"/);
		expect((await draftHere('back-block', '--size', '42', '--body', HERON)).err).toMatch(
			/give one of --body, --bodies and --size/
		);
	});

	it('finds the nearest of each table', async () => {
		const { out: text } = await mainHere(['sizes', '--body', HERON, '--json']);
		expect(JSON.parse(text)).toMatchObject({
			body: 'Heron',
			nearest: [
				{ table: 'women', size: '42', apart: { bust: { own: 960, size: 960, errors: 0, estimated: false } } },
				{ table: 'men' }
			]
		});
		expect((await mainHere(['sizes', '--body', HERON])).out).toMatch(
			/^Women: Size 42\. .*\nGirths: .*from memory/
		);
	});
});

describe('square-across export --sizes', () => {
	it('writes several sizes on one sheet, with an own body among them', async () => {
		const to = out.at('sizes.pdf');
		const { code, err } = await exportHere(
			...['straight-skirt', '--sizes', '38, 44', '--body', HERON, '--to', to, '--paper', 'a0']
		);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(askOf('qpdf', out.bytes('sizes.pdf'), '--check')).toContain('No syntax or stream encoding errors');
		expect(wordsOf(out.bytes('sizes.pdf')).replace(/\s+/g, ' ')).toContain('Sizes 38, Heron and 44');
	});

	it('gives the same bytes again', async () => {
		for (const name of ['a.dxf', 'b.dxf'])
			await exportHere('course-dress', '--sizes', '38,40', '--to', out.at(name));
		expect(out.bytes('a.dxf').equals(out.bytes('b.dxf'))).toBe(true);
	});

	it.each([
		[['course-dress', '--sizes', '38'], /a sheet holds from two to 7 sizes/],
		[['course-dress', '--sizes', '38,39'], /the table "women" has no size "39"/],
		[['course-dress', '--sizes', '38,40', '--size', '42'], /--size does not go with --sizes/],
		[['course-dress', '--sizes', '38,40', '--apart'], /--apart does not go with --sizes/],
		[['back-block', '--sizes', '38,40'], /back-block is a draft, which has no pieces/]
	])('says what is wrong with %j', async (words, says) => {
		const { code, err } = await exportHere(...words, '--to', out.at('wrong.svg'));
		expect(code).toBe(2);
		expect(err).toMatch(says);
	});
});
