import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm, radians } from '#shared/units.ts';
import { polyline } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { pieceDrawing } from '#exports/drawing/piece-drawing.ts';
import { arranged } from '#exports/drawing/arrange.ts';
import { drawingBounds, drawingScaled, type Drawing } from '#exports/drawing/drawing.ts';
import { drawingsSvg } from '#exports/svg/drawings-svg.ts';
import { draftCsv, patternCsv } from '#exports/table/tables.ts';
import { parse } from 'csv-parse/sync';
import { linesIn } from '../cli/export-here.ts';
import { lengthOf } from '../cli/pattern-here.ts';
import { bodyOf, findMethod, garmentOf, madeFor } from '../garment/garment-files.ts';
import { readSvg } from './read-svg.ts';

const pattern = madeFor(garmentOf('course-dress'), bodyOf('heron'));
const DRAWINGS = pattern.pieces.map((piece) => pieceDrawing(piece, [piece.name], english));

describe('an SVG file of pieces', () => {
	const svg = drawingsSvg(arranged(DRAWINGS, mm(1400)), 'The course dress');

	it('is as wide and high in millimetres as its box has units', () => {
		const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
		const [, boxWidth, boxHeight] = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
		expect([width, height]).toEqual([boxWidth, boxHeight]);
	});

	it('has a named group for each piece, and in it one for each kind of line', () => {
		for (const [i, name] of ['front-bodice', 'back-bodice'].entries()) {
			for (const kind of ['cutting', 'stitching', 'grain', 'notch'])
				expect(svg).toContain(`<g id="piece-${i + 1}-${name}-${kind}"`);
		}
		const ids = [...svg.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
		expect(new Set(ids).size).toBe(ids.length);
	});

	it('names with signs of XML, emoji and control signs do no harm', () => {
		const odd: Drawing = {
			name: `<b>"'&🪡\u0000${'x'.repeat(300)}`,
			strokes: [{ kind: 'line', path: polyline(at(0, 0), at(9, 7)) }],
			words: []
		};
		const text = drawingsSvg([odd], odd.name);
		expect(text).not.toContain('<b>');
		expect(text).not.toContain('\u0000');
		expect(text).toContain('🪡');
	});
});

describe.each(DEMO_BODIES)('the SVG of the dress for $body.name', ({ body }) => {
	const { pieces } = madeFor(garmentOf('course-dress'), body);
	const svg = drawingsSvg(
		arranged(
			pieces.map((piece) => pieceDrawing(piece, [piece.name], english)),
			mm(1400)
		),
		body.name
	);

	it('is well formed, and holds every line at the length that the piece says', () => {
		expect(readSvg(svg.trimEnd()).tag).toBe('svg');
		for (const [i, piece] of pieces.entries()) {
			const id = `piece-${i + 1}-${piece.name.toLowerCase().replaceAll(' ', '-')}`;
			const drawn = linesIn(svg, `${id}-stitching`).map((data) => lengthOf(data));
			const edges = piece.edges.filter(({ kind }) => kind !== 'fold').map(({ length }) => length);
			expect(drawn).toHaveLength(edges.length);
			edges.forEach((length, at) => {
				expect(drawn[at], `${id} ${at}`).toBeCloseTo(length, 2);
			});
		}
	});

	it('its size in millimetres holds everything, and little more', () => {
		const [, width = '', height = ''] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
		const numbers = pieces.map((piece) => drawingBounds(pieceDrawing(piece, [piece.name], english)));
		const area = numbers.reduce(
			(sum, { left, top, right, bottom }) => sum + (right - left) * (bottom - top),
			0
		);
		expect(Number(width)).toBeLessThanOrEqual(1410);
		expect(Number(width) * Number(height)).toBeGreaterThan(area);
		expect(Number(width) * Number(height)).toBeLessThan(2.2 * area);
	});
});

describe('pieces laid out on paper', () => {
	// The widest piece, half of the casing, is 607 mm wide.
	it.each([610, 900, 1400])('on %d mm none lies over another, and all are on the paper', (width) => {
		const boxes = arranged(DRAWINGS, mm(width)).map(drawingBounds);
		for (const [i, a] of boxes.entries()) {
			expect(a.left).toBeGreaterThanOrEqual(-1e-6);
			expect(a.right).toBeLessThanOrEqual(width + 1e-6);
			for (const b of boxes.slice(i + 1)) {
				const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
				expect(apart).toBe(true);
			}
		}
	});

	it('takes less paper than the pieces under one another', () => {
		const boxes = arranged(DRAWINGS, mm(900)).map(drawingBounds);
		const stacked = DRAWINGS.map(drawingBounds).reduce((sum, { top, bottom }) => sum + bottom - top, 0);
		expect(Math.max(...boxes.map(({ bottom }) => bottom))).toBeLessThan(0.6 * stacked);
	});

	it('at half scale lines are half as long, and words can still be read', () => {
		const whole: Drawing = {
			name: 'x',
			strokes: [{ kind: 'line', path: polyline(at(10, 20), at(70, 100)) }],
			words: [{ text: 'x', at: at(4, 6), middle: false, size: mm(3), turn: radians(0) }]
		};
		const half = drawingScaled(whole, 0.5);
		expect(half.strokes[0]?.path).toEqual(polyline(at(5, 10), at(35, 50)));
		expect(half.words[0]).toMatchObject({ at: at(2, 3), size: 2 });
	});
});

describe('tables', () => {
	it('a pattern’s edges, seams and numbers, read back by a CSV reader', () => {
		const rows: Record<string, string>[] = parse(patternCsv(pattern, english), { columns: true });
		const side = rows.find(
			({ what, piece, name }) => what === 'edge' && piece === 'Front bodice' && name === 'side'
		);
		const front = pattern.pieces[0]?.edges.find(({ name }) => name === 'side');
		expect(Number(side?.['length_mm'])).toBeCloseTo(front?.length ?? 0, 3);
		expect(rows.filter(({ what }) => what === 'seam')).toHaveLength(pattern.seams.length);
		expect(rows.find(({ name }) => name === 'The finished round of the elastic')?.['length_mm']).toBe('680');
	});

	it('a draft’s points: negative lengths stay numbers', () => {
		const method = findMethod('dress-front');
		const draft = pattern.drafts['front'];
		if (!method || !draft) throw new Error('no draft');
		const rows: Record<string, string>[] = parse(draftCsv(method, draft, english), { columns: true });
		expect(rows.find(({ name }) => name === 'W2')?.['across_mm']).toBe('-18');
	});
});
