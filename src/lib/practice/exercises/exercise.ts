import type { Body } from '#shared/body.ts';
import type { Place, Placement } from '#shared/placement.ts';
import { z } from '#shared/shape.ts';
import type { Message } from '#shared/speech/message.ts';
import type { LineName } from '#shared/speech/en/practice.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Tolerances } from '#shared/tolerances.ts';
import type { Mm, Unit } from '#shared/units.ts';
import type { Verdict } from '#shared/verdict.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Diagnosis, Slip } from '#checker/missteps/misstep.ts';
import type { Draft, Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { Explanation } from '#drafting/steps/step-rules.ts';
import { EXERCISE_KINDS, type ExerciseKind } from './exercise-kinds.ts';

export { EXERCISE_KINDS, type ExerciseKind };

/**
 * What an exercise is made from: the same key always gives the same exercise, so that a key is all that
 * has to be kept or sent. `step` is the point to place; for two seams it is the name of the garment's seam.
 */
export const exerciseKeySchema = z.strictObject({
	kind: z.enum(EXERCISE_KINDS),
	seed: z.int(),
	method: z.string(),
	step: z.string()
});
export type ExerciseKey = z.infer<typeof exerciseKeySchema>;

/** Two edges that are sewn together: the lines of a method's own, and those of a draft that it uses. */
export interface SeamPair {
	readonly name: string;
	/** What the garment calls it. */
	readonly label: string;
	readonly own: readonly string[];
	readonly borrowed: readonly string[];
}

/** A method to be practised, with the seams of garments that its lines are trued by. */
export interface Practised extends Method {
	readonly seams: readonly SeamPair[];
}

/** What every exercise has. */
interface Asked<K extends ExerciseKind> {
	readonly kind: K;
	readonly key: ExerciseKey;
	/** The rule that it asks for, as mastery is kept of it. */
	readonly rule: string;
	readonly method: Method;
	readonly body: Body;
	/** The body's true draft. It holds the answer: show of it what the exercise says. */
	readonly draft: Draft;
}

/** Say from which point of the sheet a step is measured, before anything is worked out. */
export interface FindStart extends Asked<'find-start'> {
	readonly step: string;
	readonly soFar: Drafted;
	/** The answer. */
	readonly start: string;
	/** What the rule uses besides. */
	readonly used: readonly string[];
	/** A few points of which it starts from one: the first help. */
	readonly among: readonly string[];
}

/** Place the next point of a draft. */
export interface NextPoint extends Asked<'next-point'> {
	readonly step: string;
	/** What stands on the sheet. */
	readonly soFar: Drafted;
}

/** Something that may have gone wrong at a point. */
export interface Choice {
	readonly note: string;
	readonly slips: readonly Slip[];
}

/** A point that may be the wrong one, and the choices of what went wrong there. */
export interface Suspect {
	readonly step: string;
	readonly choices: readonly Choice[];
}

/** Find the wrong point of a finished draft, and say which rule was broken. */
export interface FindWrong extends Asked<'find-wrong'> {
	/** The finished draft: one point was done wrongly, and everything after it followed through. */
	readonly wrong: Drafted;
	/** Every point that may be named; for each, what may have gone wrong there, so that the choices give nothing away. */
	readonly suspects: readonly Suspect[];
	/** The answer: the wrong step and its misstep. */
	readonly slip: { readonly step: string } & Choice;
}

/** Work out a number before placing its point. */
export interface WorkNumber extends Asked<'work-number'> {
	readonly step: string;
	readonly soFar: Drafted;
	/** The answer. */
	readonly right: Mm;
}

/** One edge that is to be sewn to another, in its pieces. */
export interface Seam {
	readonly parts: readonly (LineName & { readonly path: Path; readonly length: Mm })[];
	readonly length: Mm;
}

/** Say which of two seams is the longer and by how much; then true it by moving a point along it. */
export interface TrueSeams extends Asked<'true-seams'> {
	/** The seam that may be changed. */
	readonly first: Seam;
	/** The seam that it must match. */
	readonly second: Seam;
	/** The point that may be moved, where it stands, and the end of the line along which it moves. */
	readonly point: string;
	readonly standsAt: SheetPoint;
	readonly movesFrom: { readonly point: string; readonly at: SheetPoint };
	/** The answers: how much longer the first is (negative: shorter), and where the point belongs. */
	readonly difference: Mm;
	readonly right: SheetPoint;
}

export type Exercise = FindStart | NextPoint | FindWrong | WorkNumber | TrueSeams;
export type ExerciseOf<K extends ExerciseKind> = Extract<Exercise, { readonly kind: K }>;

/** What a learner answers to each kind. A part that is left out is not answered yet. */
export interface Answers {
	readonly 'find-start': { readonly point: string };
	readonly 'next-point': Placement;
	readonly 'find-wrong': { readonly point: string; readonly choice?: string | undefined };
	readonly 'work-number': { readonly typed: string; readonly unit: Unit };
	readonly 'true-seams': {
		readonly longer: 'first' | 'second';
		readonly by: string;
		readonly unit: Unit;
		readonly moved?: Place | undefined;
	};
}

/** How one part of an answer stands. */
export interface JudgedPart {
	readonly part: 'place' | 'point' | 'rule' | 'number' | 'longer' | 'difference';
	readonly answer: 'right' | 'wrong' | 'unfinished';
}

/** What is said of an answer, as data: a verdict of the checker's, why it cannot be used, or sentences of the exercise's own. */
export type Said =
	| { readonly verdict: Verdict; readonly name: string }
	| { readonly unusable: Message }
	| { readonly headline: Message; readonly sentences: readonly Message[] };

/** How an answer stands. As with a verdict, only *wrong* counts against anyone. */
export interface Judged {
	readonly answer: Verdict['answer'];
	/** Stable, without numbers: the misstep where one explains the answer, else what was wrong. */
	readonly note: string;
	/** An answer of two parts may be given one after the other. */
	readonly parts: readonly JudgedPart[];
	readonly said: Said;
	/** What probably went wrong. */
	readonly diagnosis?: Diagnosis;
}

/** Everything that the program knows of one kind of exercise. */
export interface ExerciseRules<K extends ExerciseKind> {
	/** The steps that can be asked in this way. */
	asksFor(method: Practised): readonly string[];
	make(key: ExerciseKey, method: Practised): ExerciseOf<K>;
	/** The question, without its answer. */
	asks(exercise: ExerciseOf<K>, speech: Speech): string;
	/** Where a place is asked for it must be within `allowed`; numbers and names are right or wrong however strictly work is marked. */
	judge(exercise: ExerciseOf<K>, answer: unknown, allowed: Tolerances): Judged;
	explain(exercise: ExerciseOf<K>, speech: Speech): Explanation;
}
