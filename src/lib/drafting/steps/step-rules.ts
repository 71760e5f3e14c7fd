import type { HeadingFile, StepFileOf, StepKind } from '#shared/method.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Message } from '#shared/speech/message.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Formula } from '../formula/formula.ts';
import type { Scope } from '../formula/value.ts';
import type { Telling } from '../formula/words.ts';

/** The fields of a step that hold formulas once the step has been read. */
type FormulaField =
	| 'by'
	| 'length'
	| 'level'
	| 'reach'
	| 'at'
	| 'share'
	| 'opening'
	| 'lessStart'
	| 'lessEnd'
	| 'turn'
	| Dependence;
/** The fields that say whether a step is drafted at all. */
type Dependence = 'when' | 'unless';
/** The fields that every kind of step has, and none reads for itself. */
type Common = Dependence | 'label';

/** A step of one kind as the program uses it: the file's fields, with formulas read into trees. */
export type StepOf<K extends StepKind> = {
	readonly [F in keyof StepFileOf<K>]: F extends FormulaField
		? Formula | Extract<StepFileOf<K>[F], undefined>
		: F extends 'within'
			? readonly [least: Mm, most: Mm]
			: F extends 'label'
				? Noun
				: StepFileOf<K>[F];
};
/** A step of any kind. */
export type Step = { [K in StepKind]: StepOf<K> }[StepKind];
export type Heading = HeadingFile;

/** What working a step gives: a place, a line, or the reason why there is none. */
export type Work =
	| { readonly kind: 'point'; readonly point: SheetPoint }
	| { readonly kind: 'line'; readonly path: Path }
	| { readonly kind: 'impossible'; readonly why: Message };

/** A step's rule in three rungs: where to look, the rule in words, and the rule worked with this body's numbers. */
export interface Explanation {
	readonly where: string;
	readonly rule: string;
	readonly worked: string;
	/** The formula with its arithmetic, "half the back width + 3 = 19.2 + 3 = 22.2 cm", where the step has one. */
	readonly arithmetic?: string;
}

/** Reads the text of a formula in field `field`. */
export interface FormulaReader {
	(text: string, field: string, wanted?: 'length' | 'share'): Formula;
	/** Reads a length that is written with its unit. */
	quantity(text: string, field: string): Mm;
}

/** Everything that the program knows of one kind of step. */
export interface StepRules<K extends StepKind> {
	/** Whether a learner answers with a place or with a line; `either` where the step's name tells. */
	readonly makes: 'point' | 'line' | 'either';
	/** Whether it stands on the sheet as soon as what it needs does: nobody has to draw it. */
	readonly given?: true;
	/** Whether a body's draft has the step, beside what the step says of it: what is moved must be there. */
	exists?(step: StepOf<K>, scope: Scope): boolean;
	/** Reads the formulas of the kind's own fields. */
	read(file: Omit<StepFileOf<K>, Common>, formula: FormulaReader): Omit<StepOf<K>, Common>;
	/** The formulas that the step is worked from. */
	formulas(step: StepOf<K>): readonly Formula[];
	/** The points and lines that the step starts from, beside those that its formulas name. */
	needs(step: StepOf<K>): readonly string[];
	/** The point from which a drafter measures. */
	start(step: StepOf<K>): string | undefined;
	work(step: StepOf<K>, scope: Scope): Work;
	explain(step: StepOf<K>, scope: Scope, telling: Telling): Explanation;
}

export const madePoint = (point: SheetPoint): Work => ({ kind: 'point', point });
export const madeLine = (path: Path): Work => ({ kind: 'line', path });
export const impossible = (why: Message): Work => ({ kind: 'impossible', why });

/** How far it is from one place to another, for a rule that says so. */
export const offsetTo = (from: SheetPoint, to: SheetPoint): { readonly across: Mm; readonly down: Mm } => ({
	across: mm(to.x - from.x),
	down: mm(to.y - from.y)
});
