import type { StepFile, StepKind } from '#shared/method.ts';
import type { Language } from '#shared/speech/language.ts';
import { readNoun } from '#shared/speech/noun.ts';
import { depends } from '../conditions.ts';
import {
	formulaKeys,
	formulaLengths,
	formulaNeeds,
	type DrawnLength,
	type Formula
} from '../formula/formula.ts';
import type { Scope } from '../formula/value.ts';
import { isPointName } from '../names.ts';
import type { Telling } from '../formula/words.ts';
import { along } from './along.ts';
import { arc } from './arc.ts';
import { carried } from './carried.ts';
import { chain } from './chain.ts';
import { corner } from './corner.ts';
import { curve } from './curve.ts';
import { division } from './division.ts';
import { level } from './level.ts';
import { mark } from './mark.ts';
import { meeting } from './meeting.ts';
import { mirror } from './mirror.ts';
import { parallel } from './parallel.ts';
import { section } from './section.ts';
import { spread } from './spread.ts';
import type { Explanation, FormulaReader, Step, StepRules, Work } from './step-rules.ts';
import { straight } from './straight.ts';
import { swing } from './swing.ts';
import { traced } from './traced.ts';
import { turn } from './turn.ts';
import { until } from './until.ts';

/** Every kind of step: a kind that is in the schema and not here does not compile. */
const KINDS: { readonly [K in StepKind]: StepRules<K> } = {
	corner,
	mark,
	meeting,
	division,
	along,
	swing,
	level,
	straight,
	curve,
	turn,
	spread,
	mirror,
	section,
	chain,
	parallel,
	arc,
	until,
	traced,
	carried
};

/** The rules for the kind of this step; which kind it is only the step knows, so they take whatever step they are given. */
const rulesOf = (step: { readonly kind: StepKind }): StepRules<never> => KINDS[step.kind];

/** Whether a learner answers this step with a place or with a line. */
export const stepMakes = (step: Step | StepFile): 'point' | 'line' => {
	const { makes } = rulesOf(step);
	if (makes !== 'either') return makes;
	return isPointName(step.name) ? 'point' : 'line';
};

/** Whether a step stands on the sheet as soon as what it needs does: the corner, and what is traced, carried or follows from a drawn line. */
export const isGiven = (step: Step): boolean =>
	rulesOf(step).given === true || (step.kind === 'straight' && step.given === true);

/** Reads a step's formulas, with those that it depends on, and what it is called in `language`. */
export const readStep = (file: StepFile, formula: FormulaReader, language: Language): Step => {
	const { when, unless, label, ...rest } = file;
	return {
		...(rulesOf(file).read(rest as never, formula) as Step),
		label: typeof label === 'string' ? readNoun(label, language) : label,
		...(when === undefined ? {} : { when: formula(when, 'when') }),
		...(unless === undefined ? {} : { unless: formula(unless, 'unless') })
	};
};

/** The formulas that a step is worked from. */
const stepFormulas = (step: Step): readonly Formula[] => rulesOf(step).formulas(step);

/** The formulas on which it depends whether a step is drafted. */
export const dependenceFormulas = ({ when, unless }: Step): readonly Formula[] =>
	[when, unless].filter((formula) => formula !== undefined);

/** Every point and line that must be drafted before this step. */
export const stepNeeds = (step: Step): readonly string[] => [
	...new Set([
		...rulesOf(step).needs(step),
		...[...stepFormulas(step), ...dependenceFormulas(step)].flatMap(formulaNeeds)
	])
];

/** The point from which a drafter measures in this step, where there is one. */
export const stepStart = (step: Step): string | undefined => rulesOf(step).start(step);

/** Whether a given step is a line that follows from drawn ones, and not a thing traced, carried or the corner. */
export const followsFromLines = (step: Step): boolean =>
	isGiven(step) && !['corner', 'traced', 'carried'].includes(step.kind);

/** Whether this body's draft has the step at all. */
export const isDrafted = (step: Step, scope: Scope): boolean =>
	depends(step, scope) && (rulesOf(step).exists?.(step, scope) ?? true);

/** Works a step from what is in scope: a place, a line, or why there is none. */
export const workStep = (step: Step, scope: Scope): Work => rulesOf(step).work(step, scope);

/** A step's rule in words and numbers. */
export const explainStep = (step: Step, scope: Scope, telling: Telling): Explanation =>
	rulesOf(step).explain(step, scope, telling);

/** The keys of the measurements, or of the allowances, that a step's formulas name (not those that it only depends on). */
export const stepKeys = (step: Step, kind: 'measurement' | 'allowance'): readonly string[] => [
	...new Set(stepFormulas(step).flatMap((formula) => formulaKeys(formula, kind)))
];

/** The drawn lengths and distances that a step's formulas name. */
export const stepLengths = (step: Step): readonly DrawnLength[] => stepFormulas(step).flatMap(formulaLengths);
