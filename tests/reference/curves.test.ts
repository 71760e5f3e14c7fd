import { Bezier } from 'bezier-js';
import { describe, expect, it } from 'vitest';
import { CORNER_SHARE, cornerCurve } from '#geometry/corner-curve.ts';
import { crossings } from '#geometry/kernel/crossings.ts';
import { polyline } from '#geometry/path.ts';
import { at, between, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic, segmentLength, segmentPoint, type CubicSegment } from '#geometry/segment.ts';
import { numbersOf, PUBLISHED } from './published.ts';
import { chances } from './random-bodies.ts';

/** A quarter of the unit circle, drawn as the corner rule draws it. */
const QUARTER = cornerCurve(
	{ point: at(1, 0), heading: { dx: 0, dy: 1 } },
	{ point: at(0, 1), heading: { dx: -1, dy: 0 } }
);
const ORIGIN = at(0, 0);

/** The least and greatest distance of a curve from the circle of radius 1 about the origin. */
const radialErrors = (curve: CubicSegment): { least: number; greatest: number } => {
	const errors = Array.from(
		{ length: 20_001 },
		(_, i) => distance(ORIGIN, segmentPoint(curve, i / 20_000)) - 1
	);
	return { least: Math.min(...errors), greatest: Math.max(...errors) };
};

describe('the circle constant (shared/reference: closed form 4 (sqrt 2 - 1) / 3)', () => {
	it('is the share that the corner rule uses', () => {
		expect(CORNER_SHARE).toBeCloseTo(PUBLISHED.kappa, 15);
	});

	it('makes a quarter that strays from the circle by 0.027 % outward and not at all inward', () => {
		const { least, greatest } = radialErrors(QUARTER);
		expect(greatest).toBeCloseTo(PUBLISHED.quarter_bezier_kappa.max_radial_error, 9);
		expect(least).toBeCloseTo(PUBLISHED.quarter_bezier_kappa.min_radial_error, 9);
		expect(segmentLength(QUARTER)).toBeCloseTo(PUBLISHED.quarter_bezier_kappa.arc_length, 9);
	});

	it('is not the constant that splits the error both ways', () => {
		const share = 0.551915024494;
		const other = cubic(at(1, 0), at(1, share), at(share, 1), at(0, 1));
		const published = PUBLISHED['quarter_bezier_c_0.551915024494'];
		const { least, greatest } = radialErrors(other);
		expect(greatest).toBeCloseTo(published.max_radial_error, 9);
		expect(least).toBeCloseTo(published.min_radial_error, 9);
		expect(segmentLength(other)).toBeCloseTo(published.arc_length, 9);
	});
});

describe('arcs with the handle of their angle, 4/3 tan(angle / 4)', () => {
	it.each(Object.entries(PUBLISHED.arc_handle_general))(
		'%s degrees: the curve keeps to the circle',
		(degrees, handle) => {
			const angle = (Number(degrees) * Math.PI) / 180;
			const end = at(Math.cos(angle), Math.sin(angle));
			const arc = cubic(at(1, 0), at(1, handle), at(end.x + handle * end.y, end.y - handle * end.x), end);
			expect(handle).toBeCloseTo((4 / 3) * Math.tan(angle / 4), 12);
			// The middle of such an arc lies on the circle exactly; the rest strays outward with the angle's sixth power.
			expect(distance(ORIGIN, segmentPoint(arc, 0.5))).toBeCloseTo(1, 12);
			expect(radialErrors(arc).greatest).toBeLessThan(0.0004 * (Number(degrees) / 90) ** 6);
			expect(segmentLength(arc) / angle).toBeCloseTo(1, Number(degrees) > 90 ? 1 : 3);
		}
	);
});

/** The same curve with one more handle: a quadratic as a cubic. */
const raised = (from: SheetPoint, handle: SheetPoint, to: SheetPoint): CubicSegment =>
	cubic(from, between(from, handle, 2 / 3), between(to, handle, 2 / 3), to);

describe('parabola arcs of chord b and height h (closed form)', () => {
	it.each(Object.entries(PUBLISHED.parabola_arc_chord_b_height_h))('%s is %d long', (key, length) => {
		const { b = NaN, h = NaN } = numbersOf(key);
		// A quadratic's handle stands twice as high as its curve.
		expect(segmentLength(raised(at(0, 0), at(b / 2, 2 * h), at(b, 0)))).toBeCloseTo(length, 6);
	});
});

/** A quarter of an ellipse as many short cubics, each with the handle of its own angle. */
const quarterEllipse = (a: number, b: number, pieces: number): number => {
	const step = Math.PI / 2 / pieces;
	const handle = (4 / 3) * Math.tan(step / 4);
	const place = (angle: number): SheetPoint => at(a * Math.cos(angle), b * Math.sin(angle));
	const toward = (angle: number, size: number): SheetPoint => {
		const { x, y } = place(angle);
		return at(x - size * a * Math.sin(angle), y + size * b * Math.cos(angle));
	};
	let length = 0;
	for (let i = 0; i < pieces; i++) {
		const [from, to] = [i * step, (i + 1) * step];
		length += segmentLength(cubic(place(from), toward(from, handle), toward(to, -handle), place(to)));
	}
	return length;
};

describe('ellipses (series and quadrature)', () => {
	it.each(Object.entries(PUBLISHED.quarter_ellipse_arc))('a quarter with %s is %d long', (key, length) => {
		const { a = NaN, b = NaN } = numbersOf(key);
		expect(quarterEllipse(a, b, 16)).toBeCloseTo(length, 7);
	});

	it.each(Object.entries(PUBLISHED.ellipse_perimeter))('all round with %s', (key, { series }) => {
		const { a = NaN, b = NaN } = numbersOf(key);
		expect(4 * quarterEllipse(a, b, 16)).toBeCloseTo(series, 6);
	});
});

// bezier-js is an independent general-purpose library; it too works lengths by quadrature, with 24 nodes and no halving.
describe('against bezier-js', () => {
	const chance = chances(1988);
	const spot = (): SheetPoint => at(chance() * 400, chance() * 400);
	const other = ({ from, leaving, arriving, to }: CubicSegment): Bezier =>
		new Bezier([from, leaving, arriving, to]);
	/** Its length in short pieces, where 24 nodes are plenty even beside a cusp. */
	const otherLength = (curve: Bezier): number => {
		let length = 0;
		for (let i = 0; i < 64; i++) length += curve.split(i / 64, (i + 1) / 64).length();
		return length;
	};

	it('the lengths of 300 random cubics agree to a thousandth of a millimetre', () => {
		for (let i = 0; i < 300; i++) {
			const curve = cubic(spot(), spot(), spot(), spot());
			expect(Math.abs(segmentLength(curve) - otherLength(other(curve)))).toBeLessThan(1e-3);
		}
	});

	it('so do those of cubics beside a cusp: handles crossed, a hair away from standing still', () => {
		for (let i = 0; i < 100; i++) {
			const [width, height, hair] = [50 + chance() * 200, 20 + chance() * 200, (chance() - 0.5) * 2];
			const curve = cubic(at(0, 0), at(width + hair, height), at(-hair, height), at(width, 0));
			expect(Math.abs(segmentLength(curve) - otherLength(other(curve)))).toBeLessThan(1e-3);
		}
	});

	it('places at a parameter agree', () => {
		for (let i = 0; i < 100; i++) {
			const curve = cubic(spot(), spot(), spot(), spot());
			const t = chance();
			const { x, y } = other(curve).get(t);
			expect(distance(segmentPoint(curve, t), at(x, y))).toBeLessThan(1e-9);
		}
	});

	it('curves cross straight lines where it says', () => {
		let met = 0;
		for (let i = 0; i < 200; i++) {
			const curve = cubic(spot(), spot(), spot(), spot());
			const [p1, p2] = [spot(), spot()];
			const expected = other(curve)
				.lineIntersects({ p1, p2 })
				.map((t) => segmentPoint(curve, t));
			const found = crossings([curve], polyline(p1, p2));
			expect(found).toHaveLength(expected.length);
			for (const place of found) {
				expect(Math.min(...expected.map((each) => distance(each, place)))).toBeLessThan(1e-3);
				met += 1;
			}
		}
		expect(met).toBeGreaterThan(50);
	});
});
