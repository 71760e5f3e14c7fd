import { describe, expect, it } from 'vitest';
import { nearestOnPath } from '#geometry/apart.ts';
import { arcPath } from '#geometry/arc.ts';
import { parallelPath } from '#geometry/parallel.ts';
import {
	endDirection,
	pathEnd,
	pathLength,
	pathReversed,
	pathSamples,
	pathStart,
	polyline,
	startDirection,
	type Path
} from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic, segmentPoint, straight, type CubicSegment } from '#geometry/segment.ts';
import { PARALLEL_ERROR } from '#shared/tolerances.ts';
import { mm, radians } from '#shared/units.ts';
import { chances } from '../reference/random-bodies.ts';
import { expectDirection, expectPlace } from './close.ts';

/** An arc of radius 50 about (0, 0), a third of a turn from x toward y: its hollow side is that of positive distances. */
const ARC = arcPath(at(0, 0), at(50, 0), radians((2 * Math.PI) / 3));
/** Bends one way and then the other. */
const DOUBLE_BEND: Path = [cubic(at(0, 0), at(80, -10), at(40, 110), at(130, 90))];

const places = (path: Path, count: number): readonly SheetPoint[] =>
	path.flatMap((segment) => Array.from({ length: count + 1 }, (_, i) => segmentPoint(segment, i / count)));

/** How far the distances of a line's places from a curve stray from what they should be, at most. */
const greatestStray = (line: Path, curve: Path, by: number): number => {
	const near = places(curve, 3000);
	const from = (p: SheetPoint): number =>
		Math.sqrt(near.reduce((least, q) => Math.min(least, (p.x - q.x) ** 2 + (p.y - q.y) ** 2), Infinity));
	return Math.max(...places(line, 24).map((p) => Math.abs(from(p) - Math.abs(by))));
};

/** The line at distance `by` as it is defined: square to the curve, whose direction is read from two places beside each other. */
const trueParallel = (curve: CubicSegment, by: number): Path => {
	const step = 1e-6;
	const [first, second, ...rest] = Array.from({ length: 801 }, (_, i) => {
		const t = i / 800;
		const [a, b] = [segmentPoint(curve, t - step), segmentPoint(curve, t + step)];
		const length = distance(a, b);
		const { x, y } = segmentPoint(curve, t);
		return at(x - (by * (b.y - a.y)) / length, y + (by * (b.x - a.x)) / length);
	});
	return polyline(first ?? curve.from, second ?? curve.to, ...rest);
};

describe('parallelPath', () => {
	it('of a straight piece lies where a turn from x toward y points, or opposite', () => {
		expect(parallelPath(polyline(at(0, 0), at(9, 0)), mm(3))).toEqual(polyline(at(0, 3), at(9, 3)));
		const [slope] = parallelPath(polyline(at(1, 2), at(7, 10)), mm(-5));
		expectPlace(slope.from, 5, -1);
		expectPlace(slope.to, 11, 7);
		expect(slope.kind).toBe('straight');
	});

	it('of a circle is a circle, smaller on the hollow side and larger on the other', () => {
		for (const [by, radius] of [
			[10, 40],
			[30, 20],
			[-10, 60],
			[-40, 90]
		] as const) {
			const strays = places(parallelPath(ARC, mm(by)), 50).map((p) => distance(at(0, 0), p) - radius);
			expect(Math.max(...strays.map(Math.abs)), `by ${by}`).toBeLessThan(PARALLEL_ERROR);
			const length = pathLength(parallelPath(ARC, mm(by)));
			expect(Math.abs(length - (radius * 2 * Math.PI) / 3)).toBeLessThan(0.001);
		}
	});

	it('ends exactly square to the ends, in their directions', () => {
		const line = parallelPath(DOUBLE_BEND, mm(12));
		expectDirection(startDirection(line), 80, -10);
		expectDirection(endDirection(line), 90, -20);
		const [start, end] = [Math.hypot(80, 10), Math.hypot(90, 20)];
		expectPlace(pathStart(line), (12 * 10) / start, (12 * 80) / start);
		expectPlace(pathEnd(line), 130 + (12 * 20) / end, 90 + (12 * 90) / end);
	});

	it('is unbroken, and run from the other end it lies in the same place', () => {
		const line = parallelPath(DOUBLE_BEND, mm(15));
		line.slice(1).forEach(({ from }, i) => {
			expect(from).toEqual(line[i]?.to);
		});
		const back = parallelPath(pathReversed(DOUBLE_BEND), mm(-15));
		expect(greatestStray(back, line, 0)).toBeLessThan(0.02);
	});

	it('stays within its tolerance beside random curves, also where it turns back on itself', () => {
		const chance = chances(4180);
		const around = (spread: number): number => (chance() - 0.5) * spread;
		for (let i = 0; i < 25; i++) {
			const curve = cubic(
				at(0, 0),
				at(60 + around(60), around(120)),
				at(140 + around(60), around(120)),
				at(200, around(80))
			);
			for (const by of [6, -10, 40]) {
				const line = parallelPath([curve], mm(by));
				const truth = trueParallel(curve, by);
				const strays = places(line, 8).map((p) => distance(p, nearestOnPath(truth, p)));
				expect(Math.max(...strays), `curve ${i} by ${by}`).toBeLessThan(PARALLEL_ERROR + 0.0005);
			}
		}
	});

	it('of a curve whose handle lies on its end', () => {
		const curve: Path = [cubic(at(0, 0), at(0, 0), at(60, 80), at(160, 80))];
		const line = parallelPath(curve, mm(20));
		expectDirection(startDirection(line), 3, 4);
		expectPlace(pathStart(line), -16, 12);
		expect(greatestStray(line, curve, 20)).toBeLessThan(PARALLEL_ERROR + 0.001);
	});

	it('turns back on itself inside a bend tighter than the distance', () => {
		const bend = arcPath(at(0, 0), at(10, 0), radians(Math.PI / 2));
		const line = parallelPath(bend, mm(25));
		expectPlace(pathStart(line), -15, 0);
		expectPlace(pathEnd(line), 0, -15);
		expectDirection(startDirection(line), 0, -1);
		const strays = places(line, 20).map((p) => Math.abs(distance(at(0, 0), p) - 15));
		expect(Math.max(...strays)).toBeLessThan(PARALLEL_ERROR);
	});

	it('of no distance, or of a path of no length, is the path', () => {
		expect(parallelPath(DOUBLE_BEND, mm(0))).toBe(DOUBLE_BEND);
		const spot = polyline(at(3, 3), at(3, 3));
		expect(parallelPath(spot, mm(5))).toBe(spot);
		const pause: Path = [
			straight(at(0, 0), at(4, 0)),
			straight(at(4, 0), at(4, 0)),
			straight(at(4, 0), at(9, 0))
		];
		const paused = parallelPath(pause, mm(2));
		expect(paused).toHaveLength(2);
		expectPlace(pathEnd(paused), 9, 2);
	});
});

describe('a corner within a path', () => {
	const corner = polyline(at(0, 0), at(10, 0), at(10, 20));

	it('on its outer side is run on to where both lines meet', () => {
		expect(pathSamples(parallelPath(corner, mm(-2)), mm(1))).toEqual([
			at(0, -2),
			at(10, -2),
			at(12, -2),
			at(12, 0),
			at(12, 20)
		]);
	});

	it('on its inner side is joined straight across', () => {
		expect(pathSamples(parallelPath(corner, mm(3)), mm(1))).toEqual([
			at(0, 3),
			at(10, 3),
			at(7, 0),
			at(7, 20)
		]);
	});

	it('that turns by more than a quarter is joined straight across on both sides', () => {
		const sharp = polyline(at(0, 0), at(10, 0), at(2, 6));
		const line = parallelPath(sharp, mm(-5));
		expect(line).toHaveLength(3);
		expectPlace(line[1]?.from, 10, -5);
		expectPlace(line[1]?.to, 13, 4);
	});

	it('too small to see is closed', () => {
		const nearly = polyline(at(0, 0), at(100, 0), at(200, 0.01));
		const line = parallelPath(nearly, mm(20));
		expect(line).toHaveLength(2);
		expect(line[0].to).toEqual(line[1]?.from);
	});
});
