import { BadInput } from '#shared/bad-input.ts';
import type { Compass } from '#shared/method.ts';
import type { Typed } from '#shared/placement.ts';
import { mm } from '#shared/units.ts';
import { moved, type SheetPoint } from '#geometry/point.ts';
import { readSum, type TypedSum } from '#drafting/formula/sum.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { stepRuler } from '#drafting/steps/kinds.ts';
import type { Ruler } from '#drafting/steps/step-rules.ts';
import { NO_DIAGNOSIS, slip, type Diagnosis, type Misstep } from './misstep.ts';
import { DISTANCES, LOWERED, PRIORS, UNKNOWN } from './priors.ts';
import type { Stand } from './stand.ts';
import { termsOf, type Term } from './terms.ts';
import { readings, type Part } from './typed-readings.ts';
import { comparedWith, isWorked, numbersIn, typedTerms, type TypedTerm } from './typed-sum.ts';
import { decided } from './weigh.ts';
import { wrongDistances } from './wrong-distances.ts';

/** A distance that was typed, with its start and its way. */
export type TypedDistance = Extract<Typed, { form: 'distance' }>;

/** Whether a measurement was typed as it stands: taken whole, and everything else left out. */
const isUntouched = (parts: readonly Part[]): boolean =>
	parts.length > 1 && parts.every(({ note }) => /^fraction:whole-for-|left-out/.test(note));

/** Several things wrong at once are one, the rarer the more they are. */
const priorOf = (parts: readonly Part[]): number =>
	isUntouched(parts)
		? PRIORS.untouched
		: parts.reduce((all, { prior }) => all * prior, 1) * LOWERED.anotherStep ** (parts.length - 1);

const noteOf = (parts: readonly Part[]): string => parts.map(({ note }) => note).join('+');

/** What the sum was meant for: the rule's own terms, or all that may be wrong with it, each with the best prior that leads to it. */
const sumParts = (
	{ formula }: Ruler,
	stand: Stand,
	typed: readonly TypedTerm[],
	{ unit }: TypedDistance
): readonly (readonly Part[])[] | 'right' => {
	const compared = (terms: readonly Term[]): 'sum' | 'number' | undefined => comparedWith(typed, terms, unit);
	const rule = termsOf(formula, stand.scope);
	if (compared(rule)) return 'right';
	const working = { ...stand, points: stand.earlier.map(({ name }) => name) };
	const fitting = wrongDistances(formula, working)
		.map((wrong) => ({ wrong, how: compared(wrong.terms) }))
		.filter(({ how }) => how !== undefined);
	const asSums = fitting.filter(({ how }) => how === 'sum');
	const found = [
		...(asSums.length > 0 ? asSums : fitting).map(({ wrong, how }) => [
			{
				note: wrong.note,
				prior: wrong.prior * (how === 'number' && isWorked(typed) ? LOWERED.onlyNumber : 1),
				slip: wrong.slip()
			}
		]),
		...readings(typed, rule, working, unit)
	];
	const best = new Map<string, readonly Part[]>();
	for (const parts of found.toSorted((a, b) => priorOf(a) - priorOf(b))) best.set(noteOf(parts), parts);
	return [...best.values()];
};

const startPart = ({ from }: Ruler, typed: TypedDistance): readonly Part[] =>
	typed.from === from
		? []
		: [
				{
					note: `start:${typed.from}-for-${from}`,
					prior: PRIORS.start,
					slip: slip('start', { wrong: typed.from, right: from })
				}
			];

const UPRIGHT: readonly Compass[] = ['up', 'down'];

const wayPart = ({ go }: Ruler, typed: TypedDistance): readonly Part[] => {
	if (typed.go === go) return [];
	if (go === undefined)
		return [{ note: 'slope', prior: PRIORS.slope, slip: slip('notSloping', { wrong: typed.go }) }];
	const opposite = UPRIGHT.includes(typed.go) === UPRIGHT.includes(go);
	return [
		{
			note: opposite ? 'direction:opposite' : 'direction:crossed',
			prior: opposite ? PRIORS.opposite : PRIORS.crossed,
			slip: slip('way', { wrong: typed.go, right: go })
		}
	];
};

const together = ([first, ...more]: readonly Part[], place: SheetPoint): Misstep | undefined => {
	if (!first) return undefined;
	const parts = [first, ...more];
	return {
		note: noteOf(parts),
		prior: priorOf(parts),
		place,
		slips: [first.slip, ...more.map((each) => each.slip)]
	};
};

/** The other step whose rule was typed, where it was the rule of another step. */
const otherStep = (stand: Stand, typed: TypedDistance, terms: readonly TypedTerm[]): Part | undefined => {
	const other = stand.method.steps.find((step) => {
		const ruler = stepRuler(step);
		if (!ruler || step === stand.step || ruler.from !== typed.from || ruler.go !== typed.go) return false;
		return comparedWith(terms, termsOf(ruler.formula, stand.scope), typed.unit) !== undefined;
	});
	return (
		other && {
			note: `point:${other.name}-for-${stand.step.name}`,
			prior: PRIORS.otherPoint,
			slip: slip('otherPoint', { wrong: other.name, right: stand.step.name })
		}
	);
};

const read = ({ sum, unit }: TypedDistance): TypedSum | undefined => {
	try {
		return readSum(sum, unit);
	} catch (error) {
		if (error instanceof BadInput) return undefined;
		throw error;
	}
};

/**
 * What a typed sum tells, with the start and the way that were typed: it is compared with the rule's own
 * terms and with those of every wrong rule. Undefined where it tells nothing, so that the place has to be
 * weighed: the sum, the start and the way are all the rule's; or no rule comes to it, and it is a bare number
 * or was laid off another way.
 */
export const diagnoseTyped = (
	stand: Stand,
	typed: TypedDistance,
	placed: SheetPoint
): Diagnosis | undefined => {
	const [ruler, sum] = [stepRuler(stand.step), read(typed)];
	if (!ruler || !sum) return undefined;
	const terms = typedTerms(sum.formula);
	const parts = sumParts(ruler, stand, terms, typed);
	const begin = stand.drafted.points[typed.from];
	const place = begin ? moved(begin, COMPASS[typed.go], mm(sum.value)) : placed;
	const ways = [...startPart(ruler, typed), ...wayPart(ruler, typed)];
	const other = parts !== 'right' || ways.length > 1 ? otherStep(stand, typed, terms) : undefined;
	if (other && ways.length > 0) return decided([[{ ...other, slips: [other.slip], place }, other.prior]], 0);
	const wrong = parts === 'right' || parts.length === 0 ? [ways] : parts.map((part) => [...part, ...ways]);
	const candidates = [...(other ? [[other]] : []), ...wrong].flatMap((each) => together(each, place) ?? []);
	// A bare number that no rule comes to is no more than a place; so is a sum by the rule, from a start that stood wrong.
	if (candidates.length === 0) return parts !== 'right' && isWorked(terms) ? NO_DIAGNOSIS : undefined;
	// A number that was typed by chance is one of as many as there are millimetres.
	const byChance = parts === 'right' ? 0 : UNKNOWN / DISTANCES ** numbersIn(terms);
	return decided(
		candidates.map((each) => [each, each.prior] as const),
		byChance
	);
};
