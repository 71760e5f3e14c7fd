import { describe, expect, it } from 'vitest';
import type { Place } from '#shared/placement.ts';
import { verdictWords } from '#checker/words.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { stepMakes } from '#drafting/steps/kinds.ts';
import { english } from '../support/speech.ts';
import { chances } from '../reference/random-bodies.ts';
import { answerOf, DESKS, findingOf, findingsOf, marked, verdictOn, type Desk } from './drafts.ts';

const STEPS = DESKS.flatMap((desk) => desk.method.steps.map((step) => ({ desk, step })));
const spot = ({ body }: Desk, step: string): string => `${body}, ${step}`;

describe('every step of both methods, for every demo body', () => {
	it('there are many', () => {
		expect(new Set(STEPS.map(({ step }) => step.kind)).size).toBeGreaterThanOrEqual(7);
		expect(STEPS.length).toBeGreaterThan(150);
	});

	it('the computed answer is right, and said to be spot on', () => {
		for (const { desk, step } of STEPS) {
			const verdict = verdictOn(desk, step.name, answerOf(desk, step.name));
			expect(verdict.answer, spot(desk, step.name)).toBe('right');
			expect(verdictWords(verdict, { name: step.name }, english).headline).toBe(
				`${english.words.nouns.The({ name: step.name })} is right. Spot on.`
			);
		}
	});

	it('the computed line, drawn backwards, is right', () => {
		for (const { desk, step } of STEPS) {
			const answer = answerOf(desk, step.name);
			if (answer.kind !== 'line') continue;
			const segments = answer.segments.toReversed().map((piece) => {
				const ends = { from: piece.to, to: piece.from };
				return 'leaving' in piece ? { ...ends, leaving: piece.arriving, arriving: piece.leaving } : ends;
			});
			const verdict = verdictOn(desk, step.name, { kind: 'line', segments });
			expect(verdict.answer, spot(desk, step.name)).toBe('right');
		}
	});

	it('the other kind of placement is not valid, and nothing placed is unfinished', () => {
		for (const { desk, step } of STEPS) {
			const other = stepMakes(step) === 'point' ? 'shoulder' : 'A';
			const placement =
				desk.draft.points[other] || desk.draft.lines[other] ? answerOf(desk, other) : undefined;
			const expected = placement ? 'not-valid' : 'unfinished';
			expect(verdictOn(desk, step.name, placement).answer, spot(desk, step.name)).toBe(expected);
		}
	});
});

describe('random slips', () => {
	const POINTS = STEPS.flatMap(({ desk, step }) => {
		const point = desk.draft.points[step.name];
		return point ? [{ desk, name: step.name, point }] : [];
	});

	it('a point moved by d is reported off by d, the way it was moved, and right up to 2 mm', () => {
		const chance = chances(2026);
		let [right, wrong] = [0, 0];
		for (const { desk, name, point } of POINTS) {
			for (let i = 0; i < 8; i++) {
				const [d, angle] = [chance() * (i % 2 ? 4 : 400), chance() * 2 * Math.PI];
				const [across, down] = [d * Math.cos(angle), d * Math.sin(angle)];
				const verdict = verdictOn(desk, name, marked(point.x + across, point.y + down));
				const finding = findingOf(verdict, 'place');
				expect(Math.abs(finding.offBy - d), spot(desk, name)).toBeLessThan(1e-9);
				expect(Math.abs(finding.across - across)).toBeLessThan(1e-9);
				expect(Math.abs(finding.down - down)).toBeLessThan(1e-9);
				expect(verdict.answer).toBe(d <= 2 ? 'right' : 'wrong');
				if (d <= 2) right += 1;
				else wrong += 1;
			}
		}
		expect(right).toBeGreaterThan(50);
		expect(wrong).toBeGreaterThan(50);
	});

	it('a whole line moved aside by d strays d at most, and is right while nothing strays', () => {
		const chance = chances(1988);
		for (const { desk, step } of STEPS) {
			const answer = answerOf(desk, step.name);
			if (answer.kind !== 'line' || step.kind === 'level') continue;
			const d = chance() * 8;
			const angle = chance() * 2 * Math.PI;
			const aside = ([x, y]: Place): Place => [x + d * Math.cos(angle), y + d * Math.sin(angle)];
			const segments = answer.segments.map((piece) => ({
				...piece,
				from: aside(piece.from),
				to: aside(piece.to),
				...('leaving' in piece ? { leaving: aside(piece.leaving), arriving: aside(piece.arriving) } : {})
			}));
			const verdict = verdictOn(desk, step.name, { kind: 'line', segments });
			expect(findingOf(verdict, 'start').offBy).toBeCloseTo(d, 9);
			expect(findingOf(verdict, 'end').offBy).toBeCloseTo(d, 9);
			expect(findingOf(verdict, 'course').away).toBeLessThan(d + 0.01);
			expect(findingOf(verdict, 'length').by).toBeCloseTo(0, 5);
			expect(verdict.answer, spot(desk, step.name)).toBe(d <= 2 ? 'right' : 'wrong');
		}
	});
});

describe('hopeless placements', () => {
	const chance = chances(41);
	const anywhere = (): SheetPoint => at((chance() - 0.3) * 1500, (chance() - 0.3) * 1500);
	const placeOf = ({ x, y }: SheetPoint): Place => [x, y];

	/** A line of random pieces end to end. */
	const scrawl = (): unknown => {
		let from = anywhere();
		const segments = Array.from({ length: 1 + Math.floor(chance() * 6) }, () => {
			const to = anywhere();
			const ends = { from: placeOf(from), to: placeOf(to) };
			from = to;
			return chance() < 0.5 ? ends : { ...ends, leaving: placeOf(anywhere()), arriving: placeOf(anywhere()) };
		});
		return { kind: 'line', segments };
	};

	it('points far from where they should be are wrong, with words that hold', () => {
		for (const { desk, step } of STEPS) {
			const point = desk.draft.points[step.name];
			if (!point) continue;
			const placed = anywhere();
			if (distance(placed, point) <= 2) throw new Error('by chance not hopeless: choose another seed');
			const verdict = verdictOn(desk, step.name, marked(placed.x, placed.y));
			expect(verdict.answer, spot(desk, step.name)).toBe('wrong');
			for (const unit of ['cm', 'in'] as const) {
				const [sentence] = verdictWords(verdict, { name: step.name }, english.inUnit(unit)).sentences;
				expect(sentence).toMatch(/^It lies [^.]*(\.\d+[^.]*)*\.$/);
				expect(sentence).not.toMatch(/NaN|undefined|Infinity|-/);
			}
		}
	});

	it('scrawls are wrong, never right, with a sentence for each thing that is', () => {
		for (const { desk, step } of STEPS) {
			if (stepMakes(step) !== 'line') continue;
			const verdict = verdictOn(desk, step.name, scrawl());
			expect(verdict.answer, spot(desk, step.name)).toBe('wrong');
			const failed = findingsOf(verdict).filter(({ within }) => !within);
			for (const unit of ['cm', 'in'] as const) {
				const { sentences } = verdictWords(verdict, { name: step.name }, english.inUnit(unit));
				expect(sentences).toHaveLength(failed.length);
				expect(sentences.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
			}
		}
	});

	it('junk is answered and never thrown at the learner', () => {
		const junk = (depth: number): unknown => {
			const pick = Math.floor(chance() * 9);
			if (pick === 0) return null;
			if (pick === 1) return undefined;
			if (pick === 2) return NaN;
			if (pick === 3) return chance() < 0.5 ? 'point' : 'line';
			if (pick === 4) return (chance() - 0.5) * 1e308;
			if (pick === 5 || depth === 0) return chance() < 0.5;
			if (pick === 6) return Array.from({ length: 3 }, () => junk(depth - 1));
			const keys = ['kind', 'at', 'segments', 'from', 'to', 'leaving', 'arriving', 'typed'];
			return Object.fromEntries(keys.map((key) => [key, junk(depth - 1)]));
		};
		for (const { desk, step } of STEPS)
			for (let i = 0; i < 4; i++)
				expect(['unfinished', 'not-valid']).toContain(verdictOn(desk, step.name, junk(3)).answer);
	});
});
