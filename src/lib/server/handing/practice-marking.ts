import type { Done, ExerciseDone } from '#shared/hand-in.ts';
import { EXERCISES } from '#shared/hand-in-limits.ts';
import { message } from '#shared/speech/message.ts';
import { TOLERANCES, type Tolerances } from '#shared/tolerances.ts';
import type { Verdict } from '#shared/verdict.ts';
import { totalOf } from '#checker/check-submission.ts';
import { attemptMark } from '#checker/marks.ts';
import { NO_DIAGNOSIS } from '#checker/missteps/misstep.ts';
import type { Exercise, ExerciseKey, ExerciseKind, Judged, Practised } from '#practice/exercises/exercise.ts';
import { asVerdict } from '#practice/exercises/judgements.ts';
import { exercise, judge } from '#practice/exercises/kinds.ts';
import { hashOf } from '../people/ids.ts';
import type { Marked, StepMarked, WrongTry } from './judging.ts';
import type { Missed } from './missed.ts';
import type { Task } from './task.ts';

/** How an exercise stands after what was done at it. */
interface Standing {
	/** Wrong answers, each once. */
	readonly wrong: readonly WrongTry[];
	/** Rungs of help that were opened before it was right. */
	readonly help: number;
	/** The last answer that could be read; what is written of it stays as it was judged. */
	readonly verdict: Verdict;
	readonly note: string;
	/** Its place among the wrong ones, where it is one. */
	readonly where?: string;
}

/** Exercises as they stood when the first so many events had come: what they were found to be is found once. */
export interface PractisedBefore {
	readonly practised: { readonly events: number; readonly standings: Readonly<Record<string, Standing>> };
}

const NOT_BEGUN: Standing = { wrong: [], help: 0, verdict: { answer: 'unfinished' }, note: 'unfinished' };

/** What is said of an answer, as the checker says it of a step. */
const verdictOf = ({ answer, said }: Judged): Verdict => {
	if ('verdict' in said) return said.verdict;
	return answer === 'right' || answer === 'wrong' ? { answer, findings: [] } : { answer: 'unfinished' };
};

/** What is kept of a wrong answer, as of a step that is wrong. */
const missedIn = ({ note, diagnosis = NO_DIAGNOSIS }: Judged): Missed => {
	const likeliest = diagnosis.kind === 'either' ? diagnosis.missteps[0] : undefined;
	const { slips = [] } = (diagnosis.kind === 'certain' ? diagnosis.misstep : likeliest) ?? {};
	return { note, slips, certain: diagnosis.kind === 'certain' };
};

/** How an answer stands; where the exercise cannot be made any more, that is our fault and costs nothing. */
const judgedOf = (asked: () => Exercise, answer: unknown, allowed: Tolerances): Judged => {
	try {
		return judge(asked(), answer, allowed);
	} catch (problem) {
		const words = problem instanceof Error ? problem.message : String(problem);
		return asVerdict({ answer: 'our-fault', because: message('verdicts', 'fault', { words }) }, '');
	}
};

/** How an exercise stands after one more event. In practice a right answer stays; in an exam the last one counts. */
const after = (
	before: Standing,
	{ given, help }: ExerciseDone,
	{
		kind,
		asked,
		allowed,
		isExam
	}: {
		readonly kind: ExerciseKind;
		readonly asked: () => Exercise;
		readonly allowed: Tolerances;
		readonly isExam: boolean;
	}
): Standing => {
	if (before.verdict.answer === 'right' && !isExam) return before;
	const helped = { ...before, help: isExam ? 0 : Math.max(before.help, help) };
	if (given?.kind !== kind) return helped;
	const judged = judgedOf(asked, given.answer, allowed);
	// What cannot be read is no answer: the last one stands.
	if (judged.answer === 'not-valid') return helped;
	const { where: _, ...rest } = helped;
	const now = { ...rest, verdict: verdictOf(judged), note: judged.note };
	if (judged.answer !== 'wrong') return isExam ? { ...now, wrong: [] } : now;
	const where = hashOf(JSON.stringify(given.answer)).slice(0, 16);
	const known = isExam ? [] : before.wrong;
	const isKnown = known.some((each) => each.where === where);
	return { ...now, where, wrong: isKnown ? known : [...known, { where, missed: missedIn(judged) }] };
};

const markedAs = (
	{ kind, method, step }: ExerciseKey,
	number: number,
	{ wrong, help, verdict, note, where }: Standing,
	{ policy, mode }: Pick<Task, 'policy' | 'mode'>
): StepMarked => {
	const isExam = mode === 'exam';
	const before = isExam ? 0 : wrong.length - (where === undefined ? 0 : 1);
	const attempt = { verdict, followThrough: false, wrongBefore: before, help: isExam ? 0 : help };
	return {
		...{ method: EXERCISES, step: String(number), verdict, note, help },
		...{ followThrough: false, offBy: undefined, alternatives: [] },
		mark: attemptMark(attempt, policy),
		tries: isExam ? 0 : wrong.length,
		missed: wrong.map(({ missed }) => missed),
		about: { kind, method, step }
	};
};

/**
 * Judges the exercises that a learner handed in answers for, each answer as it came, by the judge that the browser has. Never trusts
 * what a browser said of it. It can be left after each answer, and gone on with.
 *
 * @param before what was said of the first events, where they were judged before
 */
export function* practiceMarking(
	exercises: readonly ExerciseKey[],
	practised: readonly Practised[],
	task: Pick<Task, 'policy' | 'mode'>,
	events: readonly Done[],
	before: PractisedBefore = { practised: { events: 0, standings: {} } }
): Generator<undefined, Marked & PractisedBefore, undefined> {
	const made = new Map<number, Exercise>();
	const standings: Record<string, Standing> = { ...before.practised.standings };
	for (const done of events.slice(before.practised.events)) {
		const number = 'exercise' in done ? done.exercise : 0;
		const key = exercises[number - 1];
		if (!key || !('exercise' in done)) continue;
		const asked = (): Exercise => {
			const own = made.get(number) ?? exercise(key, (id) => practised.find((method) => method.id === id));
			made.set(number, own);
			return own;
		};
		const manner = { isExam: task.mode === 'exam', allowed: TOLERANCES[task.policy.level] };
		standings[number] = after(standings[number] ?? NOT_BEGUN, done, { kind: key.kind, asked, ...manner });
		yield;
	}
	const steps = exercises.map((key, i) => markedAs(key, i + 1, standings[i + 1] ?? NOT_BEGUN, task));
	return { steps, total: totalOf(steps), practised: { events: events.length, standings } };
}
