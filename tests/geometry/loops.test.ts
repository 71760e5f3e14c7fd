import { describe, expect, it } from 'vitest';
import { enclosedArea } from '#geometry/area.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { arcPath } from '#geometry/arc.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { withoutLoops } from '#geometry/kernel/loops.ts';
import { parallelPath } from '#geometry/parallel.ts';
import { pathEnd, pathReversed, pathStart, polyline, type Path } from '#geometry/path.ts';
import { at, distance } from '#geometry/point.ts';
import { cubic, segmentPoint, straight } from '#geometry/segment.ts';
import { mm, radians } from '#shared/units.ts';

/** A bow tie of a large part, 20 by 20 halved, and a small one, 10 by 10 halved, that run opposite ways. */
const BOW = polyline(at(0, 0), at(30, 30), at(30, 20), at(10, 20), at(0, 30), at(0, 0));

/** A pocket 60 wide and `deep` in the upper edge of a sheet 300 by 200, all in smooth curves; run clockwise as seen. */
const withPocket = (deep: number): Path => [
	cubic(at(0, 0), at(60, 0), at(130, -20), at(130, deep / 2)),
	cubic(at(130, deep / 2), at(130, deep), at(170, deep), at(170, deep / 2)),
	cubic(at(170, deep / 2), at(170, -20), at(240, 0), at(300, 0)),
	straight(at(300, 0), at(300, 200)),
	straight(at(300, 200), at(0, 200)),
	straight(at(0, 200), at(0, 0))
];

const expectClosed = (outline: Path): void => {
	outline.forEach(({ to }, i) => {
		const next = outline[(i + 1) % outline.length] ?? outline[0];
		expect(distance(to, next.from)).toBeLessThan(1e-9);
	});
};

describe('withoutLoops', () => {
	it('returns an outline that does not cross itself as it is', () => {
		const sheet = withPocket(40);
		expect(selfCrossings(sheet)).toEqual([]);
		expect(withoutLoops(sheet)).toBe(sheet);
		const circle = arcPath(at(0, 0), at(40, 0), radians(2 * Math.PI));
		expect(withoutLoops(circle)).toBe(circle);
	});

	it('keeps the larger part of a bow tie, and the way round of the whole', () => {
		for (const bow of [BOW, pathReversed(BOW)]) {
			const kept = withoutLoops(bow);
			expect(selfCrossings(kept)).toEqual([]);
			expect(Math.abs(enclosedArea(kept))).toBeGreaterThan(Math.abs(enclosedArea(bow)));
			expect(Math.sign(enclosedArea(kept))).toBe(Math.sign(enclosedArea(bow)));
		}
	});

	it('closes an outline whose end is not at its start', () => {
		const open = polyline(at(0, 0), at(54, 0), at(50, -6), at(50, 30), at(0, 30));
		expect(enclosedArea(withoutLoops(open))).toBeCloseTo(50 * 30, 6);
	});

	it('takes out a loop at a corner, by head arithmetic', () => {
		// A sheet of 50 by 30 whose corner at (50, 0) runs on by 4 and 6 beyond itself.
		const loop = polyline(at(0, 0), at(54, 0), at(50, -6), at(50, 30), at(0, 30), at(0, 0));
		const kept = withoutLoops(loop);
		expect(selfCrossings(kept)).toEqual([]);
		expect(enclosedArea(kept)).toBeCloseTo(50 * 30, 6);
	});

	it('takes out the loop beside a bend that is tighter than the distance, and keeps curves', () => {
		for (const deep of [10, 30, 60, 90]) {
			for (const by of [15, 25, 40]) {
				const sheet = withPocket(deep);
				const open = parallelPath(sheet, mm(-by));
				const line: Path = [...open, straight(pathEnd(open), pathStart(open))];
				const kept = withoutLoops(line);
				expectClosed(kept);
				expect(selfCrossings(kept), `${deep} deep, ${by} away`).toEqual([]);
				expect(enclosedArea(kept)).toBeGreaterThan(enclosedArea(sheet));
				expect(kept.some(({ kind }) => kind === 'cubic')).toBe(true);
				expect(kept.some(({ kind }) => kind === 'straight')).toBe(true);
				const nearest = kept.flatMap((segment) =>
					[0, 0.3, 0.7].map((t) => {
						const place = segmentPoint(segment, t);
						return { place, away: distance(place, nearestOnPath(sheet, place)) };
					})
				);
				// The corner where the line starts is joined straight across, and so comes nearer.
				const beside = nearest.filter(({ place }) => place.x > 0 || place.y > 0);
				expect(Math.min(...beside.map(({ away }) => away))).toBeGreaterThan(by - 0.02);
			}
		}
	});

	it('leaves the pieces of an outline that lie outside its loops as they were', () => {
		const line = parallelPath(withPocket(60), mm(-25));
		const kept = withoutLoops(line);
		expect(line.length).toBeGreaterThan(kept.length);
		const foot = kept.find(({ from, to }) => from.y > 220 && to.y > 220);
		expect(foot?.kind).toBe('straight');
		expect([foot?.from.x, foot?.to.x].sort()).toEqual([-25, 325].sort());
		expect(distance(pathStart(kept), pathEnd(kept))).toBeLessThan(1e-9);
	});
});
