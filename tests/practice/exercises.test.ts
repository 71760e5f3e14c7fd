import { the } from '#shared/speech/en/grammar.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import type { Exercise, ExerciseKey } from '#practice/exercises/exercise.ts';
import {
	askable,
	asksOf,
	exercise,
	explanationOf,
	judge,
	judgedWords,
	kindsFor
} from '#practice/exercises/kinds.ts';
import { givenLengths } from '#drafting/explain.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import { english } from '../support/speech.ts';
import { made, rightAnswer } from './answers.ts';
import { BACK, FRONT, library, seeds } from './methods.ts';

const KEYS: readonly ExerciseKey[] = [BACK, FRONT].flatMap((method) =>
	askable(method).flatMap((step) =>
		kindsFor(method, step).flatMap((kind) =>
			seeds(3).map((seed) => ({ kind, seed, method: method.id, step }))
		)
	)
);
const ALL: readonly Exercise[] = KEYS.map((key) => exercise(key, library));
const named = ({ key }: Exercise): string => `${key.kind} ${key.method} ${key.step} ${key.seed}`;

describe('exercises of every kind', () => {
	it('are there for every point of both blocks, and for the seams that the front is trued by', () => {
		const points = [
			'A',
			'W',
			'H',
			'N',
			'C',
			'K',
			'S',
			'Q',
			'P',
			'M',
			'U',
			'W1',
			'W2',
			'V',
			'J',
			'G',
			'G1',
			'G2',
			'G3',
			'G4'
		];
		expect([...askable(BACK)].sort()).toEqual([...points].sort());
		expect(askable(FRONT)).toEqual(
			expect.arrayContaining(['B', 'T', 'D', 'D1', 'E', 'shoulder', 'sideSeam'])
		);
		expect(askable(FRONT)).not.toContain('O');
		expect(kindsFor(BACK, 'U')).toEqual(['next-point', 'find-wrong', 'work-number', 'find-start']);
		expect(kindsFor(BACK, 'Q')).toEqual(['next-point', 'find-wrong', 'find-start']);
		// The first points have hardly anything to be measured from, and a fold has no one beginning.
		expect(kindsFor(BACK, 'A')).not.toContain('find-start');
		expect(kindsFor(FRONT, 'F')).not.toContain('find-start');
		expect(kindsFor(FRONT, 'sideSeam')).toEqual(['true-seams']);
		expect(kindsFor(BACK, 'armhole')).toEqual([]);
		expect(KEYS.length).toBeGreaterThan(200);
	});

	it('are the same for the same key, and survive being saved', () => {
		for (const [i, key] of KEYS.entries()) {
			if (key.seed !== 0) continue;
			const again = exercise(JSON.parse(JSON.stringify(key)) as ExerciseKey, library);
			expect(again).toEqual(ALL[i]);
		}
		const plain = made('find-wrong', 1, 'back-block', 'U');
		expect(structuredClone(plain)).toEqual(plain);
	});

	it('find the right answer right', () => {
		for (const asked of ALL) {
			const judged = judge(asked, rightAnswer(asked));
			expect(judged.answer, named(asked)).toBe('right');
			expect(judged.note).toBe('right');
			expect(judged.parts.map(({ answer }) => answer)).not.toContain('wrong');
		}
	});

	it('count nothing for no answer, and nothing for one that cannot be read', () => {
		for (const asked of ALL) {
			for (const nothing of [undefined, null])
				expect(judge(asked, nothing).answer, named(asked)).toBe('unfinished');
			for (const nonsense of [
				'',
				7,
				[],
				{},
				{ kind: 'point' },
				{ point: '?' },
				{ typed: 7 },
				{ longer: 'third' }
			]) {
				const judged = judge(asked, nonsense);
				expect(judged.answer, `${named(asked)} ${JSON.stringify(nonsense)}`).toBe('not-valid');
				expect(judgedWords(judged, english).headline).toContain('nothing is counted');
			}
		}
	});

	it('explain the rule in words and numbers, in either unit', () => {
		for (const asked of ALL) {
			for (const unit of ['cm', 'in'] as const) {
				const { where, rule, worked } = explanationOf(asked, english.inUnit(unit));
				for (const words of [where, rule, worked]) expect(words).toMatch(/^[A-Z].*[.]$/);
				expect(rule + worked).not.toMatch(/NaN|undefined|[<>]/);
			}
			expect(asksOf(asked, english)).toMatch(/^[A-Z].*[.?]$/);
		}
	});

	it('are refused by name where there is no such method or step', () => {
		const ask = (key: Partial<ExerciseKey>): unknown =>
			exercise({ kind: 'next-point', seed: 1, method: 'back-block', step: 'U', ...key }, library);
		expect(refusalOf(() => ask({ method: 'sleeve' }))).toContain('there is no method "sleeve"');
		expect(refusalOf(() => ask({ step: 'D9' }))).toContain(
			'"D9" of back-block cannot be asked as next-point'
		);
		expect(refusalOf(() => ask({ kind: 'work-number', step: 'Q' }))).toContain(
			'cannot be asked as work-number'
		);
		expect(refusalOf(() => ask({ method: 'front-block', kind: 'true-seams', step: 'shoulders' }))).toContain(
			'did you mean "shoulder"?'
		);
	});
});

describe('placing the next point', () => {
	const points = ALL.flatMap((asked) => (asked.kind === 'next-point' ? [asked] : []));

	it('shows what stands before the point, and neither it nor what follows', () => {
		const asked = made('next-point', 2, 'back-block', 'S');
		expect(Object.keys(asked.soFar.points)).toEqual(['O', 'A', 'W', 'H', 'N', 'C', 'K']);
		expect(Object.keys(asked.soFar.lines)).toEqual(['armholeLevel', 'waistLevel', 'hipLevel', 'centre']);
		const front = made('next-point', 2, 'front-block', 'S');
		const givens = givenLengths(front.method, front.step, front.body, front.soFar, english);
		expect(givens.map(({ noun }) => the(noun))).toEqual(["the back's shoulder"]);
	});

	it('finds the places of missteps wrong', () => {
		for (const { method, step, body, soFar, ...rest } of points) {
			const asked = { method, step, body, soFar, ...rest };
			// A sample: what led to each place is looked for among some thousand wrong rules.
			for (const { place, note } of pointMissteps(method, step, body, soFar).filter((_, i) => i % 4 === 0)) {
				// Places off the sheet are no placements at all.
				if (Math.max(Math.abs(place.x), Math.abs(place.y)) > 5000) continue;
				const judged = judge(asked, { kind: 'point', at: [place.x, place.y] });
				expect(judged.answer, `${named(asked)} ${note}`).toBe('wrong');
				expect(judged.parts).toEqual([{ part: 'place', answer: 'wrong' }]);
			}
		}
	});

	it('names a common misstep, and none for a place that nothing explains', () => {
		const asked = made('next-point', 4, 'back-block', 'U');
		const { bust = 0 } = asked.body.measurements;
		const level = asked.draft.points['A']?.y ?? NaN;
		const half = judge(asked, { kind: 'point', at: [bust / 2 + 20, level] });
		expect(half).toMatchObject({ answer: 'wrong', note: 'fraction:half-for-quarter' });
		expect(judgedWords(half, english).sentences.at(-1)).toContain('the rule is a quarter');
		const lost = judge(asked, { kind: 'point', at: [1234, 1777] });
		expect(lost).toMatchObject({ answer: 'wrong', note: 'place' });
		expect(judgedWords(lost, english).sentences).toHaveLength(1);
	});

	it('allows what the checker allows: 2 mm', () => {
		const asked = made('next-point', 4, 'back-block', 'W');
		const { x = NaN, y = NaN } = asked.draft.points['W'] ?? {};
		expect(judge(asked, { kind: 'point', at: [x, y + 2] }).answer).toBe('right');
		expect(judge(asked, { kind: 'point', at: [x, y + 2.1] }).answer).toBe('wrong');
	});
});
