import { z } from 'zod';
import { MOST_EXERCISES } from '#shared/hand-in-limits.ts';
import {
	EXERCISE_KINDS,
	exerciseKeySchema,
	type ExerciseKey,
	type Practised
} from '#practice/exercises/exercise.ts';
import { NO_MASTERY } from '#practice/mastery.ts';
import { practiceSet, skillsOf } from '#practice/practice-set.ts';
import { hashOf } from '../people/ids.ts';

/** Exercises that are set: of which drafts, of which kinds, and how many. */
export const practiceSchema = z.strictObject({
	methods: z.array(z.string().min(1).max(100)).min(1).max(50),
	kinds: z.array(z.enum(EXERCISE_KINDS)).min(1).max(EXERCISE_KINDS.length),
	count: z.number().int().min(1).max(MOST_EXERCISES)
});

type Practice = z.infer<typeof practiceSchema>;

/** What is drawn is the same for the same words. */
export const seedOf = (words: string): number => Number.parseInt(hashOf(words).slice(0, 8), 16);

/** No day matters to who has practised nothing. */
const ANY_DAY = '2026-01-01';

/**
 * The exercises that a seed draws of a practice that was set: the same whenever they are asked for, and neither a step nor a rule
 * nor a kind twice in a row while there is another. None where no draft can be asked in one of the kinds.
 */
export const exerciseSet = (
	{ kinds, count }: Pick<Practice, 'kinds' | 'count'>,
	practised: readonly Practised[],
	seed: string
): readonly ExerciseKey[] => {
	const skills = skillsOf(practised, NO_MASTERY, ANY_DAY)
		.map((skill) => ({ ...skill, kinds: skill.kinds.filter((kind) => kinds.includes(kind)) }))
		.filter((skill) => skill.kinds.length > 0);
	return practiceSet(seedOf(seed), skills, count).map(({ kind, seed: own, method, step }) => ({
		...{ kind, seed: own, method, step }
	}));
};

/** The exercises of an attempt, as its row keeps them. */
export const readExercises = (kept: string): readonly ExerciseKey[] =>
	z.array(exerciseKeySchema).parse(JSON.parse(kept));
