import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm } from '#shared/units.ts';
import { boundsOf, pathSamples, polyline, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { drawingBounds, type Words } from '#exports/drawing/drawing.ts';
import { writingWithin } from '#exports/drawing/writing.ts';
import { grainStrokes } from '#garment/piece-lines.ts';
import { pieceWords } from '#garment/words.ts';
import { garmentOf, madeFor } from '../garment/garment-files.ts';

/** How often a ring goes round a place: the sum of the angles under which its chords are seen. */
const turnsRound = (ring: readonly SheetPoint[], { x, y }: SheetPoint): number => {
	const sum = ring.reduce((all, a, i) => {
		const b = ring[(i + 1) % ring.length] ?? a;
		const [ax, ay, bx, by] = [a.x - x, a.y - y, b.x - x, b.y - y];
		return all + Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
	}, 0);
	return Math.round(sum / (2 * Math.PI));
};

const boxOf = (words: readonly Words[]) => drawingBounds({ name: '', strokes: [], words });
const cornersOf = (words: readonly Words[]): readonly SheetPoint[] => {
	const { left, top, right, bottom } = boxOf(words);
	return [at(left, top), at(right, top), at(right, bottom), at(left, bottom)];
};

describe.each(DEMO_BODIES)('writing on the dress for $body.name', ({ body }) => {
	const { pieces } = madeFor(garmentOf('course-dress'), body);

	it.each(pieces)('$name: lies within the piece, off the grain line, its name first', (piece) => {
		const texts = pieceWords(piece, body.name, english);
		const grain = grainStrokes(piece).slice(0, 1);
		const written = writingWithin(texts, piece.outline, grain);
		const name = `${piece.number} ${piece.name}`;
		expect(
			written
				.map(({ text }) => text)
				.join(' ')
				.startsWith(name)
		).toBe(true);
		// A strip that is narrower than writing has room for nothing but its name.
		const { left, top, right, bottom } = boundsOf([piece.outline]);
		if (Math.min(right - left, bottom - top) < 30) return;
		const ring = pathSamples(piece.outline, mm(1));
		for (const corner of cornersOf(written)) expect(Math.abs(turnsRound(ring, corner))).toBe(1);
		const box = boxOf(written);
		for (const { x, y } of grain.flatMap((line) =>
			Array.from({ length: 101 }, (_, i) => along(line, i / 100))
		))
			expect(box.left < x && x < box.right && box.top < y && y < box.bottom).toBe(false);
	});
});

/** A place on a straight line at a share of its way. */
const along = (line: Path, share: number): SheetPoint => {
	const { from, to } = line[0];
	return at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
};

describe('writing in a square of 200 mm', () => {
	const square = polyline(at(0, 0), at(200, 0), at(200, 200), at(0, 200), at(0, 0));

	it('stands in the middle where nothing is in its way', () => {
		const { left, right } = boxOf(writingWithin(['1 Pocket', 'Cut 2'], square, []));
		expect((left + right) / 2).toBeCloseTo(100, 6);
	});

	it('keeps clear of a line, even of one that has ends far away', () => {
		const across = polyline(at(-500, 100), at(700, 100));
		const { top, bottom } = boxOf(writingWithin(['1 Pocket', 'Cut 2'], square, [across]));
		expect(top > 100 || bottom < 100).toBe(true);
	});

	it('a long sentence is broken, and nothing of it is lost', () => {
		const text = 'Lay the centre edge on the fold of the cloth and pin it twice before you cut';
		const written = writingWithin(['1 Pocket', text], square, []);
		expect(
			written
				.slice(1)
				.map((line) => line.text)
				.join(' ')
		).toBe(text);
		expect(written.length).toBeGreaterThan(2);
	});
});
