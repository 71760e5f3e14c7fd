import { expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { drawingsSvg } from '#exports/svg/drawings-svg.ts';
import { pieceDrawing } from '#exports/drawing/piece-drawing.ts';
import { failingOn } from '#ui/garments/failing-on.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';

const garment = garmentOf('body-block');

it('a check of wear that fails is drawn on its piece, with what fails and by how much, in both languages', () => {
	const { pieces, wear } = madeFor(garment, bodyOf('heron'), {
		allowances: { bustEase: mm(-40) },
		edges: {}
	});
	const fails = wear.find(({ name }) => name === 'bustRoom');
	if (fails?.value === undefined || !fails.place) throw new Error('the room at the bust is not told');
	expect(fails.state).toBe('fails');
	for (const speech of [english, speechFor('es')]) {
		const drawings = pieces.map((piece) => pieceDrawing(piece, [piece.name], speech, [], undefined, wear));
		const marked = drawings.filter(({ strokes }) => strokes.some(({ kind }) => kind === 'wear'));
		expect(marked.map(({ name }) => name)).toContain('Front block');
		const { label, kind, value } = fails;
		const said = speech.words.wear.mark({ kind, label, value });
		expect(drawings.flatMap(({ words }) => words.map(({ text }) => text))).toContain(said);
		expect(drawingsSvg(drawings, 'block')).toContain('-wear" fill="none"');
	}
	expect(failingOn(garment, wear, 'front-block').map(({ name }) => name)).toContain('bustRoom');
	expect(failingOn(garment, wear, 'dress-front')).toEqual([]);
});

it('nothing is drawn of checks that hold', () => {
	const { pieces, wear } = madeFor(garment, bodyOf('heron'));
	const kinds = pieces.flatMap(
		(piece) => pieceDrawing(piece, [piece.name], english, [], undefined, wear).strokes
	);
	expect(kinds.some(({ kind }) => kind === 'wear')).toBe(false);
});
