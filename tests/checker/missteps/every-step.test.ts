import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import { check } from '#checker/check.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { diagnosisWords } from '#checker/missteps/words.ts';
import { english } from '../../support/speech.ts';
import type { Misstep } from '#checker/missteps/misstep.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { backBlock, frontBlock } from '../../drafting/lesson-method.ts';
import { draftOf } from '../../drafting/small-method.ts';
import { marked, ruled } from '../drafts.ts';
import { notesOf } from './notes.ts';

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

const notesAt = ({ method, body, draft, step }: Case, place: SheetPoint): readonly string[] =>
	notesOf(diagnose(method, step, body, draft, marked(place.x, place.y)));

/** Two places nearer than two tolerances can be taken for each other. */
const APART = 2 * POINT_TOLERANCE;
/** Nearer to the right place than this a careless hand is likelier than a rare wrong rule. */
const CARELESS_ABOUT = 8;

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

	it('each of its missteps: told where it stands apart; else told with the others, or not at all', () => {
		expect(missteps.length).toBeGreaterThan(5);
		for (const { note, place } of missteps) {
			const notes = notesAt(one, place);
			const near = missteps.filter((other) => other.note !== note && distance(other.place, place) <= APART);
			if (near.length === 0 && distance(place, right) > CARELESS_ABOUT) expect(notes, note).toEqual([note]);
			else for (const each of notes) expect([note, ...near.map((other) => other.note)]).toContain(each);
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
	it('most missteps are told for sure', () => {
		const all = CASES.flatMap((one) =>
			one.missteps.map(({ note, place }) => ({ note, notes: notesAt(one, place) }))
		);
		const share = (holds: (each: (typeof all)[number]) => boolean): number =>
			all.filter(holds).length / all.length;
		expect(all.length).toBeGreaterThan(5000);
		expect(share(({ note, notes }) => notes.length === 1 && notes[0] === note)).toBeGreaterThan(0.75);
		expect(share(({ note, notes }) => notes.includes(note))).toBeGreaterThan(0.9);
		expect(share(({ note, notes }) => notes.length === 1 && notes[0] !== note)).toBeLessThan(0.01);
	});
});
