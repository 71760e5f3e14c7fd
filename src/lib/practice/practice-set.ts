import { stepNamed } from '#drafting/method.ts';
import { birdOf } from './bodies/birds.ts';
import { chanceOf, seedFrom, type Chance } from './chance.ts';
import { DUE_WEIGHT, LEAST_WEIGHT, SAME_DRAFT } from './constants.ts';
import type { ExerciseKey, ExerciseKind, Practised } from './exercises/exercise.ts';
import { askable, kindsFor } from './exercises/kinds.ts';
import { isRuleDue, knownOf, standingOf, wantsExample, type Mastery, type Standing } from './mastery.ts';
import { ruleOf, seamRule } from './rule.ts';

/** Something that can be practised, and how it stands with the learner. */
export interface Skill {
	readonly rule: string;
	readonly method: string;
	/** The point to place; for two seams their name. */
	readonly step: string;
	readonly kinds: readonly ExerciseKind[];
	/** How likely the rule is known, 0 to 1. */
	readonly known: number;
	readonly standing: Standing;
	/** Whether the rule comes up again on the day. */
	readonly due: boolean;
	/** Whether a worked example should come before the next try. */
	readonly wantsExample: boolean;
}

/** One exercise of a set. */
export interface SetItem extends ExerciseKey {
	readonly rule: string;
	/** Show the worked example first: trying alone has not helped. */
	readonly exampleFirst: boolean;
}

const skillOf = (method: Practised, step: string, mastery: Mastery, day: string): Skill => {
	const kinds = kindsFor(method, step);
	const rule = kinds.includes('true-seams') ? seamRule(step) : ruleOf(stepNamed(method, step));
	return {
		rule,
		method: method.id,
		step,
		kinds,
		known: knownOf(mastery, rule),
		standing: standingOf(mastery, rule, day),
		due: isRuleDue(mastery, rule, day),
		wantsExample: wantsExample(mastery, rule)
	};
};

/** All that can be practised of some methods, and how each stands on a day (2026-11-25). */
export const skillsOf = (methods: readonly Practised[], mastery: Mastery, day: string): readonly Skill[] =>
	methods.flatMap((method) => askable(method).map((step) => skillOf(method, step, mastery, day)));

/** How often each of some things was taken so far. */
const tally = <T>(taken: readonly T[], one: T): number => taken.filter((each) => each === one).length;

/**
 * What a skill weighs: more the less it is known and when it is due. A rule that stands at several steps is shared
 * by them, and each time it has been taken halves it, so that a set is spread; drafts take turns, more often than not.
 */
const weightOf = (skill: Skill, skills: readonly Skill[], taken: readonly Skill[]): number => {
	const whole = LEAST_WEIGHT + (1 - skill.known) + (skill.due ? DUE_WEIGHT : 0);
	const sharing = skills.filter(({ rule }) => rule === skill.rule).length;
	const before = taken.filter(({ rule }) => rule === skill.rule).length;
	const again = taken.at(-1)?.method === skill.method ? SAME_DRAFT : 1;
	return (whole * again) / sharing / 2 ** before;
};

/** The kind that a set has least of, among those in which the skill can be asked; the last one only where there is no other. */
const kindFor = (skill: Skill, kinds: readonly ExerciseKind[], chance: Chance): ExerciseKind | undefined => {
	const others = skill.kinds.filter((kind) => kind !== kinds.at(-1));
	const can = others.length > 0 ? others : skill.kinds;
	const fewest = Math.min(...can.map((kind) => tally(kinds, kind)));
	return chance.weighted(
		can.filter((kind) => tally(kinds, kind) === fewest),
		() => 1
	);
};

/** The skills that may come next: neither the step nor the rule nor the only kind of the last, while there are others. */
const nextOf = (skills: readonly Skill[], last: SetItem | undefined): readonly Skill[] => {
	const others = skills.filter(
		({ rule, step, kinds }) =>
			rule !== last?.rule && step !== last?.step && kinds.some((kind) => kind !== last?.kind)
	);
	return others.length > 0 ? others : skills;
};

/** A seed whose body has a name that the set does not have yet, so that no two bodies are taken for one. */
const freshSeed = (seed: number, place: number, birds: ReadonlySet<string>): number => {
	const seeds = Array.from({ length: 20 }, (_, again) => seedFrom(seed, 'set', place, again));
	return seeds.find((each) => !birds.has(birdOf(each))) ?? seeds[0] ?? seed;
};

/**
 * A set of `count` exercises: kinds and drafts are mixed, rules that are known least and those that are due come most,
 * and neither a step nor a rule nor a kind comes twice in a row while there is another. The same seed and skills give the same set;
 * it is empty only where there are no skills.
 */
export const practiceSet = (seed: number, skills: readonly Skill[], count: number): readonly SetItem[] => {
	const chance = chanceOf(seed, 'set');
	const taken: Skill[] = [];
	const items: SetItem[] = [];
	while (items.length < count) {
		const skill = chance.weighted(nextOf(skills, items.at(-1)), (each) => weightOf(each, skills, taken));
		const kind =
			skill &&
			kindFor(
				skill,
				items.map((item) => item.kind),
				chance
			);
		if (!skill || !kind) return items;
		const own = freshSeed(seed, items.length, new Set(items.map((item) => birdOf(item.seed))));
		items.push({
			kind,
			seed: own,
			method: skill.method,
			step: skill.step,
			rule: skill.rule,
			exampleFirst: skill.wantsExample && !taken.some(({ rule }) => rule === skill.rule)
		});
		taken.push(skill);
	}
	return items;
};
