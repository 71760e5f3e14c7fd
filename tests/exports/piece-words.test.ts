import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { pathEnd, pathStart } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { pieceDrawing } from '#exports/drawing/piece-drawing.ts';
import { meetingsOf } from '#garment/meetings.ts';
import { dartMiddle, dartTips, mouthNotches } from '#garment/piece-signs.ts';
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

it('the dress’s skirt is one piece: its side is sewn to that of the other one, its top to front and back', () => {
	const garment = garmentOf('course-dress');
	const { pieces } = madeFor(garment, bodyOf('heron'));
	const skirt = pieces.find(({ key }) => key === 'skirt');
	if (!skirt) throw new Error('no skirt');
	const meetings = meetingsOf(skirt, garment.seams, pieces);
	const meets = [english, speechFor('es')].map((speech) => [
		...new Set(meetings.map((each) => `${each.edge} ${speech.words.garments.meets(each)}`))
	]);
	expect(meets).toEqual([
		[
			'top to 1 Front bodice, single notch',
			'top to 2 Back bodice, double notch',
			'side to the same edge of the other one, single notch'
		],
		[
			'top con 1 Front bodice, piquete sencillo',
			'top con 2 Back bodice, piquete doble',
			'side con el mismo borde de la otra, piquete sencillo'
		]
	]);
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

it('a dart that is pointed at both ends has two tips, a middle line from one to the other, and no notch at an edge', () => {
	const { pieces, drafts } = madeFor(garmentOf('body-block'), bodyOf('heron'));
	for (const piece of pieces) {
		const dart = piece.darts.find(({ name }) => name === 'Waist dart');
		const points = drafts[piece.key]?.points ?? {};
		if (!dart) throw new Error(`${piece.key} has no waist dart`);
		expect(dartTips(dart)).toEqual([points['G3'], points['G4']]);
		const middle = dartMiddle(piece, dart);
		expect([pathStart(middle), pathEnd(middle)]).toEqual([points['G3'], points['G4']]);
		expect(mouthNotches(piece, dart)).toEqual([]);
	}
});

it('the middle line of a bust dart runs from its tip to the peak of its mouth', () => {
	const { pieces, drafts } = madeFor(garmentOf('body-block'), bodyOf('heron'));
	const [front] = pieces;
	const dart = front?.darts.find(({ name }) => name === 'Bust dart');
	const points = drafts['front']?.points ?? {};
	if (!front || !dart) throw new Error('no bust dart');
	const middle = dartMiddle(front, dart);
	expect([pathStart(middle), pathEnd(middle)]).toEqual([points['Y'], points['Z']]);
});

it('the bust level lies through the bust point on the front, and as far above the waist on the back', () => {
	const { pieces, drafts } = madeFor(garmentOf('body-block'), bodyOf('heron'));
	const at = (key: string, point: string): number => drafts[key]?.points[point]?.y ?? NaN;
	const level = (i: number): number => {
		const mark = pieces[i]?.marks.find(({ label }) => label === 'Bust level');
		return mark ? pathStart(mark.path).y : NaN;
	};
	expect(level(0)).toBeCloseTo(at('front', 'T'), 9);
	expect(at('back', 'W') - level(1)).toBeCloseTo(at('front', 'W') - at('front', 'T'), 9);
});

describe.each(DEMO_BODIES)('the buttons of the course dress for $id', ({ body }) => {
	const { pieces, drafts } = madeFor(garmentOf('course-dress'), body);
	const buttons = pieces[0]?.buttons;
	const points = drafts['front']?.points ?? {};
	const [top, waist, bust] = ['C2', 'W1', 'T'].map((name) => points[name] ?? { x: NaN, y: NaN });

	it('sit on the centre front from 1.5 cm below the band to 4 cm above the waist, one at the bust, nowhere further apart than 11 cm', () => {
		const down = buttons?.at.map(({ y }) => y) ?? [];
		expect(new Set(buttons?.at.map(({ x }) => x))).toEqual(new Set([0]));
		expect(down[0]).toBeCloseTo((top?.y ?? NaN) + 15, 9);
		expect(down.at(-1)).toBeCloseTo((waist?.y ?? NaN) - 40, 9);
		expect(down.some((y) => Math.abs(y - (bust?.y ?? NaN)) < 1e-9)).toBe(true);
		const gaps = down.slice(1).map((y, i) => y - (down[i] ?? NaN));
		for (const gap of gaps) expect(gap).toBeLessThan(110);
	});

	it('each has its buttonhole across, begun 0.3 cm beyond the centre and as long as the stand is wide', () => {
		for (const [i, hole] of (buttons?.holes ?? []).entries()) {
			expect(pathStart(hole)).toEqual({ x: -3, y: buttons?.at[i]?.y });
			expect(pathEnd(hole).x).toBeCloseTo(15, 9);
		}
	});
});
