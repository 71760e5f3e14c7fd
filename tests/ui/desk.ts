import type { Placement } from '#shared/placement.ts';
import type { Method } from '#drafting/method.ts';
import { Learner } from '#ui/keeping/learner.svelte.ts';
import type { SetAside } from '#ui/keeping/saved.ts';
import { Work } from '#ui/desk/work.svelte.ts';
import { Tool } from '#ui/desk/tool.svelte.ts';
import { english } from '../support/speech.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';

/** O, A (0, 100), levelA, B (125, 0), Q (125, 100), P (125, 50), slope from O to P, bend from A to B. */
export const FIRST_MARKS: Method = lessonMethod('10-the-sheet');

/** A learner who has just opened a page of a lesson, and what was kept for them in this browser. */
export const arrive = (): Learner => {
	const learner = new Learner(() => english.words.site.unnamed);
	learner.load();
	return learner;
};

/** A method taken up by a learner, as a lesson's page does it. */
export const takeUp = (method: Method = FIRST_MARKS, learner: Learner = arrive()): Work => {
	const work = new Work(method, learner);
	work.load();
	return work;
};

/** The tool at a step whose earlier steps are drafted. */
export const toolAt = (step: string, method: Method = FIRST_MARKS): Tool => {
	const work = takeUp(method);
	work.draftBefore(step);
	return new Tool(work, step, english);
};

/** A point's placement. */
export const point = (across: number, down: number): Placement => ({ kind: 'point', at: [across, down] });

/** The placement of a straight line. */
export const line = (from: readonly [number, number], to: readonly [number, number]): Placement => ({
	kind: 'line',
	segments: [{ from: [...from], to: [...to] }]
});

/** Something that was set aside, as a learner is told of it in English. */
export const toldOf = (aside: SetAside | undefined) =>
	aside && { ...aside, what: english.tell(aside.what), reason: english.tell(aside.reason) };
