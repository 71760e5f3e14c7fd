import { describe, expect, it } from 'vitest';
import { cuttingLine, type StitchedEdge } from '#garment/cutting-line.ts';
import { enclosedArea } from '#geometry/area.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { pathReversed, type Path } from '#geometry/path.ts';
import { at, between, directionTo, distance, moved, squareTo } from '#geometry/point.ts';
import { pathPart } from '#geometry/section.ts';
import { cubic, straight } from '#geometry/segment.ts';
import { CORNER_RULES } from '#shared/garment.ts';
import { mm } from '#shared/units.ts';
import { chances } from '../reference/random-bodies.ts';
import { distancesOf, edge } from './edges.ts';

const PIECES = 80;
const ALLOWANCES = [0, 6, 10, 15, 30, 40];
/** PARALLEL_ERROR, and as much for the chords that distances are measured from. */
const KEPT = 0.01;

/** Pieces of 4 to 9 corners around (500, 500): edges bent or straight, some divided in their course, run either way round. */
const randomPieces = (seed: number, allowances: readonly number[]) => {
	const chance = chances(seed);
	const pick = <T>(all: readonly [T, ...T[]] | readonly T[]): T | undefined =>
		all[Math.floor(chance() * all.length)];
	const around = (spread: number): number => (chance() - 0.5) * spread;

	const bent = (from: ReturnType<typeof at>, to: ReturnType<typeof at>): Path => {
		const direction = directionTo(from, to);
		if (!direction || chance() < 0.4) return [straight(from, to)];
		const deep = 0.6 * distance(from, to);
		const handle = (share: number) =>
			moved(between(from, to, share + around(0.1)), squareTo(direction), mm(around(deep)));
		return [cubic(from, handle(0.35), handle(0.65), to)];
	};
	const divided = (path: Path): readonly Path[] => {
		if (chance() < 0.6) return [path];
		const where = 0.2 + 0.6 * chance();
		return [pathPart(path, 0, where), pathPart(path, where, 1)].filter((part) => part !== undefined);
	};

	return (): readonly StitchedEdge[] => {
		const count = 4 + Math.floor(chance() * 6);
		const corners = Array.from({ length: count }, (_, i) => {
			const angle = ((i + 0.7 * chance()) / count) * 2 * Math.PI;
			const far = 120 + 280 * chance();
			return at(500 + far * Math.cos(angle), 500 + far * Math.sin(angle));
		});
		const paths = corners.flatMap((corner, i) => divided(bent(corner, corners[(i + 1) % count] ?? corner)));
		const turned = chance() < 0.5 ? paths : [...paths].reverse().map(pathReversed);
		const folded = chance() < 0.3 ? Math.floor(chance() * turned.length) : -1;
		return turned.map((path, i) => {
			const kind = i === folded && path[0].kind === 'straight' ? 'fold' : chance() < 0.2 ? 'hem' : 'seam';
			const rule = chance() < 0.3 ? pick(CORNER_RULES) : undefined;
			return edge(`edge ${i + 1}`, path, [pick(allowances) ?? 0, kind, rule]);
		});
	};
};

const stitchingLine = (edges: readonly StitchedEdge[]): Path => {
	const [first, ...rest] = edges.flatMap(({ path }) => path);
	if (!first) throw new Error('a piece has edges');
	return [first, ...rest];
};

describe.each([
	['different allowances', 4180, ALLOWANCES],
	['one allowance of 10 mm', 77, [10]],
	['one allowance of 30 mm', 31, [30]]
] as const)(`${PIECES} random pieces with %s`, (_, seed, allowances) => {
	it('have a cutting line that never crosses itself, and lies at its allowance', () => {
		const next = randomPieces(seed, allowances);
		let seen = 0;
		for (let i = 0; i < PIECES; i++) {
			const edges = next();
			const stitching = stitchingLine(edges);
			if (selfCrossings(stitching).length > 0) continue;
			const cut = cuttingLine(edges);
			const which = `piece ${i}`;
			expect(selfCrossings(cut.outline), which).toEqual([]);
			cut.outline.forEach(({ to }, k) => {
				expect(cut.outline[(k + 1) % cut.outline.length]?.from, which).toEqual(to);
			});
			const [area, stitched] = [enclosedArea(cut.outline), enclosedArea(stitching)];
			expect(Math.sign(area), which).toBe(Math.sign(stitched));
			expect(Math.abs(area) / Math.abs(stitched), which).toBeGreaterThan(1 - 1e-9);
			const distances = distancesOf(edges, cut);
			expect(distances.lack, which).toBeLessThan(KEPT);
			expect(distances.stray, which).toBeLessThan(KEPT);
			seen += distances.seen;
		}
		expect(seen).toBeGreaterThan(20 * PIECES);
	});
});
