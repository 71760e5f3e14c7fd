import { describe, expect, it } from 'vitest';
import { readBody, type Body } from '#shared/body.ts';
import { mm } from '#shared/units.ts';
import type { PieceRule } from '#garment/garment.ts';
import type { PieceEdge } from '#garment/piece.ts';
import { draftNamed, sewnFor } from '#garment/sewn.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { pathEnd, pathSamples, pathStart, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { garments } from '../garment/garment-files.ts';
import { figureOf, surveyRows } from './survey-bodies.ts';

/** One body in so many. */
const EVERY = 4;
/** How far from straight the seam across a sewn dart may run, in degrees. */
const STRAIGHT = 1.5;
/** Places along a curve that show which way it runs. */
const NEAR = mm(0.05);
/** A hundredth of a millimetre: both legs are one length. */
const ALIKE = 0.01;

const BODIES: readonly Body[] = (['women', 'men'] as const)
	.flatMap((sample) => surveyRows(sample).map(figureOf))
	.filter((_, i) => i % EVERY === 0)
	.map((figure) => readBody({ ...figure }));

interface Folded {
	readonly of: string;
	readonly turn: number;
	readonly legs: number;
}

const same = (a: SheetPoint, b: SheetPoint): boolean => distance(a, b) < 1e-6;
const way = (from: SheetPoint, to: SheetPoint): number => Math.atan2(to.y - from.y, to.x - from.x);
/** The way in which a path leaves its start, by two places that lie near each other. */
const leaves = (path: Path): number => {
	const [first, second] = pathSamples(path, NEAR);
	if (!first || !second) throw new Error('a path has two places');
	return way(first, second);
};
const backwards = (path: Path): number => {
	const places = pathSamples(path, NEAR);
	const [last, before] = [places.at(-1), places.at(-2)];
	if (!last || !before) throw new Error('a path has two places');
	return way(last, before);
};
/** The angle between two ways, in degrees. */
const between = (a: number, b: number): number => {
	const turn = Math.abs((((a - b) % (2 * Math.PI)) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
	return (Math.abs(turn) * 180) / Math.PI;
};

/** Where the legs of the dart with this mouth meet: the tip to which it is sewn. */
const tipOf = (rule: PieceRule, { lines }: Draft, mouth: Path): SheetPoint => {
	const [first, last] = [pathStart(mouth), pathEnd(mouth)];
	const legs = rule.darts.map(({ legs: names }) => names.flatMap((name) => lines[name]?.path ?? []));
	const ends = legs
		.map((leg) => leg.flatMap(({ from, to }) => [from, to]))
		.find((places) => places.some((each) => same(each, first)) && places.some((each) => same(each, last)));
	const tip = ends?.find((each) => !same(each, first) && !same(each, last));
	if (!tip) throw new Error(`${rule.key} has a mouth without a dart`);
	return tip;
};

/** A dart sewn shut: the angles of the cloth on both sides of its legs make up the seam across it. */
const foldedAt = (of: string, before: PieceEdge, mouth: Path, after: PieceEdge, tip: SheetPoint): Folded => {
	const [first, last] = [pathStart(mouth), pathEnd(mouth)];
	const angle =
		between(backwards(before.path), way(first, tip)) + between(leaves(after.path), way(last, tip));
	return { of, turn: Math.abs(180 - angle), legs: Math.abs(distance(first, tip) - distance(last, tip)) };
};

const dartsOf = (id: string): readonly Folded[] => {
	const garment = garments().find((each) => each.id === id);
	if (!garment) throw new Error(`there is no ${id}`);
	return BODIES.flatMap((body, n) => {
		const work = sewnFor(garment, body);
		if (work.kind === 'refused') return [];
		return garment.pieces.flatMap((rule) => {
			const all = work.sewn.edges[rule.key] ?? [];
			return all.flatMap((edge, i) => {
				const [before, after] = [all.at(i - 1), all[(i + 1) % all.length]];
				if (edge.kind !== 'dart' || !before || !after) return [];
				const tip = tipOf(rule, draftNamed(work.sewn.drafts, rule.draft), edge.path);
				return [foldedAt(`${rule.key}.${edge.name} of ${String(n)}`, before, edge.path, after, tip)];
			});
		});
	});
};

describe('a sewn dart', () => {
	it.each([
		['body-block', 60],
		['sleeved-bodice', 60],
		['straight-skirt', 400]
	])('%s: the seam runs straight across it, and both legs are one length', (id, least) => {
		const darts = dartsOf(id);
		expect(darts.length).toBeGreaterThan(least);
		expect(darts.filter(({ turn }) => turn > STRAIGHT)).toEqual([]);
		expect(darts.filter(({ legs }) => legs > ALIKE)).toEqual([]);
	});
});
