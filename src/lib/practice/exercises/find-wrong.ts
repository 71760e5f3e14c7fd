import { keptFor } from '#shared/kept.ts';
import { z } from '#shared/shape.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { distance } from '#geometry/point.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { explain } from '#drafting/explain.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { stepNeeds } from '#drafting/steps/kinds.ts';
import type { Body } from '#shared/body.ts';
import { chanceOf, seedFrom, type Chance } from '../chance.ts';
import { CHOICES, FARTHEST_SLIP } from '../constants.ts';
import { draftSoFar, pointSteps } from '../draft-so-far.ts';
import { followedThrough } from '../follow-through.ts';
import type { Misstep } from '#checker/missteps/misstep.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import { ruleOf } from '../rule.ts';
import { tellingBody, tooNear, type Telling } from '../telling.ts';
import type {
	Choice,
	ExerciseKey,
	ExerciseRules,
	FindWrong,
	Judged,
	JudgedPart,
	Suspect
} from './exercise.ts';
import { judgedParts, notValid, unfinished } from './judgements.ts';

const answerSchema = z.object({ point: z.string(), choice: z.optional(z.string()) });

/** The family of a misstep: `fraction` of `fraction:half-for-quarter`. */
const familyOf = ({ note }: Pick<Choice, 'note'>): string => note.split(':')[0] ?? note;

const asChoice = ({ note, slips }: Misstep): Choice => ({ note, slips });

/** What was done, without the rule that it is held against: two that are alike in this read alike as choices. */
const done = keptFor(({ slips }: Misstep): string =>
	JSON.stringify(slips, (field, value: unknown) => (field === 'right' ? undefined : value))
);

/** The first of those that are the same in something. */
const firstsBy = <T>(all: readonly T[], same: (one: T) => string): readonly T[] => {
	const seen = new Set<string>();
	return all.filter((one) => seen.size < seen.add(same(one)).size);
};

/** Some of these, from as many families as there are; no two have the same note, or read alike. */
const varied = (missteps: readonly Misstep[], count: number): readonly Misstep[] => {
	const unlike = firstsBy(
		firstsBy(missteps, ({ note }) => note),
		done
	);
	const firsts = firstsBy(unlike, familyOf);
	return [...firsts, ...unlike.filter((one) => !firsts.includes(one))].slice(0, count);
};

/** A misstep that can be found: far enough from the right place, near enough to stay on the sheet, with others to choose from. */
interface Seeded {
	readonly slip: Misstep;
	readonly wrong: Drafted;
	/** Missteps of the same step none of which leads there. */
	readonly others: readonly Misstep[];
}

const seedable = (method: Method, stepName: string, telling: Telling, slip: Misstep): Seeded | undefined => {
	const { body, draft, right, missteps } = telling;
	if (tooNear(slip.place, right) || distance(slip.place, right) > FARTHEST_SLIP) return undefined;
	const alike = new Set(missteps.filter(({ place }) => tooNear(place, slip.place)).map(({ note }) => note));
	const others = missteps.filter((other) => !alike.has(other.note) && done(other) !== done(slip));
	if (others.length === 0) return undefined;
	const wrong = followedThrough(method, body, draft, stepName, slip.place);
	return wrong && { slip, wrong, others };
};

/** Rare missteps are many: weighed by their priors alone, most slips would be ones that hardly anyone makes. */
const commonness = ({ prior }: Misstep): number => prior * prior;

/** A misstep of this step for this body, mostly a common one. */
const seeded = (method: Method, stepName: string, telling: Telling, chance: Chance): Seeded | undefined => {
	const can = telling.missteps.flatMap((slip) => seedable(method, stepName, telling, slip) ?? []);
	return chance.weighted(can, ({ slip }) => commonness(slip));
};

/** For every point of the draft what may have gone wrong there; at the wrong one, what did is among it. */
const suspectsOf = (
	method: Method,
	body: Body,
	stepName: string,
	{ slip, wrong, others }: Seeded,
	chance: Chance
): readonly Suspect[] =>
	pointSteps(method)
		.filter(({ name }) => name in wrong.points)
		.map(({ name }) => {
			const own = name === stepName;
			const missteps = own ? others : pointMissteps(method, name, body, draftSoFar(method, wrong, name));
			const chosen = varied(
				chance.shuffled(missteps, (each) => each.prior),
				own ? CHOICES - 1 : CHOICES
			);
			return { step: name, choices: chance.shuffled([...(own ? [slip] : []), ...chosen]).map(asChoice) };
		});

/** Bodies tried before it is said that a step has no misstep that could be searched for. */
const MOST_BODIES = 8;

const make = (key: ExerciseKey, method: Method): FindWrong => {
	for (let again = 0; again < MOST_BODIES; again++) {
		const telling = tellingBody(again === 0 ? key.seed : seedFrom(key.seed, again), method, key.step);
		const chance = chanceOf(key.seed, 'find-wrong', key.step, again);
		const found = seeded(method, key.step, telling, chance);
		if (!found) continue;
		const { body, draft } = telling;
		const suspects = suspectsOf(method, body, key.step, found, chance);
		// A point at which one thing alone can have gone wrong would give itself away.
		if (suspects.some(({ choices }) => choices.length < 2)) continue;
		return {
			kind: 'find-wrong',
			key,
			rule: ruleOf(stepNamed(method, key.step)),
			method,
			body,
			draft,
			wrong: found.wrong,
			suspects,
			slip: { step: key.step, ...asChoice(found.slip) }
		};
	}
	throw new Error(`no misstep of ${key.step} of ${method.id} can be searched for`);
};

const part = (part: 'point' | 'rule', answer: JudgedPart['answer']): JudgedPart => ({ part, answer });

/** A point that follows its rule, though it may stand elsewhere because an earlier one does. */
const soundSentences = ({ method, draft, wrong }: FindWrong, point: string): readonly Message[] => {
	const needs = stepNeeds(stepNamed(method, point));
	const moved = needs.some((need) => {
		const [is, was] = [wrong.points[need], draft.points[need]];
		return is && was && distance(is, was) > 0;
	});
	return [message('practice', 'sound', { point }), ...(moved ? [message('practice', 'movedBefore')] : [])];
};

const judge = (exercise: FindWrong, answer: unknown): Judged => {
	const { slip, suspects } = exercise;
	const parsed = answerSchema.safeParse(answer);
	if (!parsed.success) return notValid(message('practice', 'namePoint'));
	const { point, choice } = parsed.data;
	const suspect = suspects.find(({ step }) => step === point);
	if (!suspect) return notValid(message('practice', 'noSuspect', { point }));
	if (point !== slip.step) {
		const parts = [part('point', 'wrong'), part('rule', 'unfinished')];
		const headline = message('practice', 'notThisPoint', { point });
		return judgedParts(parts, 'point', headline, soundSentences(exercise, point));
	}
	if (choice === undefined) {
		const parts = [part('point', 'right'), part('rule', 'unfinished')];
		return unfinished(message('practice', 'thisPoint', { point }), parts);
	}
	if (!suspect.choices.some(({ note }) => note === choice)) return notValid(message('practice', 'offered'));
	const right = choice === slip.note;
	return judgedParts(
		[part('point', 'right'), part('rule', right ? 'right' : 'wrong')],
		'rule',
		message('practice', right ? 'foundWrong' : 'notForThat', { point }),
		right ? slip.slips.map((each) => message('missteps', 'theirSlip', each)) : []
	);
};

/** Find the wrong point of a finished draft, and say what went wrong there. */
export const findWrong: ExerciseRules<'find-wrong'> = {
	asksFor: (method) => pointSteps(method).map(({ name }) => name),
	make,
	asks: ({ body }, { words }) => words.practice.askWrong({ body: body.name }),
	judge,
	explain: ({ method, body, wrong, slip }, speech) => explain(method, slip.step, body, wrong, speech)
};
