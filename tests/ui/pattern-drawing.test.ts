import { describe, expect, it } from 'vitest';
import { mm, px } from '#shared/units.ts';
import { dense, grainLine, notchStrokes } from '#garment/piece-lines.ts';
import { foldSign } from '#garment/piece-signs.ts';
import type { Piece } from '#garment/piece.ts';
import { boundsOf, pathEnd, pathStart } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { oneScale, pieceBounds, pieceLeaf, roomFor } from '#ui/garments/piece-ink.ts';
import { rowsWithin } from '#ui/pages/pattern/piece-row.ts';
import { layWords, pieceLabel, seamWords } from '#ui/garments/piece-words.ts';
import { english } from '../support/speech.ts';
import { bodyOf, garmentOf, garments, madeFor } from '../garment/garment-files.ts';

const DRESS = madeFor(garmentOf('course-dress'), bodyOf('heron'));
const pieceOf = (key: string): Piece => {
	const piece = DRESS.pieces.find((each) => each.key === key);
	if (!piece) throw new Error(`there is no piece ${key}`);
	return piece;
};

/** Whether a place lies inside a polygon, by the sum of the angles under which its sides are seen. */
const isInside = (polygon: readonly SheetPoint[], { x, y }: SheetPoint): boolean => {
	const turns = polygon.map((b, i) => {
		const a = polygon.at(i - 1) ?? b;
		const [u, v] = [
			{ x: a.x - x, y: a.y - y },
			{ x: b.x - x, y: b.y - y }
		];
		return Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
	});
	return Math.abs(turns.reduce((sum, each) => sum + each, 0)) > Math.PI;
};

describe('a piece as it is drawn', () => {
	it('its notches lead from the stitching line straight to the cutting line, two of them where double', () => {
		const [front, back] = [pieceOf('front'), pieceOf('back')];
		const [single] = front.notches.filter(({ edge }) => edge === 'side');
		const [twice] = back.notches.filter(({ edge }) => edge === 'side');
		if (!single || !twice) throw new Error('the side seam has a notch on both its edges');
		const [stroke, none] = notchStrokes(front, single);
		expect(none).toBeUndefined();
		const cut = dense(front.cutting.outline, mm(0.2));
		const tip = stroke && pathEnd(stroke);
		expect(stroke && distance(pathStart(stroke), single.at)).toBeCloseTo(0, 6);
		expect(tip && Math.min(...cut.map((place) => distance(place, tip)))).toBeLessThan(0.2);
		const [left, right] = notchStrokes(back, twice);
		expect(left && right && distance(pathStart(left), pathStart(right))).toBeCloseTo(6, 1);
	});

	it('its fold is told on the fold edge, and its bracket stands inside', () => {
		expect(foldSign(pieceOf('front'), mm(10))).toBeUndefined();
		const back = pieceOf('back');
		const sign = foldSign(back, mm(10));
		const polygon = dense(back.outline, mm(5));
		expect(sign?.outward.dx).toBeCloseTo(-1, 9);
		expect(sign && isInside(polygon, pathEnd([sign.bracket[1] ?? sign.bracket[0]]))).toBe(true);
	});

	const all = garments().flatMap((garment) =>
		madeFor(garment, bodyOf('heron')).pieces.map((piece) => [`${garment.id} ${piece.key}`, piece] as const)
	);
	it.each(all)('%s: its grain line lies inside it, and runs with the threads', (_, piece) => {
		const polygon = dense(piece.outline, mm(4));
		const [from, to] = grainLine(piece, polygon, mm(20));
		for (const share of [0.02, 0.5, 0.98]) {
			const place = at(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y));
			expect(isInside(polygon, place)).toBe(true);
		}
		const [start, end] = piece.grain;
		const angle = Math.atan2(to.y - from.y, to.x - from.x) - Math.atan2(end.y - start.y, end.x - start.x);
		expect(Math.abs(Math.sin(piece.bias ? 2 * angle : angle))).toBeCloseTo(piece.bias ? 1 : 0, 6);
	});

	it('is drawn to one scale with its neighbours, in any room and for every garment', () => {
		for (const garment of garments())
			for (const room of [300, 560, 700, 960, 1300]) {
				const bounds = madeFor(garment, bodyOf('heron')).pieces.map((piece) => pieceBounds(piece, 'all'));
				const scale = oneScale(bounds, room);
				const scales = bounds.map((each) => pieceLeaf(each, room, scale).view.scale);
				expect(new Set(scales), `${garment.id} in ${String(room)} pixels`).toEqual(new Set([scale]));
				for (const each of bounds)
					expect(pieceLeaf(each, room, scale).size.width).toBeLessThanOrEqual(room + 1);
			}
	});

	it('fits its room, whatever its shape', () => {
		for (const piece of DRESS.pieces)
			for (const room of [250, 320, 600]) {
				const { size, view } = pieceLeaf(pieceBounds(piece, 'all'), room);
				const { left, top, right, bottom } = boundsOf([piece.cutting.outline]);
				expect(size.width).toBeLessThanOrEqual(room + 1);
				expect((left - view.left) * view.scale).toBeGreaterThan(0);
				expect((top - view.top) * view.scale).toBeGreaterThan(0);
				expect((right - view.left) * view.scale).toBeLessThan(size.width);
				expect((bottom - view.top) * view.scale).toBeLessThan(size.height);
			}
	});
});

describe('room for words', () => {
	const square = dense(
		[
			{ kind: 'straight', from: at(0, 0), to: at(100, 0) },
			{ kind: 'straight', from: at(100, 0), to: at(100, 100) },
			{ kind: 'straight', from: at(100, 100), to: at(0, 100) },
			{ kind: 'straight', from: at(0, 100), to: at(0, 0) }
		],
		mm(2)
	);

	it('is found near the middle of a square, and away from other ink', () => {
		const room = roomFor(square, [], mm(20), mm(20));
		expect(room && distance(room, at(50, 50))).toBeLessThan(8);
		const beside = roomFor(square, [at(50, 50)], mm(20), mm(20));
		expect(beside && distance(beside, at(50, 50))).toBeGreaterThan(10);
	});

	it('is not found where the words are wider than the piece', () => {
		expect(roomFor(square, [], mm(101), mm(10))).toBeUndefined();
	});
});

describe('small pieces in rows', () => {
	it('stand beside and under one another to one scale, and none on another', () => {
		const { standing, height } = rowsWithin(DRESS.pieces, px(420), px(190));
		expect(height).toBeLessThanOrEqual(190);
		expect(new Set(standing.map(({ view }) => view.scale)).size).toBe(1);
		const boxes = standing.map(({ piece, view }) => {
			const { left, top, right, bottom } = boundsOf([piece.cutting.outline]);
			const across = (x: number): number => (x - view.left) * view.scale;
			const down = (y: number): number => (y - view.top) * view.scale;
			return { left: across(left), right: across(right), top: down(top), bottom: down(bottom) };
		});
		for (const [i, a] of boxes.entries()) {
			expect(a.right).toBeLessThanOrEqual(420.001);
			for (const b of boxes.slice(i + 1))
				expect(a.right < b.left || b.right < a.left || a.bottom < b.top || b.bottom < a.top).toBe(true);
		}
	});
});

describe('words for a piece and a seam', () => {
	it('say how it is laid', () => {
		expect(layWords(pieceOf('front'), english)).toBe('in pairs, right sides together');
		expect(layWords(pieceOf('back'), english)).toBe('on the fold');
		expect(layWords(pieceOf('binding'), english)).toBe('in pairs, right sides together, on the bias');
	});

	it('name every edge with its length, in either unit', () => {
		expect(pieceLabel(pieceOf('skirt'), english)).toMatch(
			/^Skirt, piece 6\. Edges: .*centre 64 cm on the fold/
		);
		expect(pieceLabel(pieceOf('skirt'), english.inUnit('in'))).toContain('centre 25 3/16″ on the fold');
	});

	it('say which way a seam does not match', () => {
		const [seam] = DRESS.seams;
		if (!seam) throw new Error('the dress has seams');
		expect(seamWords(seam, english)).toBe('matches');
		expect(seamWords({ ...seam, ease: mm(15) }, english)).toBe('matches, 1.5 cm eased in');
		expect(seamWords({ ...seam, difference: mm(4), within: false }, english)).toBe(
			'the second is 4 mm too long'
		);
		expect(seamWords({ ...seam, difference: mm(-12.7), within: false }, english.inUnit('in'))).toBe(
			'the second is 1/2″ too short'
		);
	});
});
