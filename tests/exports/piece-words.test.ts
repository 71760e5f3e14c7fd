import { describe, expect, it } from 'vitest';
import { pathEnd, pathStart } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { pieceDrawing } from '#exports/drawing/piece-drawing.ts';
import { meetingsOf } from '#garment/meetings.ts';
import { mouthNotches } from '#garment/piece-signs.ts';
import { pieceWords } from '#garment/words.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';

const said = (text: string): string => text.replace(/\s+/g, ' ');

describe.each(['course-dress', 'straight-skirt', 'body-block'])('what stands on the pieces of %s', (id) => {
	const garment = garmentOf(id);
	const { pieces } = madeFor(garment, bodyOf('heron'));

	it.each(pieces)('$name: how many to cut, how it is laid, and what each seam meets', (piece) => {
		const meetings = meetingsOf(piece, garment.seams, pieces);
		for (const speech of [english, speechFor('es')]) {
			const { words } = pieceDrawing(piece, pieceWords(piece, 'Heron', speech), speech, meetings);
			const text = said(words.map((each) => each.text).join(' '));
			expect(text).toContain(speech.words.garments.selvedge);
			for (const line of pieceWords(piece, 'Heron', speech)) expect(text).toContain(said(line));
			for (const meeting of meetings) expect(text).toContain(speech.words.garments.meets(meeting));
			for (const { label } of piece.drills) expect(text).toContain(label);
			if (piece.fold) expect(text).toContain(speech.words.paper.fold);
			for (const { gathered } of piece.edges)
				if (gathered) expect(text).toContain(speech.words.garments.gathered);
		}
	});
});

it('the front of the skirt is sewn to the back, whose notches are double, and to the waistband', () => {
	const garment = garmentOf('straight-skirt');
	const { pieces } = madeFor(garment, bodyOf('heron'));
	const [front] = pieces;
	if (!front) throw new Error('no front');
	const meets = meetingsOf(front, garment.seams, pieces).map((each) => [
		each.edge,
		english.words.garments.meets(each)
	]);
	expect(meets).toContainEqual(['side', 'to 2 Back skirt, double notch']);
	expect(meets).toContainEqual(['waistIn', 'to 3 Waistband, single notch']);
	expect(meets.some(([edge]) => edge === 'hem')).toBe(false);
});

it('what is only compared is not sewn: the waists of the dress’s bodice do not meet', () => {
	const garment = garmentOf('course-dress');
	const { pieces } = madeFor(garment, bodyOf('heron'));
	const front = pieces.find(({ key }) => key === 'front');
	if (!front) throw new Error('no front');
	const waist = meetingsOf(front, garment.seams, pieces).filter(({ edge }) => edge === 'waist');
	expect(waist.flatMap((each) => each.pieces).some(({ name }) => name === 'Back bodice')).toBe(false);
});

it('a dart has a notch at each end of its mouth, from the stitching line to where it is cut', () => {
	const { pieces } = madeFor(garmentOf('straight-skirt'), bodyOf('heron'));
	for (const piece of pieces)
		for (const dart of piece.darts) {
			const notches = mouthNotches(piece, dart);
			expect(notches).toHaveLength(2);
			for (const notch of notches) {
				const [from, to] = [pathStart(notch), pathEnd(notch)];
				expect(distance(nearestOnPath(piece.outline, from), from)).toBeLessThan(0.01);
				expect(distance(nearestOnPath(piece.cutting.outline, to), to)).toBeLessThan(0.01);
			}
		}
});
