import { keptFor } from '#shared/kept.ts';
import type { MotionFile, StepFile, StepKind } from '#shared/method.ts';
import type { Language } from '#shared/speech/language.ts';
import { message } from '#shared/speech/message.ts';
import { readNoun } from '#shared/speech/noun.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { segmentPlaces } from '#geometry/segment.ts';
import { depends } from '../conditions.ts';
import {
	formulaKeys,
	formulaLengths,
	formulaNames,
	formulaParts,
	type DrawnLength,
	type Formula
} from '../formula/formula.ts';
import { chosenOf, type Scope } from '../formula/value.ts';
import { isBorrowed, isPointName } from '../names.ts';
import type { Telling } from '../formula/words.ts';
import { along } from './along.ts';
import { arc } from './arc.ts';
import { carried } from './carried.ts';
import { chain } from './chain.ts';
import { corner } from './corner.ts';
import { crossing } from './crossing.ts';
import { curve } from './curve.ts';
import { division } from './division.ts';
import { folded } from './folded.ts';
import { level } from './level.ts';
import { mark } from './mark.ts';
import { meeting } from './meeting.ts';
import { mirror } from './mirror.ts';
import { parallel } from './parallel.ts';
import { section } from './section.ts';
import { spread } from './spread.ts';
import {
	impossible,
	type Answer,
	type Explanation,
	type FormulaReader,
	type Ruler,
	type Step,
	type StepRules,
	type Work
} from './step-rules.ts';
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
	folded,
	crossing,
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

/** What a learner puts down for a step. */
export const stepAnswer = (step: Step): Answer => rulesOf(step).answer(step);

/** Whether a step stands on the sheet as soon as what it needs does: the corner, and what is traced, carried or follows from a drawn line. */
export const isGiven = (step: Step): boolean => stepAnswer(step).put === 'nothing';

/** Whether it is the corner: the one point that is given and not traced or carried. */
export const isCorner = (step: Step): boolean => rulesOf(step).makes === 'point' && isGiven(step);

/** How the line of a step is inked. */
export const stepInk = (step: Step): 'level' | 'traced' | 'line' => rulesOf(step).ink ?? 'line';

/** What a step lays off, where it is one length from a point. */
export const stepRuler = (step: Step): Ruler | undefined => rulesOf(step).ruler?.(step);

/** The points that the line of a step runs through, where it is drawn between points. */
export const stepPasses = (step: Step): readonly string[] => rulesOf(step).passes?.(step) ?? [];

/** The motion of a step that carries others with it. */
export const stepMotion = (step: StepFile): MotionFile | undefined => rulesOf(step).motion?.(step as never);

/** What has a newer copy once a step is drafted. */
export const stepLeaves = (step: Step): string | undefined => rulesOf(step).leaves?.(step);

/** The line of which a step's is a part. */
export const stepPartOf = (step: Step): string | undefined => rulesOf(step).partOf?.(step);

/** The one number of a step that is to be worked out before it is placed, where it has one. */
export const stepNumber = (step: Step): Formula | undefined => rulesOf(step).number?.of(step);

/** A step with another number. Throws where the step has none. */
export const withNumber = (step: Step, number: Formula): Step => {
	const rules = rulesOf(step).number;
	if (!rules) throw new Error(`${step.name} has no number to be worked out`);
	return rules.put(step, number) as Step;
};

/** What tells a step's rule from others of its kind. */
export const stepRule = (step: Step): readonly (string | Formula)[] => rulesOf(step).rule?.(step) ?? [];

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
export const stepFormulas = (step: Step): readonly Formula[] => rulesOf(step).formulas(step);

/** The formulas on which it depends whether a step is drafted. */
export const dependenceFormulas = ({ when, unless }: Step): readonly Formula[] =>
	[when, unless].filter((formula) => formula !== undefined);

/** Every point and line that a step follows from, of its own draft or of another's (`back.shoulder`). */
export const stepLeansOn = keptFor((step: Step): readonly string[] => [
	...new Set([
		...rulesOf(step).needs(step),
		...[...stepFormulas(step), ...dependenceFormulas(step)].flatMap(formulaNames)
	])
]);

/** Every point and line that must be drafted before this step. */
export const stepNeeds = keptFor((step: Step): readonly string[] =>
	stepLeansOn(step).filter((name) => !isBorrowed(name))
);

/** The point from which a drafter measures in this step, where there is one. */
export const stepStart = (step: Step): string | undefined => rulesOf(step).start(step);

/** Whether a given step is a line that follows from drawn ones, and not a thing traced, carried or the corner. */
export const followsFromLines = (step: Step): boolean => rulesOf(step).makes === 'line' && isGiven(step);

/** Whether this body's draft has the step at all. */
export const isDrafted = (step: Step, scope: Scope): boolean =>
	depends(step, scope) && (rulesOf(step).exists?.(step, scope) ?? true);

const isFinitePlace = ({ x, y }: SheetPoint): boolean => Number.isFinite(x) && Number.isFinite(y);

/** Works a step from what is in scope: a place, a line, or why there is none. For one body a rule may divide by nothing. */
export const workStep = (step: Step, scope: Scope): Work => {
	const work = rulesOf(step).work(step, scope);
	if (work.kind === 'impossible') return work;
	const isSound =
		work.kind === 'point'
			? isFinitePlace(work.point)
			: work.path.every((segment) => segmentPlaces(segment).every(isFinitePlace));
	return isSound ? work : impossible(message('drafts', 'notFinite', { name: step.name }));
};

/** A step's rule in words and numbers. */
export const explainStep = (step: Step, scope: Scope, telling: Telling): Explanation =>
	rulesOf(step).explain(step, scope, telling);

/** The keys of the measurements, or of the allowances, that a step's formulas name (not those that it only depends on). */
export const stepKeys = (step: Step, kind: 'measurement' | 'allowance'): readonly string[] => [
	...new Set(stepFormulas(step).flatMap((formula) => formulaKeys(formula, kind)))
];

/** The drawn lengths and distances that a step's formulas name; of a choice, those of the formula that holds for this body. */
export const stepLengths = (step: Step, scope: Scope): readonly DrawnLength[] => {
	const partsHere = (each: Formula): readonly Formula[] =>
		each.kind === 'choice' ? [chosenOf(each, scope)] : formulaParts(each);
	return stepFormulas(step).flatMap((formula) => formulaLengths(formula, partsHere));
};
