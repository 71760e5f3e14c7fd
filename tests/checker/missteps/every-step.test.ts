import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { BLOCK_ALLOWANCES } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { POINT_TOLERANCE, UNSPOKEN } from '#shared/tolerances.ts';
import { check } from '#checker/check.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { diagnosisWords } from '#checker/missteps/words.ts';
import { english } from '../../support/speech.ts';
import type { Misstep } from '#checker/missteps/misstep.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { backBlock, frontBlock, lessonMethod } from '../../drafting/lesson-method.ts';
import { BODY, draftOf } from '../../drafting/small-method.ts';
import { marked, ruled } from '../drafts.ts';
import { notesOf, toldOf } from './notes.ts';
import { STRAY } from '#checker/missteps/priors.ts';

/** A step of a block for a body: its right place and all its missteps. */
interface Case {
	readonly method: Method;
	readonly body: Body;
	readonly draft: Draft;
	readonly step: string;
	readonly right: SheetPoint;
	readonly missteps: readonly Misstep[];
}

const CASES: readonly Case[] = [backBlock(), frontBlock()].flatMap((method) =>
	DEMO_BODIES.flatMap(({ body }) => {
		const draft = draftOf(method, body);
		return method.steps.flatMap(({ name: step, kind }) => {
			const right = draft.points[step];
			if (!right || kind === 'corner') return [];
			return [{ method, body, draft, step, right, missteps: pointMissteps(method, step, body, draft) }];
		});
	})
);
const titled = CASES.map((each) => [`${each.method.id}, ${each.step}, ${each.body.name}`, each] as const);

/** A sample: a diagnosis looks at some thousand wrong rules. */
const isHalf = (_: unknown, i: number): boolean => i % 2 === 0;

const notesAt = ({ method, body, draft, step }: Case, place: SheetPoint): readonly string[] =>
	notesOf(diagnose(method, step, body, draft, marked(place.x, place.y)));

const toldAt = ({ method, body, draft, step }: Case, place: SheetPoint): readonly Misstep[] =>
	toldOf(diagnose(method, step, body, draft, marked(place.x, place.y)));

describe.each(titled)('%s', (_, one) => {
	const { method, body, draft, step, right, missteps } = one;

	it('right: within tolerance of the right place there is neither a misstep nor a diagnosis', () => {
		for (const [across, down] of [
			[0, 0],
			[1.9, 0],
			[0, -1.9],
			[1.3, 1.3]
		] as const)
			expect(diagnose(method, step, body, draft, marked(right.x + across, right.y + down))).toEqual({
				kind: 'none'
			});
		for (const { note, place } of missteps)
			expect(distance(place, right), note).toBeGreaterThan(POINT_TOLERANCE);
	});

	it('every other of its missteps: whatever is told of its place leads there', () => {
		expect(missteps.length).toBeGreaterThan(5);
		for (const { note, place } of missteps.filter(isHalf)) {
			for (const told of toldAt(one, place)) expect(distance(told.place, place), note).toBeLessThan(STRAY);
			expect(check(method, step, draft, marked(place.x, place.y)).answer).toBe('wrong');
		}
	});

	it('invalid: a line for the point is not valid, and no misstep', () => {
		const line = ruled([right.x, right.y], [right.x + 10, right.y]);
		expect(check(method, step, draft, line).answer).toBe('not-valid');
		expect(diagnosisWords(diagnose(method, step, body, draft, line), english)).toBe('');
	});

	it('hopeless: far off the sheet there is no guess', () => {
		expect(notesAt(one, { ...right, x: (right.x - 1234) as typeof right.x })).toEqual([]);
	});
});

describe('all of them together', () => {
	it('most missteps are told first, and none is told for certain where another led', () => {
		const all = CASES.flatMap((one) =>
			one.missteps
				.filter((_, i) => i % 25 === 0)
				.map(({ place }) => {
					const diagnosis = diagnose(one.method, one.step, one.body, one.draft, marked(place.x, place.y));
					const [first] = toldOf(diagnosis);
					return { kind: diagnosis.kind, first: first && distance(first.place, place) <= UNSPOKEN };
				})
		);
		const share = (holds: (each: (typeof all)[number]) => boolean): number =>
			all.filter(holds).length / all.length;
		expect(all.length).toBeGreaterThan(300);
		expect(share(({ first }) => first === true)).toBeGreaterThan(0.9);
		expect(share(({ kind, first }) => kind === 'certain' && !first)).toBeLessThan(0.003);
	});
});

describe('marks that are set before anything is measured', () => {
	it('no mistake is told of a measurement or an allowance that comes later', () => {
		const method = lessonMethod('10-the-sheet');
		const draft = draftOf(method, BODY);
		const later = [...MEASUREMENT_KEYS, ...BLOCK_ALLOWANCES.map(({ key }) => key)];
		const notes = ['A', 'B', 'Q', 'P'].flatMap((step) =>
			Array.from({ length: 225 }, (_, i) => {
				const place = marked(20 * (i % 15), 20 * Math.floor(i / 15));
				return notesOf(diagnose(method, step, BODY, draft, place));
			}).flat()
		);
		expect(new Set(notes).size).toBeGreaterThan(5);
		expect(notes.filter((note) => later.some((key) => note.includes(key)))).toEqual([]);
	});
});
