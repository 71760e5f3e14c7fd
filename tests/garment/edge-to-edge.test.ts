import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { edgeToEdge, type EdgeToEdge } from '#garment/edge-to-edge.ts';
import type { Pattern } from '#garment/pattern.ts';
import type { PieceEdge } from '#garment/piece.ts';
import { arcPath } from '#geometry/arc.ts';
import { movedBy, pathMovedBy } from '#geometry/motion.ts';
import { pathEnd, pathStart, polyline, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { segmentPoint } from '#geometry/segment.ts';
import { radians } from '#shared/units.ts';
import { expectDirection, expectPlace } from '../geometry/close.ts';
import { bodyOf, garmentOf, garments, madeFor } from './garment-files.ts';
import { edgeOf, polygon, rectangle, seamOf, sewn } from './hand-made.ts';

/** A seam that is there, laid. */
const laid = (pattern: Pick<Pattern, 'pieces' | 'seams' | 'runs'>, seam: string): EdgeToEdge => {
	const found = edgeToEdge(pattern, seam);
	if (!found) throw new Error(`there is no seam "${seam}"`);
	return found;
};

/** Where a piece's place lies once it is laid. */
const laidAt = ({ laid: pieces }: EdgeToEdge, key: string, place: SheetPoint): SheetPoint | undefined => {
	const found = pieces.find(({ piece }) => piece.key === key);
	return found && movedBy(found.motion, place);
};

describe('two rectangles', () => {
	const edges = { front: rectangle(0, 0, 100, 300), back: rectangle(500, 40, 120, 300) };

	it('of which both right sides are sewn: the second is mirrored on the seam', () => {
		const both = laid(sewn(edges, [seamOf('side', ['front.right'], ['back.right'])]), 'side');
		// The back's right side lay at 620, from 40 down; its left side at 500 comes to lie 120 beyond the seam.
		expectPlace(laidAt(both, 'back', at(620, 40)), 100, 0);
		expectPlace(laidAt(both, 'back', at(500, 40)), 220, 0);
		expectPlace(laidAt(both, 'back', at(500, 340)), 220, 300);
		expectPlace(laidAt(both, 'front', at(0, 0)), 0, 0);
		expectPlace(both.secondEnd, 100, 300);
		expect(both.gap?.flat).toBeLessThan(1e-9);
	});

	it('of which a right and a left side are sewn: nothing is mirrored', () => {
		const rule = seamOf('side', ['front.right'], ['back.left'], { turned: true });
		const both = laid(sewn(edges, [rule]), 'side');
		expectPlace(laidAt(both, 'back', at(500, 40)), 100, 0);
		expectPlace(laidAt(both, 'back', at(620, 40)), 220, 0);
	});

	it('of different lengths begin together, and their ends lie as far apart as the lengths differ', () => {
		const uneven = { front: rectangle(0, 0, 100, 300), back: rectangle(0, 0, 120, 312) };
		const { firstEnd, secondEnd, report, gap } = laid(
			sewn(uneven, [seamOf('side', ['front.right'], ['back.right'])]),
			'side'
		);
		expectPlace(firstEnd, 100, 300);
		expectPlace(secondEnd, 100, 312);
		expect(report.difference).toBe(12);
		expect(gap?.flat).toBeCloseTo(12, 6);
	});

	it('have notches that meet, each running into its own piece', () => {
		const { laid: pieces } = laid(sewn(edges, [seamOf('side', ['front.right'], ['back.right'])]), 'side');
		const [front, back] = pieces.map(({ notches }) => notches[0]);
		expectPlace(front?.at, 100, 150);
		expectPlace(back?.at, 100, 150);
		expectDirection(front?.inward, -1, 0);
		expectDirection(back?.inward, 1, 0);
		expect([front?.style, back?.style]).toEqual(['single', 'double']);
	});

	it('of an unknown seam, or one of which a body lacks a side, are not laid', () => {
		const pattern = sewn(edges, [seamOf('side', ['front.right'], ['back.dart'])]);
		expect(edgeToEdge(pattern, 'hem')).toBeUndefined();
		expect(edgeToEdge(pattern, 'side')).toBeUndefined();
	});
});

/** A rectangle of 200 by 100 whose upper edge is an arc over 200, with its middle `rise` higher than its ends, or lower for a negative one. */
const arched = (rise: number, lower: readonly PieceEdge[]): readonly PieceEdge[] => {
	const radius = (100 ** 2 + rise ** 2) / (2 * Math.abs(rise));
	const half = Math.asin(100 / radius) * Math.sign(rise);
	const arc = arcPath(at(100, Math.sign(rise) * (radius - Math.abs(rise))), at(0, 0), radians(2 * half));
	return [edgeOf('top', arc), ...lower.slice(1)];
};
const low = rectangle(0, 0, 200, 100);

describe('two curves', () => {
	const gapOf = (first: number, second: number) =>
		laid(
			sewn({ front: arched(first, low), back: arched(second, low) }, [
				seamOf('s', ['front.top'], ['back.top'])
			]),
			's'
		).gap;

	it('the arcs are as they should be', () => {
		const [top] = arched(12, low);
		const path = top?.path ?? polyline(at(0, 0), at(0, 0));
		expectPlace(pathEnd(path), 200, 0);
		expectPlace(segmentPoint(path[0], path.length === 1 ? 0.5 : 1), 100, -12, path.length === 1 ? 3 : 6);
	});

	it('that are alike, both outward: they part by both rises laid flat, and are one shape laid over each other', () => {
		const gap = gapOf(12, 12);
		expect(gap?.flat).toBeCloseTo(24, 2);
		expect(gap?.shape).toBeLessThan(1e-6);
	});

	it('of which one goes out where the other goes in: they lie on each other', () => {
		const gap = gapOf(12, -12);
		expect(gap?.flat).toBeLessThan(1e-6);
		expect(gap?.shape).toBeLessThan(1e-6);
	});

	it('that differ: by the difference of their rises', () => {
		expect(gapOf(12, -9)?.shape).toBeCloseTo(3, 1);
		expect(gapOf(12, 9)?.shape).toBeCloseTo(3, 1);
		expect(gapOf(12, 9)?.flat).toBeCloseTo(21, 1);
	});
});

describe('chains', () => {
	it('back and front lie side by side along a band, in the order in which they are sewn to it', () => {
		const edges = {
			back: rectangle(0, 0, 100, 200),
			front: rectangle(0, 0, 90, 200),
			band: rectangle(0, 0, 190, 30)
		};
		const waist = seamOf('waist', ['back.bottom', 'front.bottom'], ['band.top']);
		const both = laid(sewn(edges, [waist, seamOf('side', ['front.right'], ['back.right'])]), 'waist');
		expect(both.laid.map(({ piece, side }) => `${piece.key} ${side}`)).toEqual([
			'back first',
			'front first',
			'band second'
		]);
		// The band lies as drafted; back and front stand on it, their side seams at 100, the front mirrored.
		expectPlace(laidAt(both, 'band', at(0, 0)), 0, 0);
		expectPlace(laidAt(both, 'back', at(0, 200)), 0, 0);
		expectPlace(laidAt(both, 'back', at(100, 200)), 100, 0);
		expectPlace(laidAt(both, 'back', at(100, 0)), 100, -200);
		expectPlace(laidAt(both, 'front', at(90, 200)), 100, 0);
		expectPlace(laidAt(both, 'front', at(0, 200)), 190, 0);
	});

	it('a piece on the fold is laid with its other half', () => {
		const edges = {
			front: polygon([0, 0, 'top'], [90, 0, 'side'], [90, 200, 'bottom'], [0, 200, 'centre', 'fold']),
			band: rectangle(0, 0, 180, 30)
		};
		const rule = seamOf('waist', ['front.top', 'front.top'], ['band.bottom']);
		const { laid: pieces } = laid(sewn(edges, [rule]), 'waist');
		expect(pieces.map(({ otherHalf }) => otherHalf)).toEqual([false, true, false]);
		const [half, other] = pieces.map(({ motion }) => movedBy(motion, at(0, 0)));
		// Both halves meet at the fold, in the middle of the band.
		expectPlace(half, 90, 30);
		expectPlace(other, 90, 30);
	});
});

describe('the ends of a seam', () => {
	const runs = { start: 'the top', end: 'the hem' };
	const drop = 100 * Math.tan((10 * Math.PI) / 180);
	const edges = {
		front: rectangle(0, 0, 100, 200),
		back: polygon([0, 0, 'top'], [100, 0, 'right'], [100, 200, 'hem'], [0, 200 + drop, 'left'])
	};
	const both = laid(sewn(edges, [seamOf('side', ['front.right'], ['back.right'], { runs })]), 'side');

	it('each have their run, their place, and what comes to the seam there from both sides', () => {
		expect(both.ends.map(({ end, run }) => `${end}: ${english.words.garments.run(run)}`)).toEqual([
			'start: the top',
			'end: the hem'
		]);
		const [top, hem] = both.ends;
		expectPlace(top?.at, 100, 0);
		expectDirection(top?.along, 0, 1);
		expectPlace(hem?.at, 100, 200);
		expectDirection(hem?.along, 0, -1);
	});

	it('show a planted corner of 10 degrees', () => {
		const [, hem] = both.ends;
		expect(((hem?.run.corner ?? 0) * 180) / Math.PI).toBeCloseTo(10, 9);
		const [first, second] = (hem?.sides ?? []).map(({ crossing }) => crossing);
		// The front's hem runs level to the seam, and the back's goes down from it by 10 degrees.
		expectPlace(first && pathStart(first), 100, 200);
		expectPlace(second && pathStart(second), 100, 200);
		expectPlace(second && pathEnd(second), 200, 200 + drop);
	});
});

/** How far apart two lines lie at the same parameters: nothing where they are one line. */
const apartAlike = (first: Path, second: Path): number =>
	Math.max(
		...first.flatMap((segment, i) =>
			[0, 0.25, 0.5, 0.75, 1].map((t) => {
				const other = second[i];
				return other ? distance(segmentPoint(segment, t), segmentPoint(other, t)) : Infinity;
			})
		)
	);

describe('the dress', () => {
	const pattern = madeFor(garmentOf('course-dress'), bodyOf('heron'));

	it.each(['shoulder', 'side', 'frontNeckline', 'backNeckline', 'bandShoulder'])(
		'%s: the two lie on each other within a millionth of a millimetre',
		(seam) => {
			const { laid: pieces, firstEnd, secondEnd } = laid(pattern, seam);
			const [first, second] = pieces.map(({ lines }) => lines[0]);
			if (!first || !second) throw new Error('both sides have a line');
			expect(apartAlike(first, second)).toBeLessThan(1e-6);
			expect(distance(firstEnd, secondEnd)).toBeLessThan(1e-6);
		}
	);

	it('both skirt sides are one curve, laid one over the other', () => {
		const { gap } = laid(pattern, 'skirtSide');
		expect(gap?.shape).toBeLessThan(1e-6);
	});

	it('bodice and skirt have waists of one length and two shapes', () => {
		const { gap, firstEnd, secondEnd } = laid(pattern, 'frontWaist');
		expect(gap?.shape).toBeGreaterThan(1);
		expect(distance(firstEnd, secondEnd)).toBeGreaterThan(0);
	});
});

describe.each(garments())('$name', (garment) => {
	const pattern = madeFor(garment, bodyOf('heron'));

	it.each(pattern.seams)(
		'$name: pieces keep their size, begin together, and their notches meet in number',
		({ name }) => {
			const both = laid(pattern, name);
			for (const { piece, motion } of both.laid) {
				const { a, b, c, d } = motion;
				expect(Math.abs(a * d - b * c)).toBeCloseTo(1, 9);
				const outline = pathMovedBy(motion, piece.outline);
				expect(distance(pathStart(outline), pathEnd(outline))).toBeLessThan(1e-6);
			}
			const sideOf = (side: 'first' | 'second') => both.laid.filter((each) => each.side === side);
			const starts = (['first', 'second'] as const).map((side) => sideOf(side)[0]?.lines[0]);
			const [one, other] = starts.map((line) => (line ? pathStart(line) : at(0, 0)));
			expect(distance(one ?? at(0, 0), other ?? at(1, 1))).toBeLessThan(1e-6);
			if (both.laid.length > 2) return;
			const counts = (['first', 'second'] as const).map(
				(side) => sideOf(side).flatMap(({ notches }) => notches).length
			);
			expect(counts[0]).toBe(counts[1]);
		}
	);
});
