import { placementSchema, type LinePlacement, type Placement } from '#shared/placement.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import type { Unit } from '#shared/units.ts';
import { verdictSchema, type Finding, type FindingOf, type Verdict } from '#shared/verdict.ts';
import { check } from '#checker/check.ts';
import { placementOfPath } from '#checker/placed.ts';
import { verdictWords } from '#checker/words.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { english } from '../support/speech.ts';

/** A method worked out for a body, to be checked against. */
export interface Desk {
	readonly method: Method;
	readonly draft: Draft;
	readonly body: string;
}

const desk = (method: Method, body: Body): Desk => ({
	method,
	draft: draftOf(method, body),
	body: body.name
});

const BACK = lessonMethod('40-back-levels');
const MARKS = lessonMethod('10-the-sheet');

const firstBody = (): Body => {
	const [first] = DEMO_BODIES;
	if (!first) throw new Error('there is no demo body');
	return first.body;
};

/** The back block of Heron: A lies 222 mm down, U 250 mm across. */
export const HERON_BACK = desk(BACK, firstBody());

/** Both methods for every demo body. */
export const DESKS: readonly Desk[] = DEMO_BODIES.flatMap(({ body }) => [
	desk(BACK, body),
	desk(MARKS, body)
]);

/** The placement that is exactly right. */
export const answerOf = ({ draft }: Desk, step: string): Placement => {
	const point = draft.points[step];
	if (point) return { kind: 'point', at: [point.x, point.y] };
	const line = draft.lines[step];
	if (!line) throw new Error(`the draft has no "${step}"`);
	return placementOfPath(line.path);
};

/** The checker's verdict, of the shape that other programs are promised. */
export const verdictOn = ({ method, draft }: Desk, step: string, placement: unknown): Verdict => {
	const verdict = check(method, step, draft, placement);
	return verdictSchema.parse(JSON.parse(JSON.stringify(verdict)));
};

/** A straight line through these places, as a learner's placement. */
export const ruled = (...places: readonly (readonly [number, number])[]): LinePlacement => {
	const segments = places.slice(1).map((to, i) => ({ from: places[i], to }));
	const placement = placementSchema.parse({ kind: 'line', segments });
	if (placement.kind !== 'line') throw new Error('not a line');
	return placement;
};

/** A point's placement. */
export const marked = (across: number, down: number): Placement => ({ kind: 'point', at: [across, down] });

/** What was looked at; throws for a verdict that looked at nothing. */
export const findingsOf = (verdict: Verdict): readonly Finding[] => {
	if ('findings' in verdict) return verdict.findings;
	throw new Error(`${verdict.answer}: ${'because' in verdict ? english.tell(verdict.because) : ''}`);
};

/** The aspects that did not keep their tolerance. */
export const failing = (verdict: Verdict): readonly string[] =>
	findingsOf(verdict)
		.filter(({ within }) => !within)
		.map(({ aspect }) => aspect);

/** The one finding of an aspect. */
export const findingOf = <A extends Finding['aspect']>(verdict: Verdict, aspect: A): FindingOf<A> => {
	const found = findingsOf(verdict).filter((each): each is FindingOf<A> => each.aspect === aspect);
	const [first] = found;
	if (!first || found.length > 1) throw new Error(`${found.length} findings of ${aspect}`);
	return first;
};

/** The sentences that a learner reads of a verdict. */
export const sentences = (verdict: Verdict, unit: Unit = 'cm'): readonly string[] =>
	verdictWords(verdict, { name: 'It' }, english.inUnit(unit)).sentences;
