import { describe, expect, it } from 'vitest';
import type { Place } from '#shared/placement.ts';
import { at, between, type SheetPoint } from '#geometry/point.ts';
import { cubic, type CubicSegment, type Segment } from '#geometry/segment.ts';
import type { Path } from '#geometry/path.ts';
import { placementOfPath } from '#checker/placed.ts';
import { draftOf, mark, smallMethod } from '../drafting/small-method.ts';
import {
	answerOf,
	failing,
	findingOf,
	findingsOf,
	HERON_BACK,
	sentences,
	verdictOn,
	type Desk
} from './drafts.ts';

/**
 * A quarter circle of 100 mm about O: from A (0, 100) on the centre line, leaving straight across, to
 * B (100, 0), arriving straight up. Its handles lie 55.23 mm from its ends.
 */
const METHOD = smallMethod([
	mark('A', 'O', 'down', 'waist / 7.2'),
	mark('B', 'O', 'across', 'waist / 7.2'),
	{
		kind: 'curve',
		name: 'bend',
		label: 'a bend',
		rule: 'corner',
		through: [
			{ point: 'A', heading: 'across' },
			{ point: 'B', heading: 'up' }
		]
	}
]);
const QUARTER: Desk = { method: METHOD, draft: draftOf(METHOD), body: 'Sandpiper' };
const HANDLE = 100 * ((4 * (Math.SQRT2 - 1)) / 3);
const [A, B] = [at(0, 100), at(100, 0)];

const judged = (...segments: readonly Segment[]) => {
	const [first, ...rest] = segments;
	if (!first) throw new Error('nothing is drawn');
	return verdictOn(QUARTER, 'bend', placementOfPath([first, ...rest]));
};

/** The place `length` from a centre at an angle of so many degrees from straight across, toward down. */
const polar = (centre: SheetPoint, length: number, angle: number): SheetPoint =>
	at(
		centre.x + length * Math.cos((angle * Math.PI) / 180),
		centre.y + length * Math.sin((angle * Math.PI) / 180)
	);

/** The quarter with its handles in other places. */
const bend = (leaving = at(HANDLE, 100), arriving = at(100, HANDLE), from = A, to = B): CubicSegment =>
	cubic(from, leaving, arriving, to);

/** The two parts of a cubic, by de Casteljau's construction. */
const split = ({ from, leaving, arriving, to }: CubicSegment, t: number): [CubicSegment, CubicSegment] => {
	const [a, b, c] = [between(from, leaving, t), between(leaving, arriving, t), between(arriving, to, t)];
	const [d, e] = [between(a, b, t), between(b, c, t)];
	const middle = between(d, e, t);
	return [cubic(from, a, d, middle), cubic(middle, e, c, to)];
};

/** A curve that leaves and arrives as it should, and between keeps to a circle of another radius. */
const ring = (radius: number): readonly Segment[] => {
	const angles = [80, 75, 70, 65, 60, 55, 50, 45, 40, 35, 30, 25, 20, 15, 10];
	const places = [A, at(1, 100), ...angles.map((angle) => polar(at(0, 0), radius, angle)), at(100, 1), B];
	return places.slice(1).map((to, i) => ({ kind: 'straight', from: places[i] ?? A, to }));
};

describe('the right curve', () => {
	it('is right, and everything looked at is named', () => {
		const verdict = judged(bend());
		expect(verdict.answer).toBe('right');
		expect(findingsOf(verdict).map((each) => [each.aspect, each.note])).toEqual([
			['start', 'start'],
			['end', 'end'],
			['direction', 'direction:not-square'],
			['direction', 'direction:not-square'],
			['course', 'course'],
			['length', 'length:too-short']
		]);
	});

	it('is right drawn from its end to its start', () => {
		expect(judged(cubic(B, at(100, HANDLE), at(HANDLE, 100), A)).answer).toBe('right');
	});

	it('is right in more pieces than it needs, forwards and backwards', () => {
		const [first, second] = split(bend(), 0.3);
		const [third, fourth] = split(second, 0.6);
		expect(judged(first, second).answer).toBe('right');
		expect(judged(first, third, fourth).answer).toBe('right');
		const turned = [fourth, third, first].map((piece) =>
			cubic(piece.to, piece.arriving, piece.leaving, piece.from)
		);
		expect(judged(...turned).answer).toBe('right');
	});
});

describe('findings against head arithmetic', () => {
	it('the curve shifted 1 mm down: ends 1 off, course 1 off, nothing turned, as long as it should be', () => {
		const low = (point: SheetPoint): SheetPoint => at(point.x, point.y + 1);
		const verdict = judged(bend(low(at(HANDLE, 100)), low(at(100, HANDLE)), low(A), low(B)));
		expect(findingOf(verdict, 'start')).toMatchObject({ offBy: 1, across: 0, down: 1 });
		expect(findingOf(verdict, 'end')).toMatchObject({ offBy: 1, across: 0, down: 1 });
		const { away, down } = findingOf(verdict, 'course');
		expect(away).toBeCloseTo(1, 6);
		expect(down).toBeCloseTo(1, 2);
		expect(findingOf(verdict, 'length').by).toBeCloseTo(0, 6);
		for (const finding of findingsOf(verdict))
			if (finding.aspect === 'direction') expect(finding.turned).toBeCloseTo(0, 9);
	});

	it('a quarter of radius 104: 4 mm outside all along, and longer by a quarter of its circle', () => {
		const more = HANDLE * 1.04;
		const verdict = judged(bend(at(more, 104), at(104, more), at(0, 104), at(104, 0)));
		expect(failing(verdict)).toEqual(['start', 'end', 'course', 'length']);
		const { away, across, down, where } = findingOf(verdict, 'course');
		expect(away).toBeCloseTo(4, 1);
		expect(Math.hypot(across, down)).toBeCloseTo(away, 9);
		expect(Math.hypot(...where)).toBeCloseTo(104, 1);
		expect(findingOf(verdict, 'length').by).toBeCloseTo((4 * Math.PI) / 2, 2);
	});

	it('a handle of 100 mm turned 1 mm aside turns the curve by its arc tangent', () => {
		const verdict = judged(bend(at(HANDLE, 101)));
		const [leaving, arriving] = findingsOf(verdict).filter((each) => each.aspect === 'direction');
		expect(leaving).toMatchObject({ point: 'A', way: 'leaving' });
		expect(leaving?.turned).toBeCloseTo(Math.atan(1 / HANDLE), 12);
		expect(arriving).toMatchObject({ point: 'B', way: 'arriving' });
		expect(arriving?.turned).toBeCloseTo(0, 9);
	});

	it('a handle on the wrong side of its end turns the curve right round', () => {
		const [leaving] = findingsOf(judged(bend(at(-HANDLE, 100)))).filter(
			(each) => each.aspect === 'direction'
		);
		expect(leaving?.turned).toBeCloseTo(Math.PI, 9);
	});
});

describe('each finding alone', () => {
	it('an end off', () => {
		const verdict = judged(bend(undefined, at(100, HANDLE - 2.5), A, at(100, -2.5)));
		expect(failing(verdict)).toEqual(['end']);
		expect(sentences(verdict)).toEqual(['Its last end lies 2.5 mm too high.']);
	});

	it('the other end off', () => {
		const verdict = judged(bend(at(HANDLE + 2.5, 100), undefined, at(2.5, 100)));
		expect(failing(verdict)).toEqual(['start']);
		expect(sentences(verdict)).toEqual(['Its first end lies 2.5 mm too far out.']);
	});

	it.each([-1, 1])('not square at the centre line by more than 2 degrees (%d)', (way) => {
		const turned = (angle: number) => judged(bend(polar(A, HANDLE, way * angle)));
		expect(turned(1.95).answer).toBe('right');
		expect(failing(turned(2.05))).toEqual(['direction']);
		const verdict = turned(3);
		expect(failing(verdict)).toEqual(['direction']);
		expect(sentences(verdict)).toEqual(['It leaves A 3° off square; up to 2° is allowed there.']);
	});

	it.each([-1, 1])('off its direction elsewhere by more than 5 degrees (%d)', (way) => {
		const turned = (angle: number) => judged(bend(undefined, polar(B, HANDLE, 90 + way * angle)));
		expect(turned(4.95).answer).toBe('right');
		expect(failing(turned(5.05))).toEqual(['direction']);
		const verdict = turned(5.5);
		expect(failing(verdict)).toEqual(['direction']);
		expect(sentences(verdict)).toEqual(['It reaches B 5.5° off straight up; up to 5° is allowed there.']);
	});

	it('off its course in the middle, with ends, directions and length right', () => {
		const [first, rest] = split(bend(), 0.3);
		const [middle, last] = split(rest, 4 / 7);
		const [out, down] = [5.6 * Math.SQRT1_2, 5.6 * Math.SQRT1_2];
		const bulge = cubic(
			middle.from,
			at(middle.leaving.x + out, middle.leaving.y + down),
			at(middle.arriving.x + out, middle.arriving.y + down),
			middle.to
		);
		const verdict = judged(first, bulge, last);
		expect(failing(verdict)).toEqual(['course']);
		// Three quarters of what the handles were moved, at 45 degrees.
		const { away, across, down: lower } = findingOf(verdict, 'course');
		expect(away).toBeCloseTo(4.2, 2);
		expect(across).toBeCloseTo(4.2 * Math.SQRT1_2, 1);
		expect(lower).toBeCloseTo(4.2 * Math.SQRT1_2, 1);
		expect(sentences(verdict)).toEqual([
			'At its worst it runs 3 mm too far out, 3 mm too low, together 4.2 mm; up to 3 mm is allowed.'
		]);
	});

	it('too long, though it never strays 3 mm', () => {
		const verdict = judged(...ring(102.8));
		expect(failing(verdict)).toEqual(['length']);
		const { by, note } = findingOf(verdict, 'length');
		expect(note).toBe('length:too-long');
		expect(sentences(verdict)).toEqual([
			`It is ${Math.round(by * 10) / 10} mm too long; up to 3 mm is allowed.`
		]);
	});

	it('too short, though it never strays 3 mm', () => {
		const verdict = judged(...ring(97.2));
		expect(failing(verdict)).toEqual(['length']);
		const { by, note } = findingOf(verdict, 'length');
		expect(note).toBe('length:too-short');
		expect(sentences(verdict)).toEqual([
			`It is ${Math.round(-by * 10) / 10} mm too short; up to 3 mm is allowed.`
		]);
	});

	it('a straight line between the right ends is short, off its course, and turned at both', () => {
		const verdict = judged({ kind: 'straight', from: A, to: B });
		expect(failing(verdict)).toEqual(['direction', 'direction', 'course', 'length']);
		expect(sentences(verdict)).toContain('It leaves A 45° off square; up to 2° is allowed there.');
		// The chord of a quarter lies 100 - 70.71 mm inside it.
		expect(findingOf(verdict, 'course').away).toBeCloseTo(100 - 50 * Math.SQRT2, 1);
		expect(findingOf(verdict, 'length').by).toBeCloseTo(100 * Math.SQRT2 - 157.10167, 3);
	});

	it('a loop on the way is off its course and too long', () => {
		const loop = judged(bend(), cubic(B, at(160, -60), at(160, 60), B));
		expect(failing(loop)).toContain('course');
		expect(failing(loop)).toContain('length');
	});
});

describe('a curve of two pieces: the armhole of Heron, S to M to U', () => {
	const answer = answerOf(HERON_BACK, 'armhole');
	const pieces = HERON_BACK.draft.lines['armhole']?.path ?? [];
	const [upper, lower] = pieces;
	if (answer.kind !== 'line' || upper?.kind !== 'cubic' || lower?.kind !== 'cubic')
		throw new Error('the armhole is not a curve of two pieces');
	const M: Place = [upper.to.x, upper.to.y];
	const drawn = (...path: Path) => verdictOn(HERON_BACK, 'armhole', placementOfPath(path));

	it('is judged at all of its points', () => {
		const verdict = verdictOn(HERON_BACK, 'armhole', answer);
		expect(verdict.answer).toBe('right');
		const directions = findingsOf(verdict).flatMap((each) =>
			each.aspect === 'direction' ? [`${each.way} ${each.point}`] : []
		);
		expect(directions).toEqual(['leaving S', 'arriving M', 'leaving M', 'arriving U']);
	});

	it('with a kink at M is told so by name', () => {
		expect(M).toEqual([182, 131]);
		const size = lower.leaving.y - lower.from.y;
		const kinked = drawn(upper, { ...lower, leaving: polar(lower.from, size, 84) });
		expect(failing(kinked)).toEqual(['direction']);
		expect(sentences(kinked)).toEqual(['It leaves M 6° off straight down; up to 5° is allowed there.']);
	});

	it('where the rule asks for square to the shoulder, the sentence says square', () => {
		const { from, leaving } = upper;
		const [x, y] = [leaving.x - from.x, leaving.y - from.y];
		const off = (Math.atan2(y, x) * 180) / Math.PI + 5.5;
		const turned = drawn({ ...upper, leaving: polar(from, Math.hypot(x, y), off) }, lower);
		expect(failing(turned)).toEqual(['direction']);
		expect(sentences(turned)).toEqual(['It leaves S 5.5° off square; up to 5° is allowed there.']);
	});

	it('begun 4 mm off, is judged at M all the same', () => {
		const verdict = drawn({ ...upper, from: at(upper.from.x + 4, upper.from.y) }, lower);
		const directions = findingsOf(verdict).flatMap((each) =>
			each.aspect === 'direction' ? [`${each.way} ${each.point}`] : []
		);
		expect(directions).toEqual(['leaving S', 'arriving M', 'leaving M', 'arriving U']);
		expect(failing(verdict)).toContain('start');
	});

	it('is the same curve in more pieces', () => {
		const [first, second] = split(lower, 0.5);
		expect(drawn(upper, first, second).answer).toBe('right');
		const [before, after] = split(upper, 0.4);
		expect(drawn(before, after, lower).answer).toBe('right');
		expect(drawn(before, after, first, second).answer).toBe('right');
	});

	it('in one piece is judged at its two ends', () => {
		const verdict = drawn(cubic(upper.from, upper.leaving, lower.arriving, lower.to));
		const directions = findingsOf(verdict).flatMap((each) =>
			each.aspect === 'direction' ? [`${each.way} ${each.point}`] : []
		);
		expect(directions).toEqual(['leaving S', 'arriving U']);
		expect(verdict.answer).toBe('wrong');
	});
});

describe('a curve that starts along its chord: the hip of Heron, V to J', () => {
	const [hip] = HERON_BACK.draft.lines['hip']?.path ?? [];
	if (hip?.kind !== 'cubic') throw new Error('the hip is not a curve');
	const { from, leaving } = hip;
	const [x, y] = [leaving.x - from.x, leaving.y - from.y];
	const turnedBy = (angle: number) => {
		const handle = polar(from, Math.hypot(x, y), (Math.atan2(y, x) * 180) / Math.PI + angle);
		return verdictOn(HERON_BACK, 'hip', placementOfPath([{ ...hip, leaving: handle }]));
	};

	it('is judged by 5 degrees there, and told of its course', () => {
		expect(turnedBy(4.9).answer).toBe('right');
		const verdict = turnedBy(-5.1);
		expect(failing(verdict)).toEqual(['direction']);
		expect(sentences(verdict)).toEqual(['It leaves V 5.1° off its course; up to 5° is allowed there.']);
	});
});

describe('two pieces that meet elsewhere than the rule’s', () => {
	/** A half circle of 100 mm in two quarters, from (0, 100) by (100, 0) to (0, -100). */
	const method = smallMethod([
		mark('A', 'O', 'down', 'waist / 7.2'),
		mark('B', 'O', 'across', 'waist / 7.2'),
		mark('C', 'O', 'up', 'waist / 7.2'),
		{
			kind: 'curve',
			name: 'bow',
			label: 'a bow',
			rule: 'corner',
			through: [
				{ point: 'A', heading: 'across' },
				{ point: 'B', heading: 'up' },
				{ point: 'C', heading: 'in' }
			]
		}
	]);
	const half: Desk = { method, draft: draftOf(method), body: 'Sandpiper' };

	/** An arc about O from one angle to another, as one cubic with the handle of its angle, 4/3 tan(angle / 4). */
	const arc = (from: number, to: number): CubicSegment => {
		const handle = 100 * (4 / 3) * Math.tan((((from - to) / 4) * Math.PI) / 180);
		const [start, end] = [polar(at(0, 0), 100, from), polar(at(0, 0), 100, to)];
		return cubic(start, polar(start, handle, from - 90), polar(end, handle, to + 90), end);
	};

	it('are as right: the same half circle, cut at 30 degrees', () => {
		const placement = placementOfPath([arc(90, 30), arc(30, -90)]);
		expect(sentences(verdictOn(half, 'bow', placement))).toEqual([]);
		expect(verdictOn(half, 'bow', placement).answer).toBe('right');
	});

	it('cut where the rule cuts, they are judged there', () => {
		const verdict = verdictOn(half, 'bow', placementOfPath([arc(90, 0), arc(0, -90)]));
		expect(findingsOf(verdict).filter(({ aspect }) => aspect === 'direction')).toHaveLength(4);
	});
});
