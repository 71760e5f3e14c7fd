import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { diagnoseCurve } from '#checker/missteps/curve-missteps.ts';
import {
	bendsOf,
	bulgeOf,
	carried,
	depthOf,
	mapped,
	mirroredIn,
	shapesApart,
	turnedAbout,
	wobblesBeside
} from '#checker/missteps/curve-shape.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { diagnosisWords } from '#checker/missteps/words.ts';
import { placementOfPath } from '#checker/placed.ts';
import { english } from '../../support/speech.ts';
import { stepNamed } from '#drafting/method.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { pathEnd, pathReversed, pathStart, polyline, type Path } from '#geometry/path.ts';
import { at, between, type SheetPoint } from '#geometry/point.ts';
import { cubic, type CubicSegment } from '#geometry/segment.ts';
import { backBlock, frontBlock } from '../../drafting/lesson-method.ts';
import { BODY, draftOf, mark, smallMethod } from '../../drafting/small-method.ts';
import { notesOf } from './notes.ts';

/** A quarter ellipse from A (0, 200) straight across to B (100, 0), straight up: deeper toward A. */
const METHOD = smallMethod([
	mark('A', 'O', 'down', 'waist / 3.6'),
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
const DRAFT = draftOf(METHOD);
const [A, B] = [at(0, 200), at(100, 0)];
const HANDLE = (4 * (Math.SQRT2 - 1)) / 3;

const bend = (leaving: SheetPoint, arriving: SheetPoint, from = A, to = B): Path => [
	cubic(from, leaving, arriving, to)
];
const LEAVING = at(100 * HANDLE, 200);
const ARRIVING = at(100, 200 * HANDLE);
const RIGHT = bend(LEAVING, ARRIVING);

const curveStep = (method: typeof METHOD, name: string): StepOf<'curve'> => {
	const step = stepNamed(method, name);
	if (step.kind !== 'curve') throw new Error(`${name} is no curve`);
	return step;
};
const STEP = curveStep(METHOD, 'bend');
const notes = (placed: Path): readonly string[] => diagnoseCurve(STEP, placed, RIGHT).map(({ note }) => note);
const moved = (path: Path, across: number, down: number): Path =>
	mapped(path, ({ x, y }) => at(x + across, y + down));

describe('shapes', () => {
	it('how far a path lies to either side of its chord: the middle of an arc of 90 degrees lies 0.293 of its radius in', () => {
		const arc = bend(at(100 * HANDLE, 100), at(100, 100 * HANDLE), at(0, 100), at(100, 0));
		expect(depthOf(arc)).toBeCloseTo(100 * (1 - Math.SQRT1_2), 1);
		const { one, other } = bulgeOf(arc);
		expect([one, other].map(Math.round)).toEqual([29, 0]);
		expect(bulgeOf(pathReversed(arc)).other).toBeCloseTo(one, 9);
		expect(depthOf(polyline(A, B))).toBeCloseTo(0, 9);
		expect(depthOf([cubic(A, B, B, A)])).toBe(0);
	});

	it('bends: none of a straight line, one of an arc, two of an S, and none for a tremor of less than 5 degrees', () => {
		expect(bendsOf(polyline(A, B))).toEqual([]);
		expect(bendsOf(RIGHT)).toEqual([-1]);
		expect(bendsOf(pathReversed(RIGHT))).toEqual([1]);
		expect(bendsOf(bend(at(80, 250), at(20, -50)))).toEqual([-1, 1]);
		expect(bendsOf(polyline(at(0, 0), at(100, 0), at(200, 7), at(300, 7)))).toEqual([]);
		expect(bendsOf(polyline(at(0, 0), at(100, 0), at(200, 40), at(300, 40)))).toEqual([1, -1]);
	});

	it('a path wobbles where its bends are not the other’s in turn', () => {
		const ess = bend(at(80, 250), at(20, -50));
		expect(wobblesBeside(ess, RIGHT)).toBe(true);
		expect(wobblesBeside(RIGHT, ess)).toBe(false);
		expect(wobblesBeside(polyline(A, B), RIGHT)).toBe(false);
		expect(wobblesBeside(pathReversed(RIGHT), RIGHT)).toBe(true);
		expect(wobblesBeside(ess, ess)).toBe(false);
		expect(wobblesBeside(mapped(ess, mirroredIn(A, B)), ess)).toBe(true);
	});

	it('mirrored, turned, carried: by head arithmetic', () => {
		expect(mirroredIn(at(0, 0), at(10, 10))(at(3, 0))).toEqual(
			at(expect.closeTo(0, 9) as number, expect.closeTo(3, 9) as number)
		);
		expect(turnedAbout(at(0, 0), at(10, 4))(at(1, 1))).toEqual(at(9, 3));
		expect(carried(at(0, 0), at(10, 0), at(5, 5), at(5, 25))(at(10, 1))).toEqual(at(3, 25));
		expect(carried(A, A, at(1, 2), at(3, 4))(A)).toEqual(at(1, 2));
		expect(mirroredIn(A, A)(B)).toEqual(B);
	});

	it('shapes are as far apart as one was moved', () => {
		expect(shapesApart(RIGHT, moved(RIGHT, 3, 4))).toBeCloseTo(5, 9);
		expect(shapesApart(RIGHT, RIGHT)).toBe(0);
	});
});

describe('what is wrong with a curve', () => {
	it('nothing with the right one, drawn either way, or with a slip within tolerance', () => {
		expect(notes(RIGHT)).toEqual([]);
		expect(notes(pathReversed(RIGHT))).toEqual([]);
		expect(notes(moved(RIGHT, 1, 1))).toEqual([]);
	});

	it('straight', () => {
		expect(notes(polyline(A, B))).toEqual(['curve:straight']);
		expect(notes(bend(between(A, B, 0.3), at(70, 70)))).toEqual(['curve:straight']);
		expect(notes(pathReversed(polyline(A, B)))).toEqual(['curve:straight']);
	});

	it('bulging the wrong way', () => {
		expect(notes(bend(at(0, 100), at(50, 0)))[0]).toBe('curve:wrong-way');
		expect(notes(mapped(RIGHT, mirroredIn(A, B)))[0]).toBe('curve:wrong-way');
	});

	it('mirrored: from end to end, and over the fold', () => {
		const half = turnedAbout(A, B);
		const inChord = mirroredIn(A, B);
		expect(notes(mapped(RIGHT, (place) => half(inChord(place))))).toEqual(['curve:mirrored']);
		expect(notes(mapped(RIGHT, ({ x, y }) => at(-x, y)))).toEqual(['curve:mirrored']);
		expect(notes(mapped(RIGHT, half))).toContain('curve:mirrored');
	});

	it('the right shape on the wrong ends: moved, longer, turned', () => {
		expect(notes(moved(RIGHT, 0, 12))).toEqual(['curve:wrong-ends']);
		expect(notes(mapped(RIGHT, carried(A, B, A, at(115, -10))))).toEqual(['curve:wrong-ends']);
		expect(notes(mapped(RIGHT, carried(A, B, at(0, 180), B)))).toEqual(['curve:wrong-ends']);
	});

	it('a wobble', () => {
		expect(notes(bend(at(120, 190), at(-20, 60)))[0]).toBe('curve:wobble');
	});

	it('not square at an end, named by its point', () => {
		expect(notes(bend(at(54, 196), ARRIVING))).toEqual(['curve:not-square:A']);
		expect(notes(bend(LEAVING, at(85, 108)))[0]).toBe('curve:not-square:B');
	});

	it('too deep and too flat, before it is asked how long it is', () => {
		expect(notes(bend(at(75, 200), at(100, 150)))).toEqual(['curve:too-deep']);
		expect(notes(bend(at(35, 200), at(100, 70)))).toEqual(['curve:too-flat']);
	});

	it('a curve merely off its course, as long as it should be, is of no known shape', () => {
		// 4.2 mm off its course, and 2.1 mm too short.
		expect(notes(bend(at(80, 200), at(100, 20)))).toEqual([]);
	});
});

describe('the curves of the two blocks', () => {
	const curves = [backBlock(), frontBlock()].flatMap((method) =>
		DEMO_BODIES.flatMap(({ body }) => {
			const draft = draftOf(method, body);
			return method.steps.flatMap((step) => {
				const path = draft.lines[step.name]?.path;
				return step.kind === 'curve' && !step.given && path
					? [[`${method.id}, ${step.name}, ${body.name}`, { method, body, draft, step, path }] as const]
					: [];
			});
		})
	);

	it.each(curves)(
		'%s: right; straight; mirrored; on wrong ends',
		(_, { method, body, draft, step, path }) => {
			const told = (placed: Path) => diagnose(method, step.name, body, draft, placementOfPath(placed));
			const [a, b] = [pathStart(path), pathEnd(path)];
			expect(told(path)).toEqual({ kind: 'none' });
			expect(told(pathReversed(path))).toEqual({ kind: 'none' });
			const straightened = notesOf(told(polyline(a, b)));
			expect(straightened).toEqual(depthOf(path) > 3 ? ['curve:straight'] : []);
			if (depthOf(path) > 6) {
				expect(notesOf(told(mapped(path, mirroredIn(a, b))))).toEqual(['curve:wrong-way']);
				expect(notesOf(told(mapped(path, ({ x, y }) => at(-x, y))))).toEqual(['curve:mirrored']);
			}
			expect(notesOf(told(moved(path, 9, -9)))).toEqual(['curve:wrong-ends']);
		}
	);

	const curveOf = (title: string) => {
		const [, found] = curves.find(([name]) => name === title) ?? [];
		if (!found) throw new Error(`there is no ${title}`);
		return found;
	};

	describe('the armhole, in two pieces', () => {
		const armhole = curveOf('back-block, armhole, Heron');
		const [upper, lower] = armhole.path;
		if (upper.kind !== 'cubic' || lower?.kind !== 'cubic')
			throw new Error('the armhole has not two curved pieces');
		const told = (path: Path) => diagnoseCurve(armhole.step, path, armhole.path).map(({ note }) => note);
		const flat = ({ from, to }: CubicSegment): CubicSegment =>
			cubic(from, between(from, to, 1 / 3), between(from, to, 2 / 3), to);

		it('with a kink', () => {
			const kinked: CubicSegment = { ...lower, leaving: at(lower.leaving.x + 10, lower.leaving.y) };
			expect(told([upper, kinked])).toContain('curve:not-square:M');
		});

		it('with its lower piece straight; the upper one is nearly so by the rule', () => {
			expect(told([upper, flat(lower)])).toEqual(['curve:straight']);
			expect(depthOf([upper])).toBeLessThan(3);
			const full: CubicSegment = { ...lower, leaving: lower.arriving };
			expect(told([flat(upper), full])).not.toContain('curve:straight');
		});

		it('turned end for end, with its pieces meeting elsewhere', () => {
			const [a, b] = [pathStart(armhole.path), pathEnd(armhole.path)];
			const [half, inChord] = [turnedAbout(a, b), mirroredIn(a, b)];
			expect(told(mapped(armhole.path, (place) => half(inChord(place))))).toEqual(['curve:mirrored']);
		});
	});

	it('a slant where no square is asked for has no name of its own', () => {
		const { method, step, body, draft, path } = curveOf('back-block, hip, Plover');
		const [only] = path;
		if (only.kind !== 'cubic') throw new Error('the hip is no curve');
		const [x, y] = [only.leaving.x - only.from.x, only.leaving.y - only.from.y];
		const slanting: CubicSegment = { ...only, leaving: at(only.from.x + x - y / 5, only.from.y + y + x / 5) };
		expect(notesOf(diagnose(method, step.name, body, draft, placementOfPath([slanting])))).toEqual([]);
	});

	it('the first of them is the diagnosis, certain, in words', () => {
		const straight = diagnose(METHOD, 'bend', BODY, DRAFT, placementOfPath(polyline(A, B)));
		expect(straight).toMatchObject({ kind: 'certain', misstep: { note: 'curve:straight', place: B } });
		expect(diagnosisWords(straight, english)).toBe(
			'You drew it almost straight; the rule makes it a hollow curve.'
		);
	});
});
