import { describe, expect, it } from 'vitest';
import { stepNamed } from '#drafting/method.ts';
import { birdOf } from '#practice/bodies/birds.ts';
import { exercise, judge } from '#practice/exercises/kinds.ts';
import { afterTry, NO_MASTERY, type Mastery } from '#practice/mastery.ts';
import { practiceSet, skillsOf, type Skill } from '#practice/practice-set.ts';
import { ruleOf } from '#practice/rule.ts';
import { rightAnswer } from './answers.ts';
import { BACK, FRONT, library, PRACTISED, seeds } from './methods.ts';

const DAY = '2026-11-25';
const SKILLS = skillsOf([BACK, FRONT], NO_MASTERY, DAY);
const COUNT = 10;

const rule = (method: typeof BACK, step: string): string => ruleOf(stepNamed(method, step));

/** How often each of these rules comes in many sets. */
const frequency = (skills: readonly Skill[], asked: string): number =>
	seeds(200).reduce(
		(sum, seed) => sum + practiceSet(seed, skills, COUNT).filter((item) => item.rule === asked).length,
		0
	);

describe('the names of rules', () => {
	it('say what is asked, alike for the same rule of two drafts', () => {
		expect(rule(BACK, 'A')).toBe('mark:down:shoulderWidth/2+armholeDrop');
		expect(rule(BACK, 'U')).toBe(rule(FRONT, 'U'));
		expect(rule(BACK, 'P')).toBe('division:1/2');
		expect(rule(FRONT, 'S')).toBe('swing:outward:length(back.shoulder):shoulderDropFront');
		expect(rule(FRONT, 'D1')).toBe('along:toward:(frontLength-backLength)/2');
		expect(rule(FRONT, 'C')).toBe('mark:down:distance(O,N)+frontNeckDrop');
	});

	it('differ for every two rules that differ', () => {
		expect(rule(BACK, 'S')).not.toBe(rule(FRONT, 'S'));
		expect(rule(BACK, 'W')).not.toBe(rule(FRONT, 'W'));
		const names = BACK.steps.filter(({ kind }) => kind === 'mark').map(ruleOf);
		expect(new Set(names).size).toBe(names.length);
	});
});

describe('skills', () => {
	it('are every point and pair of seams, new to one who has tried nothing', () => {
		expect(SKILLS.length).toBeGreaterThan(30);
		for (const { known, standing, due, wantsExample, kinds } of SKILLS) {
			expect({ known, standing, due, wantsExample }).toEqual({
				known: 0.2,
				standing: 'new',
				due: false,
				wantsExample: false
			});
			expect(kinds.length).toBeGreaterThan(0);
		}
		expect(SKILLS.find(({ step }) => step === 'sideSeam')?.rule).toBe('true:sideSeam');
	});

	it('know of both drafts what was learned on one', () => {
		const tried = {
			rule: rule(BACK, 'U'),
			body: '1',
			day: DAY,
			answer: 'right',
			first: true,
			helped: false
		} as const;
		const after = skillsOf([BACK, FRONT], afterTry(NO_MASTERY, tried), DAY).filter(
			({ step }) => step === 'U'
		);
		expect(after.map(({ method, standing }) => `${method} ${standing}`)).toEqual([
			'back-block coming',
			'front-block coming'
		]);
	});
});

describe('a practice set', () => {
	it('has as many exercises as were asked for, of at least three kinds, and all can be made', () => {
		for (const seed of seeds(8)) {
			const set = practiceSet(seed, SKILLS, COUNT);
			expect(set).toHaveLength(COUNT);
			expect(new Set(set.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(3);
			for (const { rule, exampleFirst: _, ...key } of set) {
				const asked = exercise(key, library);
				expect(asked.rule).toBe(rule);
				expect(judge(asked, rightAnswer(asked)).answer).toBe('right');
			}
		}
		expect(
			seeds(20)
				.flatMap((seed) => practiceSet(seed, SKILLS, COUNT))
				.map(({ kind }) => kind)
		).toContain('true-seams');
	});

	it('is the same for the same seed, another for another', () => {
		expect(practiceSet(1, SKILLS, COUNT)).toEqual(practiceSet(1, SKILLS, COUNT));
		expect(practiceSet(1, SKILLS, COUNT)).not.toEqual(practiceSet(2, SKILLS, COUNT));
	});

	it('never asks a step, a rule or a kind twice in a row, nor one body twice', () => {
		for (const seed of seeds(200)) {
			const set = practiceSet(seed, SKILLS, COUNT);
			for (const [i, item] of set.entries()) {
				if (i === 0) continue;
				expect(item.step).not.toBe(set[i - 1]?.step);
				expect(item.rule).not.toBe(set[i - 1]?.rule);
				expect(item.kind).not.toBe(set[i - 1]?.kind);
			}
			expect(new Set(set.map((item) => birdOf(item.seed))).size).toBe(COUNT);
		}
	});

	it('takes drafts in turn more often than not', () => {
		const changes = seeds(200).map((seed) => {
			const set = practiceSet(seed, SKILLS, COUNT);
			return set.filter((item, i) => i > 0 && item.method !== set[i - 1]?.method).length;
		});
		const mean = changes.reduce((sum, each) => sum + each, 0) / changes.length;
		expect(mean).toBeGreaterThan((COUNT - 1) / 2);
	});

	it('goes from garment to garment: four drafts or more in a set, a rule asked on several, no kind twice in a row', () => {
		const skills = skillsOf(PRACTISED, NO_MASTERY, DAY);
		const drafts = new Map<string, Set<string>>();
		for (const seed of seeds(100)) {
			const set = practiceSet(seed, skills, COUNT);
			expect(new Set(set.map(({ method }) => method)).size).toBeGreaterThanOrEqual(4);
			for (const [i, item] of set.entries()) {
				expect(item.kind).not.toBe(set[i - 1]?.kind);
				drafts.set(item.rule, (drafts.get(item.rule) ?? new Set()).add(item.method));
			}
		}
		const shared = [...drafts.values()].filter(({ size }) => size > 1);
		expect(shared.length).toBeGreaterThan(3);
	});

	it('asks most for what is known least', () => {
		const known = SKILLS.map((skill) => (skill.rule === 'meeting' ? skill : { ...skill, known: 0.99 }));
		expect(frequency(known, 'meeting')).toBeGreaterThan(3 * frequency(SKILLS, 'meeting'));
		const [one] = SKILLS.filter(({ rule }) => rule === 'true:shoulder');
		if (!one) throw new Error('the shoulder is not a skill');
		const mastered = SKILLS.map((skill) => (skill === one ? { ...skill, known: 0.99 } : skill));
		expect(frequency(mastered, 'true:shoulder')).toBeLessThan(frequency(SKILLS, 'true:shoulder') / 4);
	});

	it('asks for a rule of both drafts as often as for a rule of one', () => {
		const [both, one] = [frequency(SKILLS, rule(BACK, 'U')), frequency(SKILLS, rule(FRONT, 'S'))];
		expect(SKILLS.filter(({ rule: each }) => each === rule(BACK, 'U'))).toHaveLength(2);
		expect(SKILLS.filter(({ rule: each }) => each === rule(FRONT, 'S'))).toHaveLength(1);
		expect(both / one).toBeGreaterThan(0.7);
		expect(both / one).toBeLessThan(1.4);
	});

	it('asks for what is due, though it is known', () => {
		const known = SKILLS.map((skill) => ({ ...skill, known: 0.99 }));
		const due = known.map((skill) => (skill.rule === 'division:1/2' ? { ...skill, due: true } : skill));
		expect(frequency(due, 'division:1/2')).toBeGreaterThan(3 * frequency(known, 'division:1/2'));
	});

	it('shows a worked example once, before the first try at a rule that wants one', () => {
		const wanting = SKILLS.filter(
			({ step, method }) => method === 'back-block' && ['A', 'U', 'N'].includes(step)
		).map((skill) => ({ ...skill, wantsExample: skill.step === 'U' }));
		const set = practiceSet(3, wanting, COUNT);
		const asked = set.filter(({ step }) => step === 'U');
		expect(asked.length).toBeGreaterThan(1);
		expect(asked.map(({ exampleFirst }) => exampleFirst)).toEqual(asked.map((_, i) => i === 0));
		expect(set.filter(({ step, exampleFirst }) => step !== 'U' && exampleFirst)).toEqual([]);
	});

	it('does with one skill what it can, and with none nothing', () => {
		const one = SKILLS.slice(0, 1);
		expect(practiceSet(1, one, 3).map(({ step }) => step)).toEqual(['A', 'A', 'A']);
		expect(new Set(practiceSet(1, one, 3).map(({ kind }) => kind)).size).toBe(3);
		expect(practiceSet(1, [], COUNT)).toEqual([]);
		expect(practiceSet(1, SKILLS, 0)).toEqual([]);
	});

	it('makes a diligent learner secure in every rule of the back within three weeks', () => {
		let mastery: Mastery = NO_MASTERY;
		for (const n of seeds(21)) {
			const day = new Date(Date.UTC(2026, 0, 1 + n)).toISOString().slice(0, 10);
			for (const item of practiceSet(n, skillsOf([BACK], mastery, day), COUNT)) {
				const { rule, seed } = item;
				mastery = afterTry(mastery, {
					rule,
					body: String(seed),
					day,
					answer: 'right',
					first: true,
					helped: false
				});
			}
		}
		const standing = skillsOf([BACK], mastery, '2026-01-21').map((each) => each.standing);
		for (const each of standing) expect(['secure', 'due']).toContain(each);
	});
});
