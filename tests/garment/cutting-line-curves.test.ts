import { describe, expect, it } from 'vitest';
import { cuttingLine, type StitchedEdge } from '#garment/cutting-line.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { enclosedArea } from '#geometry/area.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { mirroring, movedBy } from '#geometry/motion.ts';
import { parallelPath } from '#geometry/parallel.ts';
import { endDirection, pathEnd, pathReversed, pathStart, startDirection, type Path } from '#geometry/path.ts';
import { at, distance, moved, type SheetPoint } from '#geometry/point.ts';
import { cubic, straight } from '#geometry/segment.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm } from '#shared/units.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { distancesOf, edge, placesEvery, placesOn } from './edges.ts';

/** What is kept of the 0.1 mm that was asked: PARALLEL_ERROR, and as much for the chords that distances are measured from. */
const KEPT = 0.01;

const METHODS = [backBlock(), frontBlock()];

/** A hem that drops from square to the side, as a flared skirt's does, in place of the block's straight one. */
const curvedHem = (path: Path): Path => {
	const [side, centre] = [pathStart(path), pathEnd(path)];
	const third = (side.x - centre.x) / 3;
	return [
		cubic(
			side,
			at(side.x - third, side.y + 12),
			at(centre.x + third, centre.y + 25),
			at(centre.x, centre.y + 25)
		)
	];
};

/** A block's half piece without its dart: from the neck round to the fold, clockwise as seen. */
const halfPiece = (
	lines: Readonly<Record<string, { readonly path: Path }>>,
	allowance: number
): readonly StitchedEdge[] => {
	const line = (name: string): Path => {
		const found = lines[name];
		if (!found) throw new Error(`the block has no ${name}`);
		return found.path;
	};
	const [armhole, hip] = [line('armhole'), line('hip')];
	const hem = curvedHem(pathReversed(line('hem')));
	const side: Path = [straight(pathEnd(armhole), pathStart(hip))];
	const fold: Path = [straight(pathEnd(hem), pathStart(line('neck')))];
	return [
		edge('neck', line('neck'), [allowance]),
		edge('shoulder', line('shoulder'), [15]),
		edge('armhole', armhole, [allowance]),
		edge('side', [...side, ...hip], [10]),
		edge('hem', hem, [allowance, 'hem']),
		edge('fold', fold, [0, 'fold'])
	];
};

const PIECES = METHODS.flatMap((method) =>
	DEMO_BODIES.map(({ id, body }) => ({
		name: `${method.id} of ${id}`,
		lines: draftOf(method, body).lines
	}))
);

describe.each([6, 10, 15, 30, 40])(
	'with allowances of %i mm, on the blocks of every demo body',
	(allowance) => {
		const cutPieces = PIECES.map(({ name, lines }) => {
			const edges = halfPiece(lines, allowance);
			return { name, edges, cut: cuttingLine(edges) };
		});

		it.each(cutPieces)('the cutting line is one outline at its allowance: $name', ({ edges, cut }) => {
			expect(selfCrossings(cut.outline)).toEqual([]);
			const [first, ...rest] = edges.flatMap(({ path }) => path);
			if (!first) throw new Error('the piece has edges');
			expect(enclosedArea(cut.outline)).toBeGreaterThan(enclosedArea([first, ...rest]));
			const { seen, lack, stray } = distancesOf(edges, cut);
			expect(seen).toBeGreaterThan(25);
			expect(lack).toBeLessThan(KEPT);
			expect(stray).toBeLessThan(KEPT);
		});

		it.each(cutPieces)(
			'what lies beside each edge is at its allowance up to the corners: $name',
			({ edges, cut }) => {
				for (const [i, { name, path }] of cut.edges.entries()) {
					const stitched = edges[i];
					if (!stitched) throw new Error('each edge has its part');
					// Inside a bend tighter than the allowance a part has loops, which the outline has not.
					const kept = placesEvery(path, 8).filter((p) => distance(p, nearestOnPath(cut.outline, p)) < 0.01);
					const strays = kept.map((p) =>
						Math.abs(distance(p, nearestOnPath(stitched.path, p)) - stitched.allowance)
					);
					expect(kept.length, name).toBeGreaterThan(5);
					expect(Math.max(...strays), name).toBeLessThan(2 * KEPT);
				}
			}
		);
	}
);

/** A line run on straight at its start, or at its end, by 60 mm. */
const runOnBack = (path: Path): Path => pathReversed(runOn(pathReversed(path)));
const runOn = (path: Path): Path => {
	const direction = endDirection(path);
	if (!direction) throw new Error('the line has a length');
	return [path[0], ...path.slice(1), straight(pathEnd(path), moved(pathEnd(path), direction, mm(60)))];
};

describe('a hem turned up', () => {
	it.each([15, 30, 40])('by %i mm lies on the side that it is turned up against, on every block', (depth) => {
		for (const { name, lines } of PIECES) {
			const edges = halfPiece(lines, depth);
			const [, , , side, hem] = edges;
			const along = hem && startDirection(hem.path);
			if (!side || !along) throw new Error('the piece has six edges, and its hem a length');
			const corner = pathStart(hem.path);
			const below = (p: SheetPoint): number => (p.y - corner.y) * -along.dx + (p.x - corner.x) * along.dy;
			const hemLine = runOnBack(parallelPath(hem.path, mm(-depth)));
			const turnedUp = placesOn(cuttingLine(edges).outline, 40).filter(
				(place) =>
					below(place) > 0.001 &&
					distance(place, corner) < 2 * depth &&
					distance(place, nearestOnPath(hemLine, place)) > 0.02
			);
			expect(turnedUp.length, name).toBeGreaterThan(20);
			const sideLine = runOn(parallelPath(side.path, mm(-10)));
			const back = mirroring(corner, moved(corner, along, mm(1)));
			const strays = turnedUp.map((place) => {
				const image = movedBy(back, place);
				return distance(image, nearestOnPath(sideLine, image));
			});
			expect(Math.max(...strays), name).toBeLessThan(0.01);
		}
	});
});
