import { english, speechFor } from '../support/speech.ts';
import { edgeWords } from '#garment/read-garment.ts';
import { describe, expect, it } from 'vitest';
import type { EdgeKind } from '#shared/garment.ts';
import { mm } from '#shared/units.ts';
import { polyline } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import type { Piece, PieceEdge } from '#garment/piece.ts';
import { allowanceWords, pieceWords } from '#garment/words.ts';

const [A, B, C, D] = [at(0, 0), at(100, 0), at(100, 60), at(0, 60)] as const;

const edge = (
	name: string,
	kind: EdgeKind,
	allowance: number,
	[from, to] = [A, B] as readonly [typeof A, typeof A]
): PieceEdge => ({
	name,
	...edgeWords({ name }, 'en'),
	kind,
	allowance: mm(allowance),
	path: polyline(from, to),
	length: mm(1)
});

/** A rectangle, 100 by 60 mm, without a fold. */
const EDGES = [
	edge('top', 'seam', 10, [A, B]),
	edge('standEdge', 'seam', 10, [B, C]),
	edge('hem', 'hem', 30, [C, D]),
	edge('left', 'seam', 10, [D, A])
];
const RECTANGLE: Piece = {
	...{ key: 'flap', number: 4, name: 'Pocket flap', edges: EDGES, bias: false, fold: undefined },
	outline: polyline(A, B, C, D, A),
	cutting: { outline: polyline(A, B, C, D, A), edges: [] },
	grain: [A, D],
	cut: [{ in: 'fabric', count: 2 }],
	...{ notches: [], marks: [], drills: [], darts: [], text: ['Press it flat'] }
};

describe('the allowances of a piece in words', () => {
	const words = (...edges: readonly PieceEdge[]): string => allowanceWords({ edges }, english);

	it('the usual one first, then what differs', () => {
		expect(allowanceWords(RECTANGLE, english)).toBe('Allowance 1 cm; the hem 3 cm');
	});

	it('in inches to a sixteenth, and in millimetres', () => {
		// 10 / 25.4 * 16 = 6.3 sixteenths, 30 / 25.4 * 16 = 18.9.
		expect(allowanceWords(RECTANGLE, speechFor('en', 'in'))).toBe('Allowance 3/8″; the hem 1 3/16″');
		expect(allowanceWords(RECTANGLE, speechFor('en', 'mm'))).toBe('Allowance 10 mm; the hem 30 mm');
	});

	it('names several edges that differ alike, and those that have none', () => {
		expect(
			words(
				edge('top', 'seam', 10),
				edge('side', 'seam', 15),
				edge('bottom', 'seam', 10),
				edge('standFoot', 'seam', 15),
				edge('waist', 'seam', 10),
				edge('inner', 'opening', 0),
				edge('centre', 'fold', 0)
			)
		).toBe(
			'Allowance 1 cm; the side edge and the stand foot edge 1.5 cm; none on the inner edge and the fold'
		);
	});

	it('a piece that has none, on the fold or not', () => {
		expect(words(edge('top', 'seam', 0), edge('foot', 'opening', 0))).toBe(
			'No allowance outside the stitching line'
		);
		expect(words(edge('top', 'seam', 0), edge('centre', 'fold', 0))).toBe(
			'No allowance outside the stitching line'
		);
	});
});

describe('what is written on a piece', () => {
	it('number and name, whose it is, how many to cut, the grain, the allowances, and the rest', () => {
		expect(pieceWords(RECTANGLE, 'Heron', english)).toEqual([
			'4 Pocket flap',
			'For Heron',
			'Cut 2 in fabric, as a pair',
			'The grain line runs as the arrow does',
			'Allowance 1 cm; the hem 3 cm',
			'Press it flat'
		]);
	});

	it('the fold, and a grain line that runs along it, from either end', () => {
		const onFold: Piece = {
			...RECTANGLE,
			fold: 'centreBack',
			cut: [
				{ in: 'fabric', count: 1 },
				{ in: 'lining', count: 2 }
			],
			edges: [...EDGES.slice(0, 3), edge('centreBack', 'fold', 0, [D, A])]
		};
		expect(pieceWords(onFold, 'Wren', english).slice(2, 5)).toEqual([
			'Cut 1 in fabric on the fold; 2 in lining on the fold',
			'Lay the centre back edge on the fold of the cloth',
			'The grain line runs along the fold'
		]);
		expect(pieceWords({ ...onFold, grain: [A, B] }, 'Wren', english)[4]).toBe(
			'The grain line runs as the arrow does'
		);
	});

	it('pairs, and pieces that are cut once', () => {
		const cut = (count: number): string | undefined =>
			pieceWords({ ...RECTANGLE, cut: [{ in: 'interfacing', count }] }, 'Wren', english)[2];
		expect([1, 2, 3, 4].map(cut)).toEqual([
			'Cut 1 in interfacing',
			'Cut 2 in interfacing, as a pair',
			'Cut 3 in interfacing',
			'Cut 4 in interfacing, as 2 pairs'
		]);
	});

	it('a grain line along a line that is drawn on the piece, and one on the bias', () => {
		const marks = [{ label: 'Centre front', path: polyline(at(50, 0), at(50, 60)) }];
		expect(pieceWords({ ...RECTANGLE, marks }, 'Wren', english)[3]).toBe(
			'The grain line runs along the line marked “Centre front”'
		);
		// A tenth of a millimetre askew over 60 is another way.
		const askew = [{ label: 'Centre front', path: polyline(at(50, 0), at(50.1, 60)) }];
		expect(pieceWords({ ...RECTANGLE, marks: askew }, 'Wren', english)[3]).toBe(
			'The grain line runs as the arrow does'
		);
		expect(pieceWords({ ...RECTANGLE, bias: true }, 'Wren', english)[3]).toBe(
			'On the bias: the threads cross the piece at 45°'
		);
	});
});
