import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { mm } from '#shared/units.ts';
import { flattened } from '#geometry/flatten.ts';
import type { Path } from '#geometry/path.ts';
import { segmentPoint, type CubicSegment } from '#geometry/segment.ts';
import { garmentOf, madeFor } from '../garment/garment-files.ts';

const WITHIN = mm(0.05);
/** Places along a curve by which its chords are judged. */
const FINE = 800;

interface Spot {
	readonly x: number;
	readonly y: number;
}

/** How far a place lies from the chord between two others. */
const fromChord = ({ x, y }: Spot, a: Spot, b: Spot): number => {
	const whole = (b.x - a.x) ** 2 + (b.y - a.y) ** 2 || 1;
	const share = Math.min(1, Math.max(0, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / whole));
	return Math.hypot(x - a.x - share * (b.x - a.x), y - a.y - share * (b.y - a.y));
};

/** Places of a curve one after the other, with how far along it each lies, by short chords. */
const finely = (curve: CubicSegment): readonly (Spot & { readonly along: number })[] => {
	let along = 0;
	let before = segmentPoint(curve, 0);
	return Array.from({ length: FINE + 1 }, (_, i) => {
		const place = segmentPoint(curve, i / FINE);
		along += Math.hypot(place.x - before.x, place.y - before.y);
		before = place;
		return { x: place.x, y: place.y, along };
	});
};

/** The error of a curve's chords of equal length, so many of them. */
const evenError = (places: readonly (Spot & { readonly along: number })[], parts: number): number => {
	const whole = places.at(-1)?.along ?? 0;
	const ends = Array.from({ length: parts + 1 }, (_, i) => {
		const index = places.findIndex(({ along }) => along >= (whole * i) / parts - 1e-9);
		return index < 0 ? places.length - 1 : index;
	});
	let most = 0;
	for (let part = 0; part < parts; part++) {
		const [from = 0, to = 0] = [ends[part], ends[part + 1]];
		const [a, b] = [places[from], places[to]];
		for (const place of places.slice(from, to)) if (a && b) most = Math.max(most, fromChord(place, a, b));
	}
	return most;
};

/** Points of a whole outline at one step for all of its curves, the longest that keeps the error; corners and ends are kept. */
const uniformCount = (outline: Path): number => {
	const curves = outline.flatMap((segment) => (segment.kind === 'cubic' ? [finely(segment)] : []));
	const parts = (step: number): readonly number[] =>
		curves.map((places) => Math.max(1, Math.ceil((places.at(-1)?.along ?? 0) / step)));
	let [good, bad] = [0.5, 2000];
	for (let i = 0; i < 16; i++) {
		const step = Math.sqrt(good * bad);
		if (parts(step).every((count, c) => evenError(curves[c] ?? [], count) <= WITHIN)) good = step;
		else bad = step;
	}
	return 1 + outline.length - curves.length + parts(good).reduce((sum, count) => sum + count, 0);
};

/** The stitching and the cutting lines of the dress. */
const outlinesFor = (body: Body): readonly Path[] =>
	madeFor(garmentOf('course-dress'), body).pieces.flatMap(({ outline, cutting }) => [
		outline,
		cutting.outline
	]);
const DRESSES = DEMO_BODIES.map(({ body }) => ({ body, outlines: outlinesFor(body) }));

describe.each(DRESSES)('the outlines of the dress for $body.name', ({ outlines }) => {
	it('flattened, no place of a curve is further than 0.05 mm from its chord', () => {
		for (const outline of outlines) {
			const chords = flattened(outline, WITHIN);
			for (const segment of outline) {
				if (segment.kind !== 'cubic') continue;
				// One look at the furthest: asking a hundred thousand times took longer than the work.
				let most = 0;
				for (const place of finely(segment)) {
					let off = Infinity;
					for (let i = 1; i < chords.length; i++) {
						const [from, to] = [chords[i - 1], chords[i]];
						if (from && to) off = Math.min(off, fromChord(place, from, to));
					}
					most = Math.max(most, off);
				}
				expect(most).toBeLessThanOrEqual(WITHIN + 1e-6);
			}
		}
	});
});

it('outlines have at most half of the points that uniform sampling needs for the same error, over all bodies', () => {
	const outlines = DRESSES.flatMap((each) => each.outlines);
	const sum = (count: (outline: Path) => number): number =>
		outlines.reduce((all, outline) => all + count(outline), 0);
	const share = sum((outline) => flattened(outline, WITHIN).length) / sum(uniformCount);
	expect(share).toBeLessThanOrEqual(0.5);
});
