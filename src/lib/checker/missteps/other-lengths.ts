import { BadInput } from '#shared/bad-input.ts';
import { keptFor } from '#shared/kept.ts';
import type { Mm } from '#shared/units.ts';
import { NotDrafted } from '#drafting/evaluate.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Scope } from '#drafting/formula/value.ts';
import type { Method } from '#drafting/method.ts';
import { stepLeansOn, stepRuler } from '#drafting/steps/kinds.ts';
import { USED_LINE } from './priors.ts';
import type { Stand } from './stand.ts';
import { sumOf, termsOf, type Term } from './terms.ts';

/** The terms of a formula; none where it names what this body's draft does not have. */
export const termsIn = (formula: Formula, scope: Scope): readonly Term[] | undefined => {
	try {
		return termsOf(formula, scope);
	} catch (error) {
		if (error instanceof NotDrafted || error instanceof BadInput) return undefined;
		throw error;
	}
};

/** The lengths that other steps lay off, and how many steps away each is: asked for more than once in a diagnosis. */
export const otherRulers = keptFor(({ method, step, scope }: Stand) => {
	const here = method.steps.findIndex(({ name }) => name === step.name);
	return method.steps.flatMap((other, i) => {
		const ruler = i === here ? undefined : stepRuler(other);
		const terms = ruler && termsIn(ruler.formula, scope);
		return terms ? [{ name: other.name, length: sumOf(terms), away: Math.abs(i - here) }] : [];
	});
});

/** A drawn line by its name, how long it is, and how likely it is taken for another: a share of one. */
interface OtherLine {
	readonly line: string;
	readonly length: Mm;
	readonly share: number;
}

/** What the rules of a draft use: asked for in each diagnosis. */
const usedIn = keptFor((method: Method): ReadonlySet<string> => new Set(method.steps.flatMap(stepLeansOn)));

/** The lines that a length could be taken from by mistake: those drawn before, and those of the drafts that this one uses. */
export const otherLines = keptFor(({ method, step, drafted }: Stand): readonly OtherLine[] => {
	const used = usedIn(method);
	const before = method.steps.slice(
		0,
		method.steps.findIndex(({ name }) => name === step.name)
	);
	const own = before.flatMap(({ name: line }) => {
		const drawn = drafted.lines[line];
		return drawn ? [{ line, length: drawn.length }] : [];
	});
	const borrowed = Object.entries(drafted.uses ?? {}).flatMap(([alias, { lines }]) =>
		Object.entries(lines).map(([name, { length }]) => ({ line: `${alias}.${name}`, length }))
	);
	const weighed = [...own, ...borrowed].map((each) => ({
		...each,
		weight: used.has(each.line) ? USED_LINE : 1
	}));
	const whole = weighed.reduce((sum, { weight }) => sum + weight, 0);
	return weighed.map(({ weight, ...each }) => ({ ...each, share: weight / whole }));
});
