import type { Mm } from '#shared/units.ts';
import { notesOf } from '#checker/check-submission.ts';
import type { Slip } from '#checker/missteps/misstep.ts';
import { misstepIn } from '#checker/missteps/of-work.ts';
import type { Judged, LearnersWork } from '#checker/work.ts';

/** How far a point lies from its place, outward and down. */
export interface Off {
	readonly across: Mm;
	readonly down: Mm;
}

/** A place that was wrong when it was looked at, and what probably led there: what a class is told of its mistakes. */
export interface Missed {
	/** Stable and without numbers. */
	readonly note: string;
	/** What was probably done, the likeliest where several things would lead there; none where nothing explains the place. */
	readonly slips: readonly Slip[];
	/** Whether nothing else would lead there. */
	readonly certain: boolean;
	/** Undefined for a line. */
	readonly off?: Off;
}

/** What is kept of a step that is wrong as a learner's work stands. */
export const missedAt = (work: LearnersWork, found: Judged, step: string): Missed => {
	const verdict = found.verdict(step);
	const diagnosis = misstepIn(work, found, step);
	const likeliest = diagnosis.kind === 'either' ? diagnosis.missteps[0] : undefined;
	const { slips = [] } = (diagnosis.kind === 'certain' ? diagnosis.misstep : likeliest) ?? {};
	const findings = verdict.answer === 'wrong' ? verdict.findings : [];
	const place = findings.find(({ aspect }) => aspect === 'place');
	return {
		note: notesOf(verdict, diagnosis)[0] ?? verdict.answer,
		slips,
		certain: diagnosis.kind === 'certain',
		...(place?.aspect === 'place' && { off: { across: place.across, down: place.down } })
	};
};
