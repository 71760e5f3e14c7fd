import type { Compass, FormulaText, HeadingFile, MotionFile, StepFileOf, StepKind } from '#shared/method.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Message } from '#shared/speech/message.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Formula } from '../formula/formula.ts';
import type { Scope } from '../formula/value.ts';
import type { Telling } from '../formula/words.ts';

/** The fields that say whether a step is drafted at all. */
type Dependence = 'when' | 'unless';
/** The fields that every kind of step has, and none reads for itself. */
type Common = Dependence | 'label';

/** A step of one kind as the program uses it: the file's fields, with formulas read into trees. */
export type StepOf<K extends StepKind> = {
	readonly [F in keyof StepFileOf<K>]: StepFileOf<K>[F] extends FormulaText | undefined
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
	/** The formula with its arithmetic, "half the shoulder width + 3 = 19.2 + 3 = 22.2 cm", where the step has one. */
	readonly arithmetic?: string;
}

/** Reads the text of a formula in field `field`. */
export interface FormulaReader {
	(text: string, field: string, wanted?: 'length' | 'share'): Formula;
	/** Reads a length that is written with its unit. */
	quantity(text: string, field: string): Mm;
}

/** A point that keeps to a way from where it begins: straight on, or round a centre. */
export interface OnItsWay {
	readonly put: 'way';
	readonly from: string;
	readonly on: { readonly go: Compass } | { readonly about: string };
	/** The part of the draft that goes with it turns about the centre as a card about a pin: onto this point, or as far as a slash opens. */
	readonly turns?: { readonly onto: string | undefined };
	/** The curve that grows with it, and the length that it must come to; without one a part of the draft goes with it. */
	readonly grows?: Pick<StepOf<'until'>, 'rule' | 'through' | 'length'>;
}

/** What a learner puts down for a step. */
export type Answer =
	/** Nothing: it stands on the sheet as soon as what it needs does. */
	| { readonly put: 'nothing' }
	| { readonly put: 'place' }
	| OnItsWay
	/** A line squared across from a point: its far end, which may run on. */
	| { readonly put: 'level'; readonly from: string }
	| { readonly put: 'ends'; readonly first: string; readonly last: string }
	| { readonly put: 'handles'; readonly through: StepOf<'curve'>['through'] };

/** What a step lays off with ruler or compasses. */
export interface Ruler {
	readonly formula: Formula;
	readonly from: string;
	/** Its way on the sheet; none along a slope. */
	readonly go?: Compass;
	/** What is seen of it on the sheet: its edge toward a point, or the level that the compasses are swung to. */
	readonly along?: { readonly toward: string } | 'level';
}

/** Everything that the program knows of one kind of step. */
export interface StepRules<K extends StepKind> {
	/** Whether a learner answers with a place or with a line; `either` where the step's name tells. */
	readonly makes: 'point' | 'line' | 'either';
	/** How its line is inked, where that is not as most lines are. */
	readonly ink?: 'level' | 'traced';
	answer(step: StepOf<K>): Answer;
	/** What is laid off, where it is one length from a point. */
	ruler?(step: StepOf<K>): Ruler | undefined;
	/** The points that a line runs through. */
	passes?(step: StepOf<K>): readonly string[];
	/** The motion that takes along whatever the step carries. */
	motion?(step: StepFileOf<K>): MotionFile;
	/** What has a newer copy once the step is drafted. */
	leaves?(step: StepOf<K>): string;
	/** The line of which it is a part. */
	partOf?(step: StepOf<K>): string;
	/** The one number to be worked out before it is placed, and the step with another number there. */
	number?: { of(step: StepOf<K>): Formula; put(step: StepOf<K>, formula: Formula): StepOf<K> };
	/** What tells its rule from others of the kind; nothing where the kind has one rule. */
	rule?(step: StepOf<K>): readonly (string | Formula)[];
	/** Whether a body's draft has the step, beside what the step says of it: what is moved must be there. */
	exists?(step: StepOf<K>, scope: Scope): boolean;
	/** Reads the formulas of the kind's own fields. */
	read(file: Omit<StepFileOf<K>, Common>, formula: FormulaReader): Omit<StepOf<K>, Common>;
	/** The formulas that the step is worked from. */
	formulas(step: StepOf<K>): readonly Formula[];
	/** The points and lines that the step starts from, of whichever draft, beside those that its formulas name. */
	needs(step: StepOf<K>): readonly string[];
	/** The point from which a drafter measures. */
	start(step: StepOf<K>): string | undefined;
	work(step: StepOf<K>, scope: Scope): Work;
	explain(step: StepOf<K>, scope: Scope, telling: Telling): Explanation;
}

export const NOTHING: Answer = { put: 'nothing' };
export const PLACE: Answer = { put: 'place' };

export const madePoint = (point: SheetPoint): Work => ({ kind: 'point', point });
export const madeLine = (path: Path): Work => ({ kind: 'line', path });
export const impossible = (why: Message): Work => ({ kind: 'impossible', why });

/** How far it is from one place to another, for a rule that says so. */
export const offsetTo = (from: SheetPoint, to: SheetPoint): { readonly across: Mm; readonly down: Mm } => ({
	across: mm(to.x - from.x),
	down: mm(to.y - from.y)
});
