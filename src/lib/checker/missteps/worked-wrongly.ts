import { stepRuler } from '#drafting/steps/kinds.ts';
import type { Method } from '#drafting/method.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import { LOWERED } from './priors.ts';
import { sumOf, termsOf } from './terms.ts';
import { wholePart } from './whole-part.ts';
import { put, type Wide } from './wide-rule.ts';
import { wrongDistances } from './wrong-distances.ts';

/** The rule by which the one of two points was marked from the other, where it was. */
const ruleBetween = (a: string, b: string, { steps }: Method): Formula | undefined =>
	[a, b].flatMap((name, i) => {
		const step = steps.find((each) => each.name === name);
		const ruler = step && stepRuler(step);
		return ruler?.from === (i === 0 ? b : a) ? [ruler.formula] : [];
	})[0];

/** A distance that stands on the sheet worked out again, and wrongly: the waist without its darts. */
export const workedWrongly: Wide = (rule, stand) =>
	rule.terms.flatMap((term, i) => {
		const { leaf } = term;
		const formula = leaf.kind === 'distance' ? ruleBetween(leaf.from, leaf.to, stand.method) : undefined;
		if (!formula) return [];
		const terms = termsOf(formula, stand.scope);
		const other = { ...rule, formula, terms, whole: sumOf(terms) };
		const common = wrongDistances(formula, { ...stand, points: [] }).map((wrong) => ({
			...wrong,
			value: sumOf(wrong.terms)
		}));
		return [...common, ...wholePart(other, stand)].map(({ note, prior, value, slip }) => ({
			...{ note, slip, term: i },
			prior: prior * LOWERED.workedAgain,
			value: put(rule, term, { base: value })
		}));
	});
