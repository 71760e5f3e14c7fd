import { z } from '#shared/shape.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { NUMBER_TOLERANCE, SAME_PLACE, type Tolerances } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { placeFinding } from '#checker/check-point.ts';
import { pointOfPlace } from '#checker/placed.ts';
import { directionTo, distance, moved, type SheetPoint } from '#geometry/point.ts';
import { straight } from '#geometry/segment.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { readSum } from '#drafting/formula/sum.ts';
import type { Explanation } from '#drafting/steps/step-rules.ts';
import { chanceOf, type Chance } from '../chance.ts';
import { SEAM_SLIP } from '../constants.ts';
import { draftedBodies, type DraftedBody } from '../generate-body.ts';
import { seamRule } from '../rule.ts';
import type {
	ExerciseKey,
	ExerciseRules,
	Judged,
	JudgedPart,
	Practised,
	Seam,
	SeamPair,
	TrueSeams
} from './exercise.ts';
import { judgedParts, notValid, readable, unfinished } from './judgements.ts';
import { drawnSeam, lastOf, linesOf } from './seams.ts';

const answerSchema = z.object({
	longer: z.enum(['first', 'second']),
	by: z.string().check(z.maxLength(100)),
	unit: z.enum(['mm', 'cm', 'in']),
	moved: z.optional(z.tuple([z.number(), z.number()]))
});
type Answer = z.infer<typeof answerSchema>;

/** The first body of the seed whose draft has nothing to be warned of. */
const bodyFor = (seed: number, method: Practised): DraftedBody => {
	for (const drafted of draftedBodies(seed, method)) if (drafted.draft.warnings.length === 0) return drafted;
	throw new Error(`every drawn body of ${method.id} is warned of`);
};

const slipOf = (chance: Chance): Mm => {
	const [least, most] = SEAM_SLIP;
	const size = Math.round(least + chance.fraction() * (most - least));
	return mm(chance.fraction() < 0.5 ? -size : size);
};

/** The two ends of the last line of a pair: the one that stays, and the one that may be moved. */
const movable = (method: Practised, draft: Draft, pair: SeamPair) => {
	const [fixed = '', point = ''] = lastOf(method, draft, pair).slice(-2);
	const [from, to] = [draft.points[fixed], draft.points[point]];
	const direction = from && to && directionTo(from, to);
	if (!direction) throw new Error(`the line to ${point} has no direction`);
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

const make = (key: ExerciseKey, method: Practised): TrueSeams => {
	const { body, draft } = bodyFor(key.seed, method);
	const pair = method.seams.find(({ name }) => name === key.step);
	if (!pair) throw new Error(`${method.id} has no seams "${key.step}"`);
	const second = drawnSeam(method, draft, pair.borrowed);
	const drawn = drawnSeam(method, draft, pair.own);
	const difference = slipOf(chanceOf(key.seed, 'true-seams', key.step));
	const by = mm(difference - (drawn.length - second.length));
	const { point, to, direction, movesFrom } = movable(method, draft, pair);
	const standsAt = moved(to, direction, by);
	return {
		kind: 'true-seams',
		key,
		rule: seamRule(pair.name),
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
const judgeLengths = (exercise: TrueSeams, { longer, by, unit }: Answer): Judged => {
	const { value } = readSum(by, unit);
	const isLonger = longer === longerOf(exercise);
	const over = mm(Math.abs(value) - Math.abs(exercise.difference));
	const isNumber = Math.abs(over) <= differenceTolerance(exercise) + SAME_PLACE;
	const parts: JudgedPart[] = [
		{ part: 'longer', answer: isLonger ? 'right' : 'wrong' },
		{ part: 'difference', answer: isNumber ? 'right' : 'wrong' }
	];
	if (isLonger && isNumber) return judgedParts(parts, 'right', message('practice', 'rightDifference'));
	const size = over > 0 ? 'differenceTooGreat' : 'differenceTooSmall';
	return judgedParts(parts, isLonger ? 'difference' : 'longer', message('practice', 'wrongDifference'), [
		...(isLonger ? [] : [message('practice', 'longerIs', { lines: linesOf(exercise[longerOf(exercise)]) })]),
		...(isNumber ? [] : [message('practice', size, { by: mm(Math.abs(over)) })])
	]);
};

/** The point's part, once the lengths are right. */
const judgeMoved = (
	{ point, right }: TrueSeams,
	lengths: Judged,
	place: Answer['moved'],
	allowed: Tolerances
): Judged => {
	if (!place)
		return unfinished(message('practice', 'nowMove', { point }), [
			...lengths.parts,
			{ part: 'place', answer: 'unfinished' }
		]);
	const finding = placeFinding('place', pointOfPlace(place), right, allowed.point);
	const { within, across, down, tolerance } = finding;
	const parts: JudgedPart[] = [...lengths.parts, { part: 'place', answer: within ? 'right' : 'wrong' }];
	return within
		? judgedParts(parts, 'right', message('practice', 'seamsAgree'))
		: judgedParts(parts, 'place', message('practice', 'seamsDisagree'), [
				message('practice', 'pointLies', { point, across, down, tolerance })
			]);
};

const judge = (exercise: TrueSeams, answer: unknown, allowed: Tolerances): Judged => {
	const parsed = answerSchema.safeParse(answer);
	if (!parsed.success) return notValid(message('practice', 'sayLonger'));
	return readable(() => {
		const lengths = judgeLengths(exercise, parsed.data);
		return lengths.answer === 'right' ? judgeMoved(exercise, lengths, parsed.data.moved, allowed) : lengths;
	});
};

const explain = (exercise: TrueSeams, { words }: Speech): Explanation => {
	const { first, second, point, movesFrom, difference, standsAt } = exercise;
	const measures = (seam: Seam): string =>
		words.practice.seamMeasures({
			lines: linesOf(seam),
			parts: seam.parts.map(({ length }) => length),
			whole: seam.length
		});
	const move = words.practice[difference > 0 ? 'moveToward' : 'moveAway']({
		point,
		by: mm(Math.abs(difference)),
		from: movesFrom.point,
		reach: mm(distance(movesFrom.at, standsAt) - difference)
	});
	return {
		where: words.practice.measureEdges,
		rule: words.practice.seamRule({ first: linesOf(first), second: linesOf(second) }),
		worked: [measures(first), measures(second), move].join(' ')
	};
};

/** Say which of two seams is the longer and by how much, then move a point along until they agree. */
export const trueSeams: ExerciseRules<'true-seams'> = {
	asksFor: ({ seams }) => seams.map(({ name }) => name),
	make,
	asks: ({ point }, { words }) => words.practice.askSeams({ point }),
	judge,
	explain
};
