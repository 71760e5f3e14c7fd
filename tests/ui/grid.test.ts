import { describe, expect, it } from 'vitest';
import { parseLength } from '#shared/reading.ts';
import { mm, MM_PER } from '#shared/units.ts';
import { at, distance } from '#geometry/point.ts';
import { gridFor, KEY_STEPS, rulerMarks, snapped, SNAPS } from '#ui/drawing/grid.ts';
import { expectPlace } from '../geometry/close.ts';
import { chances } from '../reference/random-bodies.ts';

const UNITS = ['cm', 'in'] as const;
/** The whole range of the zoom, from the whole of a dress to a tenth of a millimetre. */
const SCALES = Array.from({ length: 241 }, (_, i) => 0.15 * 200 ** (i / 240));
const CASES = UNITS.flatMap((unit) =>
	SNAPS[unit].flatMap((snap) =>
		SCALES.map((scale) => ({
			unit,
			snap,
			scale,
			grid: gridFor(unit, snap, scale),
			spot: `${unit} ${snap} ${scale}`
		}))
	)
);
const isMultiple = (length: number, of: number): boolean =>
	length > 0 && Math.abs(length / of - Math.round(length / of)) < 1e-6 && length / of > 0.5;

describe('the drawn grid', () => {
	it('its dots lie on the snap grid, and so do its lines', () => {
		for (const { snap, grid, spot } of CASES) {
			expect(isMultiple(grid.dots, snap), `dots, ${spot}`).toBe(true);
			expect(isMultiple(grid.lines, snap), `lines, ${spot}`).toBe(true);
			expect(isMultiple(grid.lines, grid.dots), `lines on dots, ${spot}`).toBe(true);
		}
	});

	it('its dots lie at least 5 px apart, its lines at least 34', () => {
		for (const { scale, grid, spot } of CASES) {
			expect(grid.dots * scale, spot).toBeGreaterThanOrEqual(5 - 1e-9);
			expect(grid.lines * scale, spot).toBeGreaterThanOrEqual(34 - 1e-9);
		}
	});

	it('is the snap grid itself wherever that can be seen', () => {
		let seen = 0;
		for (const { snap, scale, grid, spot } of CASES) {
			if (snap * scale < 5) continue;
			expect(grid.dots, spot).toBeCloseTo(snap, 9);
			seen += 1;
		}
		expect(seen).toBeGreaterThan(300);
	});

	it.each([
		['cm', 1, 10, 1, 5],
		['cm', 1, 2, 5, 50],
		['cm', 0.1, 30, 0.5, 5],
		['cm', 10, 30, 10, 10],
		['in', 1.5875, 10, 1.5875, 6.35],
		['in', 6.35, 30, 6.35, 6.35],
		['in', 1.5875, 0.6, 12.7, 152.4],
		['in', 1.5875, 1.2, 6.35, 152.4]
	] as const)('%s, snap %d, %d px to the mm: dots %d, lines %d', (unit, snap, scale, dots, lines) => {
		const grid = gridFor(unit, mm(snap), scale);
		expect(grid.dots).toBeCloseTo(dots, 9);
		expect(grid.lines).toBeCloseTo(lines, 9);
	});
});

describe('the snap', () => {
	it('is the nearest grid place', () => {
		expectPlace(snapped(at(12.4, 99.6), mm(1)), 12, 100);
		expectPlace(snapped(at(-12.6, 3), mm(5)), -15, 5);
		expectPlace(snapped(at(40, 1), mm(25.4 / 16)), 25 * 1.5875, 1.5875);
	});

	it('is never further than half a diagonal away, and stays where it is', () => {
		const chance = chances(21);
		for (const unit of UNITS)
			for (const snap of SNAPS[unit])
				for (let i = 0; i < 50; i++) {
					const place = at((chance() - 0.5) * 900, (chance() - 0.5) * 900);
					const on = snapped(place, snap);
					expect(distance(on, place)).toBeLessThanOrEqual((snap * Math.SQRT2) / 2 + 1e-9);
					expect(distance(snapped(on, snap), on)).toBeLessThan(1e-9);
				}
	});
});

describe('the arrow keys', () => {
	it('go 1, 10 and 0.1 mm; in inches a sixteenth, one, and a sixty-fourth', () => {
		expect(KEY_STEPS.cm).toEqual({ plain: 1, shift: 10, alt: 0.1 });
		expect(KEY_STEPS.in.plain * 16).toBeCloseTo(MM_PER.in, 9);
		expect(KEY_STEPS.in.shift).toBe(MM_PER.in);
		expect(KEY_STEPS.in.alt * 64).toBeCloseTo(MM_PER.in, 9);
	});
});

describe('rulers', () => {
	it('from -3 to 12 mm with dots at 1 and lines at 5', () => {
		const marks = rulerMarks(mm(-3), mm(12), { dots: mm(1), lines: mm(5) }, 'cm');
		expect(marks.map(({ at }) => at + 0)).toEqual([-3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
		expect(marks.flatMap(({ label }) => label ?? [])).toEqual(['0', '0.5', '1']);
	});

	it('in inches, a mark at every quarter and a number at every inch', () => {
		const marks = rulerMarks(mm(0), mm(50.8), { dots: mm(6.35), lines: mm(25.4) }, 'in');
		expect(marks).toHaveLength(9);
		expect(marks.map(({ label }) => label ?? '')).toEqual(['0', '', '', '', '1', '', '', '', '2']);
	});

	it('marks lie on the dots, evenly, all the way, and the lines are numbered with where they are', () => {
		for (const { unit, scale, grid, spot } of CASES) {
			const [from, to] = [mm(-37.3), mm(-37.3 + 600 / scale)];
			const marks = rulerMarks(from, to, grid, unit);
			const [first, second] = marks;
			if (!first || !second) throw new Error(`no marks: ${spot}`);
			const tick = second.at - first.at;
			expect(isMultiple(tick, grid.dots), `${tick} on dots of ${grid.dots}: ${spot}`).toBe(true);
			expect(isMultiple(grid.lines, tick), `lines on ticks: ${spot}`).toBe(true);
			expect(first.at - tick).toBeLessThan(from);
			expect((marks.at(-1)?.at ?? NaN) + tick).toBeGreaterThan(to - 1e-9);
			const strange = marks.filter(({ at: place, label }, i) => {
				const onLine = Math.abs(place / grid.lines - Math.round(place / grid.lines)) < 1e-6;
				// A ruler's number is read to a tenth of a millimetre or a sixteenth of an inch.
				const misread = label && Math.abs(parseLength(label, unit) - place) > 25.4 / 32 + 1e-6;
				const uneven = Math.abs(place - (first.at + i * tick)) > 1e-6;
				return (
					place < from - 1e-9 || place > to + 1e-9 || (label !== undefined) !== onLine || misread || uneven
				);
			});
			expect(strange, spot).toEqual([]);
		}
	});

	it('the marks of a screen’s width stay few', () => {
		for (const { unit, scale, grid, spot } of CASES) {
			const marks = rulerMarks(mm(0), mm(1400 / scale), grid, unit);
			expect(marks.length, spot).toBeLessThan(300);
			expect(marks.length, spot).toBeGreaterThan(1);
		}
	});
});
