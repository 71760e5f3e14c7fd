import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import type { Piece } from '#garment/piece.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Spot } from './back-block.ts';
import { DEMO, SURVEY } from './dress-bodies.ts';
import { placeOn } from './dress-curves.ts';
import { dressFor } from './dress-pattern.ts';

/** What is asked of a cutting line: so many millimetres from its allowance, everywhere but at corners. */
const WITHIN_MM = 0.1;
/** A corner changes the cutting line for so many times the widest allowance of the piece on either side of it. */
const CORNER = 2.5;
/** Places on the stitching line, and pieces of the cutting line, no further apart than this, in millimetres. */
const PLACES = 3;
const PIECES = 0.4;

const OWN = {
	'front.side': mm(20),
	'front.armhole': mm(6),
	'front.waist': mm(12),
	'back.waist': mm(15),
	'back.side': mm(25),
	'frontBand.inner': mm(5),
	'backBand.outer': mm(7),
	'facing.inner': mm(0),
	'skirt.hem': mm(50),
	'skirt.side': mm(18)
};

/** Places along a path, by hand. */
const places = (path: Path, step: number): readonly Spot[] => {
	const spot = ({ x, y }: SheetPoint): Spot => [x, y];
	const all = path.flatMap((segment) => {
		const [from, to] = [spot(segment.from), spot(segment.to)];
		const handles = segment.kind === 'cubic' ? [spot(segment.leaving), spot(segment.arriving)] : [];
		const corners = [from, ...handles, to];
		const round = corners.slice(1).reduce((sum, [x, y], i) => {
			const [x0, y0] = corners[i] ?? from;
			return sum + Math.hypot(x - x0, y - y0);
		}, 0);
		const parts = Math.max(1, Math.ceil(round / step));
		return Array.from({ length: parts }, (_, i): Spot => {
			const [t, s] = [i / parts, 1 - i / parts];
			if (segment.kind === 'cubic')
				return placeOn([from, spot(segment.leaving), spot(segment.arriving), to], t);
			return [s * from[0] + t * to[0], s * from[1] + t * to[1]];
		});
	});
	const last = path.at(-1);
	return last ? [...all, spot(last.to)] : all;
};

/** How far a place lies from a chain of straight pieces. */
const away = ([x, y]: Spot, chain: readonly Spot[]): number => {
	let least = Infinity;
	for (let i = 1; i < chain.length; i++) {
		const [[ax, ay], [bx, by]] = [chain[i - 1] ?? [NaN, NaN], chain[i] ?? [NaN, NaN]];
		const [dx, dy] = [bx - ax, by - ay];
		const size = dx * dx + dy * dy;
		const t = size > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / size)) : 0;
		const gap = (ax + t * dx - x) ** 2 + (ay + t * dy - y) ** 2;
		if (gap < least) least = gap;
	}
	return Math.sqrt(least);
};

/** How far off the allowance the cutting line lies at places of an edge that are clear of its corners. */
const strays = ({ edges, cutting }: Piece): readonly { readonly edge: string; readonly off: number }[] => {
	const line = places(cutting.outline, PIECES);
	const widest = Math.max(...edges.map(({ allowance }) => allowance));
	return edges.flatMap(({ name, path, allowance }) => {
		const all = places(path, PLACES);
		const [first, last] = [all[0] ?? [NaN, NaN], all.at(-1) ?? [NaN, NaN]];
		const clear = ([x, y]: Spot): boolean =>
			[first, last].every((end) => Math.hypot(x - end[0], y - end[1]) > CORNER * widest);
		return all.filter(clear).map((place) => ({ edge: name, off: Math.abs(away(place, line) - allowance) }));
	});
};

const WORN = [...DEMO.slice(0, 4), ...SURVEY.filter((_, i) => i % 75 === 10)];

describe.each([
	{ what: 'its usual allowances', edges: {} },
	{ what: 'an allowance of its own on ten edges', edges: OWN }
])('the cutting line of the course dress with $what', ({ edges }) => {
	it('lies the allowance outside the stitching line, everywhere clear of the corners', () => {
		let looked = 0;
		for (const { name, numbers } of WORN) {
			const work = dressFor(numbers, edges);
			if (work.kind === 'refused') throw new Error(`${name} was refused`);
			for (const piece of work.pattern.pieces)
				for (const { edge, off } of strays(piece)) {
					looked += 1;
					expect(off, `${piece.key}.${edge} of ${name}`).toBeLessThan(WITHIN_MM);
				}
		}
		expect(looked).toBeGreaterThan(5000);
	});

	it('has the allowances that were chosen', () => {
		const [heron] = DEMO;
		const work = dressFor(heron?.numbers ?? {}, edges);
		if (work.kind === 'refused') throw new Error('heron was refused');
		for (const [name, allowance] of Object.entries(edges)) {
			const [key, own] = name.split('.');
			const piece = work.pattern.pieces.find((each) => each.key === key);
			expect(piece?.edges.find((each) => each.name === own)?.allowance, name).toBe(allowance);
		}
		const usual = work.pattern.pieces
			.find(({ key }) => key === 'backBand')
			?.edges.find(({ name }) => name === 'inner');
		expect(usual?.allowance, 'what was not chosen').toBe(10);
	});
});
