import { BadInput } from '#shared/bad-input.ts';
import type { Compass } from '#shared/method.ts';
import type { Typed } from '#shared/placement.ts';
import { mm } from '#shared/units.ts';
import { moved, type SheetPoint } from '#geometry/point.ts';
import { readSum, type TypedSum } from '#drafting/formula/sum.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { stepRuler } from '#drafting/steps/kinds.ts';
import type { Ruler } from '#drafting/steps/step-rules.ts';
import { NO_DIAGNOSIS, slip, type Diagnosis, type Misstep, type Slip } from './misstep.ts';
import { LOWERED, PRIORS } from './priors.ts';
import type { Stand } from './stand.ts';
import { termsOf, type Term } from './terms.ts';
import { comparedWith, isWorked, typedTerms, type TypedTerm } from './typed-sum.ts';
import { decided } from './weigh.ts';
import { wrongDistances } from './wrong-distances.ts';

/** A distance that was typed, with its start and its way. */
export type TypedDistance = Extract<Typed, { form: 'distance' }>;

/** One thing that is wrong with what was typed. */
type Part = Pick<Misstep, 'note' | 'prior'> & { readonly slip: Slip };

/** What the sum was meant for: the rule's own terms (no part), or the wrong rules that it fits, best first. */
const sumParts = (
	{ formula }: Ruler,
	stand: Stand,
	typed: readonly TypedTerm[],
	{ unit }: TypedDistance
): readonly Part[] | 'right' | undefined => {
	const compared = (terms: readonly Term[]): 'sum' | 'number' | undefined => comparedWith(typed, terms, unit);
	if (compared(termsOf(formula, stand.scope))) return 'right';
	const points = stand.earlier.map(({ name }) => name);
	const fitting = wrongDistances(formula, { ...stand, points })
		.map((wrong) => ({ wrong, how: compared(wrong.terms) }))
		.filter(({ how }) => how !== undefined);
	const asSums = fitting.filter(({ how }) => how === 'sum');
	const kept = asSums.length > 0 ? asSums : fitting;
	return kept.length > 0 ? kept.map(({ wrong }) => wrong) : undefined;
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

/** Several things wrong at once are one misstep: each after the first makes it rarer. */
const together = ([first, ...more]: readonly Part[], place: SheetPoint): Misstep | undefined => {
	if (!first) return undefined;
	const parts = [first, ...more];
	return {
		note: parts.map(({ note }) => note).join('+'),
		prior: parts.reduce((all, { prior }) => all * prior, 1) * LOWERED.anotherStep ** (parts.length - 1),
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
	if (!parts) return isWorked(terms) && ways.length === 0 ? NO_DIAGNOSIS : undefined;
	const other =
		ways.length > 0 && (parts !== 'right' || ways.length > 1) ? otherStep(stand, typed, terms) : undefined;
	if (other) return decided([[{ ...other, slips: [other.slip], place }, other.prior]], 0);
	const wrong = parts === 'right' ? [ways] : parts.map((part) => [part, ...ways]);
	const candidates = wrong.flatMap((each) => together(each, place) ?? []);
	return candidates.length > 0
		? decided(
				candidates.map((each) => [each, each.prior] as const),
				0
			)
		: undefined;
};
