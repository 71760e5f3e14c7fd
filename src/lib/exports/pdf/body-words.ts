import { capital, The, the } from '#shared/speech/en/grammar.ts';
import type { AllowanceValues } from '#shared/allowances.ts';
import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { MEASUREMENTS } from '#shared/measurements.ts';
import { printLength, type Unit } from '#shared/units.ts';
import { scopeOf, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isPointName } from '#drafting/names.ts';
import { isDrafted, stepKeys } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { allowanceNoun } from '#shared/speech/en/nouns.ts';
import { table, type TextBlock } from './text-pages.ts';

/** A method worked for a body, as a sheet tells of it. */
export interface WorkedMethod {
	readonly method: Method;
	readonly body: Body;
	/** The method's draft for this body. */
	readonly draft: Draft;
	/** In which lengths are written. */
	readonly unit: Unit;
	/** Allowances chosen for the draft, over the body's own. */
	readonly chosen?: AllowanceValues;
}

/**
 * The steps that this body's draft has, in turn: all, or those of a lesson by their names. Throws BadInput for a name
 * that the method does not have.
 */
export const stepsOf = (
	{ method, body, draft, chosen }: WorkedMethod,
	names?: readonly string[]
): readonly Step[] => {
	const unknown = names?.find((name) => method.steps.every((step) => step.name !== name));
	if (unknown !== undefined) throw new BadInput('steps', `${method.name} has no step "${unknown}"`);
	const scope = scopeOf(method, body, draft, chosen);
	return method.steps.filter((step) => (names?.includes(step.name) ?? true) && isDrafted(step, scope));
};

/** What a step is called on paper: a point by its letter and what it is, a line by what it is. */
export const stepTitle = ({ name, label }: Step): string =>
	isPointName(name) ? `${name}: ${the(label)}` : The(label);

const SHARES = [0.7, 0.3] as const;

/** The measurements and the allowances that some steps name, as two tables; one that nothing names is left out. */
export const bodyBlocks = (
	{ method, body, draft, unit, chosen }: WorkedMethod,
	steps: readonly Step[]
): readonly TextBlock[] => {
	const scope = scopeOf(method, body, draft, chosen);
	const keysOf = (kind: 'measurement' | 'allowance'): ReadonlySet<string> =>
		new Set(steps.flatMap((step) => stepKeys(step, kind)));
	const measured = keysOf('measurement');
	const allowed = keysOf('allowance');
	const measurements = MEASUREMENTS.filter(({ key }) => measured.has(key)).map(({ key, title, what }) => [
		`${title}: ${what}`,
		printLength(scope.measurement(key), unit)
	]);
	const allowances = method.allowances
		.filter(({ key }) => allowed.has(key))
		.map(({ key, noun }) => [
			capital(allowanceNoun({ key, noun }).name),
			printLength(scope.allowance(key), unit)
		]);
	return [
		...(measurements.length > 0 ? table(['Measurement', body.name], SHARES, measurements) : []),
		...(allowances.length > 0 ? table(['Allowance', 'Chosen'], SHARES, allowances) : [])
	];
};
