import DxfParser from 'dxf-parser';
import { afterAll, describe, expect, it } from 'vitest';
import { writtenText } from '../exports/sheet-options.ts';
import { exportHere, HERON, newOutbox } from './export-here.ts';

const outbox = newOutbox();
afterAll(() => {
	outbox.remove();
});

const toile = async (to: string, id: string, ...words: readonly string[]): Promise<Buffer> => {
	const run = await exportHere(id, '--body', HERON, '--to', outbox.at(to), '--toile', ...words);
	expect(run).toEqual({ code: 0, out: '', err: '' });
	return outbox.bytes(to);
};

/** What a PDF says, as pdftotext reads it. */
const said = (pdf: Buffer): string => writtenText(pdf);

interface Reach {
	readonly left: number;
	readonly right: number;
	readonly low: number;
}
/** How far a piece's outline on a layer reaches, in millimetres, as an independent parser reads it. */
const reachOf = (dxf: Buffer, block: string, layer: '1' | '14'): Reach => {
	const entities = new DxfParser().parseSync(dxf.toString())?.blocks[block]?.entities ?? [];
	const outline = entities.find((each) => each.layer === layer && each.type === 'POLYLINE');
	const { vertices } = outline as unknown as { readonly vertices: readonly { x: number; y: number }[] };
	const [x, y] = [vertices.map((each) => each.x), vertices.map((each) => each.y)];
	return { left: Math.min(...x), right: Math.max(...x), low: Math.min(...y) };
};

describe('square-across export --toile', () => {
	it('is cut 2.5 cm outside the stitching line at the side, the hem and the open centre back, and not at the fold', async () => {
		const dxf = await toile('toile.dxf', 'body-block');
		for (const [block, atCentre] of [
			['FRONT_BLOCK', 0],
			['BACK_BLOCK', 25]
		] as const) {
			const [cut, sewn] = [reachOf(dxf, block, '1'), reachOf(dxf, block, '14')];
			// The side is steepest at the hip, where it is furthest out: there the allowance lies straight beside it.
			expect(cut.right - sewn.right, block).toBeCloseTo(25, 1);
			expect(sewn.low - cut.low, block).toBeCloseTo(25, 1);
			expect(sewn.left - cut.left, block).toBeCloseTo(atCentre, 1);
		}
	});

	it('says on paper what it is, how it is cut, where the levels lie, and to take care', async () => {
		// On one sheet, so that no word of it lies across the joint of two pages.
		const words = said(await toile('toile.pdf', 'body-block', '--paper', 'a0'));
		expect(words).toContain('The body block as a toile');
		expect(words).toContain('Allowance 2.5 cm; none on the fold');
		expect(words).toContain('Cut 1 in fabric on the fold');
		expect(words).toContain('Cut 2 in fabric');
		for (const level of ['Armhole level', 'Waist level', 'Hip level']) expect(words).toContain(level);
		expect(words).toContain('A hot iron burns skin and cloth.');
		expect(words).toContain('Scissors, blades, pins and needles cut and prick.');
	});

	it('says so in Spanish', async () => {
		const words = said(await toile('prueba.pdf', 'body-block', '--paper', 'a0', '--language', 'es'));
		expect(words).toContain('Patrón base del cuerpo, prenda de prueba');
		expect(words).toContain('Margen 2,5 cm; sin margen en el doblez');
		expect(words).toContain('Nivel de cadera');
	});

	it('leaves the usual allowances where it is not asked for', async () => {
		await exportHere('body-block', '--body', HERON, '--to', outbox.at('block.pdf'));
		expect(said(outbox.bytes('block.pdf'))).not.toMatch(/toile|Allowance 2\.5 cm/);
	});

	it.each(['circle-skirt', 'back-block'])('%s is refused, and what can be cut so is named', async (id) => {
		const run = await exportHere(id, '--body', HERON, '--to', outbox.at('no.pdf'), '--toile');
		expect(run.code).toBe(2);
		expect(run.err).toBe(`export: ${id} is not cut as a toile; take body-block or sleeved-bodice\n`);
	});
});
