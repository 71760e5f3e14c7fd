import { english, speechFor } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { clothWords } from '#garment/words.ts';
import { LAYING_GAP, layOnFold, type Laid, type Laying } from '#garment/laying.ts';
import type { Piece, PieceEdge } from '#garment/piece.ts';
import { pathMovedBy } from '#geometry/motion.ts';
import { boundsOf } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { mm } from '#shared/units.ts';
import { bodyOf, garments, madeFor } from './garment-files.ts';
import { pieceFrom, polygon, type PieceSay } from './hand-made.ts';

/** A rectangle that is cut so wide and so high, its grain straight down; with `fold` its left side lies on the fold. */
const box = (
	key: string,
	width: number,
	height: number,
	count: number,
	say: PieceSay & { fold?: boolean } = {}
): Piece => {
	const { fold = false, ...more } = say;
	const edges: readonly PieceEdge[] = polygon(
		[0, 0, 'top'],
		[width, 0, 'right'],
		[width, height, 'bottom'],
		[0, height, 'left', fold ? 'fold' : 'seam']
	).map((edge) => ({ ...edge, allowance: mm(0) }));
	return pieceFrom(key, edges, { cut: [{ in: 'fabric', count }], ...more });
};

const lay = (width: number, ...pieces: readonly Piece[]): Laying => layOnFold(pieces, mm(width));
const placeOf = ({ piece, copy, left, top }: Laid): string =>
	`${piece} ${copy}: ${Number(left.toFixed(6))} ${Number(top.toFixed(6))}`;
const places = ({ placed }: Laying): readonly string[] => placed.map(placeOf).sort();

/** What is wrong with a laying: pieces that overlap or leave the cloth, or whose drawing is not where its rectangle is. */
const wrongIn = (laying: Laying, pieces: readonly Piece[]): readonly string[] => {
	const { placed, folded, length, width } = laying;
	const wrong: string[] = [];
	for (const [i, a] of placed.entries()) {
		const breadth = a.single ? width : width / 2;
		if (a.left < 0 || a.left + a.width > breadth) wrong.push(`${placeOf(a)} leaves the cloth`);
		const [from, to] = a.single ? [folded, length] : [0, folded];
		if (a.top < from || a.top + a.height > to + 1e-9)
			wrong.push(`${placeOf(a)} leaves its part of the cloth`);
		if (a.onFold && a.left !== 0) wrong.push(`${placeOf(a)} is not on the fold`);
		if (!a.onFold && !a.single && a.left < LAYING_GAP) wrong.push(`${placeOf(a)} touches the fold`);
		const piece = pieces.find(({ key }) => key === a.piece);
		const drawn = piece && boundsOf([pathMovedBy(a.motion, piece.cutting.outline)]);
		const off = drawn
			? Math.max(Math.abs(drawn.left - a.left), Math.abs(drawn.bottom - a.top - a.height))
			: NaN;
		if (!(off < 1e-6)) wrong.push(`${placeOf(a)} is drawn elsewhere`);
		for (const b of placed.slice(i + 1)) {
			const across = Math.max(a.left, b.left) - Math.min(a.left + a.width, b.left + b.width);
			const down = Math.max(a.top, b.top) - Math.min(a.top + a.height, b.top + b.height);
			if (Math.max(across, down) < LAYING_GAP - 1e-9)
				wrong.push(`${placeOf(a)} and ${placeOf(b)} are too near`);
		}
	}
	return wrong;
};

describe('rectangles on folded cloth', () => {
	it('a pair is laid once on the two layers, clear of the fold', () => {
		const laying = lay(1000, box('front', 300, 400, 2));
		expect(places(laying)).toEqual(['front 1: 10 0']);
		expect([laying.length, laying.folded, laying.width]).toEqual([400, 400, 1000]);
	});

	it('two pairs are laid twice, side by side where there is room', () => {
		// 10 + 200 + 10 + 200 is 420, and half the cloth 500.
		expect(places(lay(1000, box('band', 200, 50, 4)))).toEqual(['band 1: 10 0', 'band 2: 220 0']);
		// 10 + 240 + 10 + 240 is just 500; a millimetre more each goes below.
		expect(lay(1000, box('band', 240, 50, 4)).length).toBe(50);
		expect(lay(1000, box('band', 241, 50, 4)).length).toBe(110);
	});

	it('a piece on the fold lies against it, and as often as it is cut', () => {
		const laying = lay(
			1000,
			box('back', 300, 400, 1, { fold: true }),
			box('band', 60, 90, 2, { fold: true })
		);
		expect(places(laying)).toEqual(['back 1: 0 0', 'band 1: 0 410', 'band 2: 0 510']);
		expect(laying.length).toBe(600);
	});

	it('what is drafted to the left of its fold is turned over', () => {
		const left = pieceFrom(
			'back',
			polygon([0, 0, 'top'], [300, 0, 'centre', 'fold'], [300, 400, 'bottom'], [0, 400, 'side']).map(
				(edge) => ({
					...edge,
					allowance: mm(0)
				})
			)
		);
		const [laid] = lay(1000, left).placed;
		expect(laid).toMatchObject({ left: 0, top: 0, width: 300, height: 400, onFold: true });
		expect(wrongIn(lay(1000, left), [left])).toEqual([]);
	});

	it('an odd one takes the room of a pair', () => {
		expect(places(lay(1000, box('band', 80, 900, 1)))).toEqual(['band 1: 10 0']);
		expect(lay(1000, box('band', 480, 100, 3)).length).toBe(210);
	});

	it('small pieces find room beside large ones', () => {
		// 300 on the fold leaves 500 - 300 - 10 = 190 beside it.
		const skirt = box('skirt', 300, 700, 1, { fold: true });
		const laying = lay(1000, skirt, box('bodice', 190, 400, 2), box('cuff', 100, 200, 2));
		expect(places(laying)).toEqual(['bodice 1: 310 0', 'cuff 1: 310 410', 'skirt 1: 0 0']);
		expect(laying.length).toBe(700);
	});

	it('allowances count: 10 mm on every side but the fold', () => {
		const piece = pieceFrom(
			'back',
			polygon([0, 0, 'a'], [300, 0, 'b'], [300, 400, 'c'], [0, 400, 'd', 'fold'])
		);
		expect(lay(1000, piece).placed[0]).toMatchObject({ width: 310, height: 420 });
	});

	it('only what is cut in the cloth is laid, in fabric where none is named', () => {
		const cut = [{ in: 'interfacing' as const, count: 2 }];
		const stiff = layOnFold(
			[box('front', 300, 400, 2, { cut }), box('back', 300, 500, 2)],
			mm(900),
			'interfacing'
		);
		expect(places(stiff)).toEqual(['front 1: 10 0']);
		expect(lay(1000, box('front', 300, 400, 2, { cut }))).toMatchObject({ length: 0, placed: [] });
	});

	it('the allowance of a cloth is none of its own: the same pieces give the same laying', () => {
		const pieces = [box('a', 210, 330, 2), box('b', 330, 210, 4), box('c', 100, 500, 2)];
		expect(lay(1000, ...pieces)).toEqual(lay(1000, ...pieces));
	});
});

describe('the grain', () => {
	it('runs along the cloth: a piece drafted with its grain across is turned', () => {
		const lying = box('band', 400, 100, 2, { grain: [at(0, 0), at(50, 0)] });
		const { placed } = lay(1000, lying);
		expect(placed[0]?.width).toBeCloseTo(100, 9);
		expect(placed[0]?.height).toBeCloseTo(400, 9);
	});

	it('slanting by 3 across to 4 down turns the piece by the angle between', () => {
		// A square of 100 turned by an angle of cosine 4/5 and sine 3/5 is 140 wide and high.
		const { placed } = lay(1000, box('pocket', 100, 100, 2, { grain: [at(0, 0), at(30, 40)] }));
		expect(placed[0]?.width).toBeCloseTo(140, 9);
		expect(placed[0]?.height).toBeCloseTo(140, 9);
	});

	it('of a bias piece is at 45 degrees: a strip of 400 by 40 takes a square of 440 over root 2', () => {
		const { placed } = lay(1000, box('binding', 40, 400, 2, { bias: true }));
		expect(placed[0]?.width).toBeCloseTo(440 / Math.SQRT2, 9);
		expect(placed[0]?.height).toBeCloseTo(440 / Math.SQRT2, 9);
	});
});

describe('what is too wide for half the cloth', () => {
	it('is cut from the single layer after the folded part, each one for itself', () => {
		const laying = lay(1000, box('back', 300, 400, 1, { fold: true }), box('wide', 600, 200, 2));
		expect(places(laying)).toEqual(['back 1: 0 0', 'wide 1: 0 410', 'wide 2: 0 620']);
		expect(laying).toMatchObject({ folded: 400, length: 820, tooWide: [] });
		expect(laying.placed.map(({ single }) => single)).toEqual([false, true, true]);
	});

	it('is told by name where it does not fit at all', () => {
		const laying = lay(
			1000,
			box('skirt', 501, 700, 1, { fold: true }),
			box('cape', 1001, 300, 1),
			box('front', 300, 400, 2)
		);
		expect(laying.tooWide).toEqual(['skirt', 'cape']);
		expect(places(laying)).toEqual(['front 1: 10 0']);
	});

	it('may have a seam in place of its fold, where its garment says so: two halves, each with an allowance there', () => {
		const strip = (width: number): Piece => ({
			...pieceFrom(
				'casing',
				polygon([0, 0, 'upper'], [width, 0, 'end'], [width, 40, 'lower'], [0, 40, 'centre', 'fold'])
			),
			seamAtFold: true
		});
		// 590 along the fold and 10 at the end: more than half of the cloth; with 10 more in place of the fold each half takes 610.
		const laying = lay(1000, strip(590));
		expect(laying).toMatchObject({ tooWide: [], folded: 0 });
		expect(laying.placed.map(({ joined, width, onFold }) => [joined, width, onFold])).toEqual([
			[true, 610, false],
			[true, 610, false]
		]);
		expect(wrongIn(laying, [strip(590)])).toEqual([]);
		expect(lay(1200, strip(590)).placed.map(({ joined, onFold }) => [joined, onFold])).toEqual([
			[false, true]
		]);
	});

	it('fits to the last millimetre', () => {
		expect(lay(1000, box('skirt', 500, 700, 1, { fold: true })).tooWide).toEqual([]);
		expect(lay(1000, box('cape', 1000, 300, 1)).tooWide).toEqual([]);
	});
});

/** A widening row of widths, and what each of them needs; where no more pieces fit than before, never more. */
const growing = (pieces: readonly Piece[], from: number, step: number): void => {
	let before = layOnFold(pieces, mm(from));
	for (let width = from + step; width <= 2000; width += step) {
		const laying = layOnFold(pieces, mm(width));
		expect(wrongIn(laying, pieces), `${width} mm`).toEqual([]);
		expect(laying.tooWide.length).toBeLessThanOrEqual(before.tooWide.length);
		if (laying.tooWide.length === before.tooWide.length) {
			expect(laying.length, `${width} mm`).toBeLessThanOrEqual(before.length);
		}
		before = laying;
	}
};

describe('a wider cloth', () => {
	it('never needs more for the same pieces', () => {
		growing(
			[
				box('a', 310, 640, 1, { fold: true }),
				box('b', 290, 410, 1, { fold: true }),
				box('c', 270, 430, 2),
				box('d', 120, 150, 4),
				box('e', 95, 420, 2),
				box('f', 520, 200, 2)
			],
			700,
			37
		);
	});

	it('never needs more where the first place that is found is not the best', () => {
		// Laid one after the other these four need 820 mm of a cloth of 920, and, each nearer to the cut end, 870 of one of 940.
		const four = [box('a', 250, 150, 2), box('b', 100, 450, 2), box('c', 400, 250, 2), box('d', 200, 400, 2)];
		expect(lay(920, ...four).length).toBe(820);
		expect(lay(940, ...four).length).toBe(820);
		growing(four, 900, 20);
	});

	it.each(garments())('nor for $name', (garment) => {
		growing(madeFor(garment, bodyOf('heron')).pieces, 800, 173);
	});
});

describe('cloth is asked for', () => {
	it.each([
		[2400, '2.4 m', '2 5/8 yards'],
		[2401, '2.5 m', '2 3/4 yards'],
		[914.4, '1.0 m', '1 yard'],
		[915, '1.0 m', '1 1/8 yards'],
		[100, '0.1 m', '1/8 yard']
	])('%d mm: %s, %s', (length, metres, yards) => {
		expect(clothWords(mm(length), english)).toBe(metres);
		expect(clothWords(mm(length), speechFor('en', 'in'))).toBe(yards);
	});
});
