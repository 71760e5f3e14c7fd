import { BadInput, ruleWords } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { z } from '#shared/shape.ts';
import { NUMBER_TOLERANCE, POINT_TOLERANCE, SAME_PLACE } from '#shared/tolerances.ts';
import { mm, printLength, type Mm, type Unit } from '#shared/units.ts';
import { placeFinding } from '#checker/check-point.ts';
import { pointOfPlace } from '#checker/placed.ts';
import { smallWords, wayWords } from '#checker/words.ts';
import { directionTo, distance, moved, type SheetPoint } from '#geometry/point.ts';
import { straight } from '#geometry/segment.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { readSum } from '#drafting/formula/sum.ts';
import type { Method } from '#drafting/method.ts';
import type { Explanation } from '#drafting/steps/step-rules.ts';
import { capitalised } from '#drafting/words.ts';
import { chanceOf, type Chance } from '../chance.ts';
import { SEAM_SLIP } from '../constants.ts';
import { draftedBodies, type DraftedBody } from '../generate-body.ts';
import { seamRule } from '../rule.ts';
import type { ExerciseKey, ExerciseRules, JudgedPart, Judgement, Seam, TrueSeams } from './exercise.ts';
import { judgedParts, notValid, unfinished } from './judgements.ts';
import { drawnSeam, seamNames, seamPair, type SeamPair } from './seams.ts';

const answerSchema = z.object({
	longer: z.enum(['first', 'second']),
	by: z.string().check(z.maxLength(100)),
	unit: z.enum(['mm', 'cm', 'in']),
	moved: z.optional(z.tuple([z.number(), z.number()]))
});
type Answer = z.infer<typeof answerSchema>;

/** The first body of the seed whose draft has the seams and nothing to be warned of, so that they differ by the slip alone. */
const bodyWith = (key: ExerciseKey, method: Method): DraftedBody & { readonly pair: SeamPair } => {
	for (const { body, draft } of draftedBodies(key.seed, method)) {
		const pair = seamPair(method, key.step, body, draft);
		if (pair && draft.warnings.length === 0) return { body, draft, pair };
	}
	throw new Error(`no drawn body has the seams "${key.step}" of ${method.id}`);
};

const slipOf = (chance: Chance): Mm => {
	const [least, most] = SEAM_SLIP;
	const size = Math.round(least + chance.fraction() * (most - least));
	return mm(chance.fraction() < 0.5 ? -size : size);
};

/** The two ends of the last line of a pair: the one that stays, and the one that may be moved. */
const movable = ({ last }: SeamPair, draft: Draft) => {
	const [fixed = '', point = ''] = last.through.slice(-2);
	const [from, to] = [draft.points[fixed], draft.points[point]];
	const direction = from && to && directionTo(from, to);
	if (!direction) throw new Error(`${last.name} has no direction`);
	return { point, to, direction, movesFrom: { point: fixed, at: from } };
};

/** A seam whose last line ends elsewhere. */
const endingAt = (seam: Seam, from: SheetPoint, to: SheetPoint, by: Mm): Seam => {
	const end = straight(from, to);
	const parts = seam.parts.map((part, i) => {
		if (i < seam.parts.length - 1) return part;
		const [first, ...rest] = [...part.path.slice(0, -1), end];
		return { ...part, path: [first, ...rest] as const, length: mm(part.length + by) };
	});
	return { ...seam, parts, length: mm(seam.length + by) };
};

const make = (key: ExerciseKey, method: Method): TrueSeams => {
	const { body, draft, pair } = bodyWith(key, method);
	const second = drawnSeam(method, draft, pair.borrowed);
	const drawn = drawnSeam(method, draft, pair.own);
	const difference = slipOf(chanceOf(key.seed, 'true-seams', key.step));
	const by = mm(difference - (drawn.length - second.length));
	const { point, to, direction, movesFrom } = movable(pair, draft);
	const standsAt = moved(to, direction, by);
	return {
		kind: 'true-seams',
		key,
		rule: seamRule(pair.name),
		asks: `These two edges are to be sewn together. Which is the longer, and by how much? Then move ${point} along its line until they agree.`,
		method,
		body,
		draft,
		first: endingAt(drawn, movesFrom.at, standsAt, by),
		second,
		point,
		standsAt,
		movesFrom,
		difference,
		right: moved(standsAt, direction, mm(-difference))
	};
};

const longerOf = ({ difference }: TrueSeams): 'first' | 'second' => (difference > 0 ? 'first' : 'second');

/** Every length that is read may be rounded. */
const differenceTolerance = ({ first, second }: TrueSeams): Mm =>
	mm(NUMBER_TOLERANCE * (first.parts.length + second.parts.length));

/** The two numbers' part: which is the longer, and by how much. */
const judgeLengths = (exercise: TrueSeams, { longer, by, unit: written }: Answer, unit: Unit): Judgement => {
	const { value } = readSum(by, written);
	const isLonger = longer === longerOf(exercise);
	const over = mm(Math.abs(value) - Math.abs(exercise.difference));
	const isNumber = Math.abs(over) <= differenceTolerance(exercise) + SAME_PLACE;
	const parts: JudgedPart[] = [
		{ part: 'longer', answer: isLonger ? 'right' : 'wrong' },
		{ part: 'difference', answer: isNumber ? 'right' : 'wrong' }
	];
	if (isLonger && isNumber) return judgedParts(parts, 'right', 'That is the difference.');
	const sentences = [
		...(isLonger ? [] : [`The longer is ${exercise[longerOf(exercise)].words}.`]),
		...(isNumber
			? []
			: [`Your difference is ${smallWords(mm(Math.abs(over)), unit)} too ${over > 0 ? 'great' : 'small'}.`])
	];
	return judgedParts(parts, isLonger ? 'difference' : 'longer', 'That is not the difference yet.', sentences);
};

/** The point's part, once the lengths are right. */
const judgeMoved = (
	exercise: TrueSeams,
	lengths: Judgement,
	place: Answer['moved'],
	unit: Unit
): Judgement => {
	const { point, right } = exercise;
	if (!place)
		return unfinished(`${lengths.headline} Now move ${point}.`, [
			...lengths.parts,
			{ part: 'place', answer: 'unfinished' }
		]);
	const { within, across, down, tolerance } = placeFinding(
		'place',
		pointOfPlace(place),
		right,
		POINT_TOLERANCE
	);
	const parts: JudgedPart[] = [...lengths.parts, { part: 'place', answer: within ? 'right' : 'wrong' }];
	return within
		? judgedParts(parts, 'right', 'The two seams agree now.')
		: judgedParts(parts, 'place', 'The two seams do not agree yet.', [
				`${point} lies ${wayWords(across, down, unit, tolerance)}.`
			]);
};

const judge = (exercise: TrueSeams, answer: unknown, unit: Unit): Judgement => {
	const parsed = answerSchema.safeParse(answer);
	if (!parsed.success) return notValid('say which seam is the longer, and by how much');
	try {
		const lengths = judgeLengths(exercise, parsed.data, unit);
		return lengths.answer === 'right' ? judgeMoved(exercise, lengths, parsed.data.moved, unit) : lengths;
	} catch (error) {
		if (error instanceof BadInput) return notValid(ruleWords(error, englishIn('cm')));
		throw error;
	}
};

const sumWords = ({ parts, length }: Seam, unit: Unit): string =>
	parts.length > 1
		? `${parts.map((part) => printLength(part.length, unit)).join(' + ')} = ${printLength(length, unit)}`
		: printLength(length, unit);

const explain = (exercise: TrueSeams, unit: Unit): Explanation => {
	const { first, second, point, movesFrom, difference, standsAt } = exercise;
	const by = printLength(mm(Math.abs(difference)), unit);
	const way = difference > 0 ? 'toward' : 'away from';
	const reach = printLength(mm(distance(movesFrom.at, standsAt) - difference), unit);
	return {
		where: 'Measure each edge along its line, piece by piece, and add the pieces up.',
		rule: `Two edges that are sewn together must be as long as each other: ${first.words} as long as ${second.words}.`,
		worked: `${capitalised(first.words)}: ${sumWords(first, unit)}. ${capitalised(second.words)}: ${sumWords(second, unit)}. Move ${point} ${by} along its line, ${way} ${movesFrom.point}, so that it lies ${reach} from there.`
	};
};

/** Say which of two seams is the longer and by how much, then move a point along until they agree. */
export const trueSeams: ExerciseRules<'true-seams'> = { asksFor: seamNames, make, judge, explain };
