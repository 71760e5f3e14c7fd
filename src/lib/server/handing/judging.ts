import { createHash } from 'node:crypto';
import type { Body } from '#shared/body.ts';
import type { Done, HandedEntry, StepDone } from '#shared/hand-in.ts';
import type { Placement } from '#shared/placement.ts';
import type { Policy } from '#shared/policy.ts';
import { TOLERANCES } from '#shared/tolerances.ts';
import { stepReports, totalOf, type StepReport, type SubmissionReport } from '#checker/check-submission.ts';
import { judged, verdictOn, type Judged, type LearnersWork } from '#checker/work.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import type { ExerciseKey } from '#practice/exercises/exercise.ts';
import { hashOf } from '../people/ids.ts';
import { missedAt, type Missed } from './missed.ts';
import { methodsOf, type Asked, type Task } from './task.ts';

/** What is said of one step, and what it has cost so far. */
export interface StepMarked extends StepReport {
	readonly method: string;
	/** Different places that were wrong when they were checked. */
	readonly tries: number;
	/** What was wrong at the places that were tried; in an exam at the last. */
	readonly missed: readonly Missed[];
	/** Rungs of help that were opened. */
	readonly help: number;
	/** What an exercise asks for, where it is one. */
	readonly about?: Pick<ExerciseKey, 'kind' | 'method' | 'step'>;
}

/** What is said of an attempt. */
export interface Marked {
	readonly steps: readonly StepMarked[];
	readonly total: SubmissionReport['total'];
}

/** A mark, or an answer, that was wrong when it was checked. */
export interface WrongTry {
	/** Where it lay, hashed: the same place checked again is no second try. */
	readonly where: string;
	readonly missed: Missed;
}

/** What was wrong when it was checked, each place once: by method, then by step. */
type Wrong = Readonly<Record<string, Readonly<Record<string, readonly WrongTry[]>>>>;

/** What was found of the first so many events, each by itself: whatever comes after them, it stays, so that it is found once. */
export interface Tried {
	readonly events: number;
	readonly wrong: Wrong;
}

/** An attempt as it was judged when the first so many events had come. */
export type Before = Pick<Marked, 'steps'> & { readonly tried: Tried };

/** A hash of what some methods say, those included that they lean on. */
export const hashOfMethods = (methods: readonly Method[]): string =>
	createHash('sha256').update(JSON.stringify(methods)).digest('hex').slice(0, 16);

/** Where a mark lies, as short as can be. */
const whereOf = (placement: Placement): string =>
	hashOf(JSON.stringify(placement.kind === 'point' ? placement.at : placement.segments)).slice(0, 16);

/** What a learner has done of one method, replayed. */
class Replay {
	readonly entries: Record<string, HandedEntry> = {};
	readonly truth: Draft | undefined;
	readonly wrong: Record<string, readonly WrongTry[]>;
	readonly #help = new Map<string, number>();
	#judged: Judged | undefined;
	/** The first step of the method that something was done at since it was judged before. */
	#touched = Infinity;

	constructor(
		readonly method: Method,
		readonly body: Body,
		readonly task: Pick<Task, 'policy' | 'mode'>,
		/** The replayed drafts that this one leans on, by its short names for them. */
		readonly leant: Readonly<Record<string, Replay>>,
		wrong: Wrong[string] = {}
	) {
		const evaluation = evaluate(method, body);
		this.truth = evaluation.kind === 'drafted' ? evaluation.draft : undefined;
		this.wrong = { ...wrong };
	}

	get #isExam(): boolean {
		return this.task.mode === 'exam';
	}

	/** Whether anything of it may stand elsewhere than it should. */
	get moves(): boolean {
		const own = Object.values(this.entries);
		return (
			own.some(({ kept }) => kept || this.#isExam) || Object.values(this.leant).some(({ moves }) => moves)
		);
	}

	/** All that the judge looks at. In an exam what was put down counts, whether or not it was checked. */
	get work(): LearnersWork {
		const { method, body, truth, entries, task } = this;
		const moved = Object.entries(this.leant).filter(([, { moves }]) => moves);
		const uses = Object.fromEntries(moved.map(([alias, { judged: own }]) => [alias, own]));
		const answers = this.#isExam
			? Object.fromEntries(
					Object.entries(entries).map(([name, entry]) => [name, { ...entry, checked: true, kept: true }])
				)
			: entries;
		const marks = this.#isExam ? 'pencilled' : 'inked';
		return { method, body, truth, entries: answers, marks, allowed: TOLERANCES[task.policy.level], uses };
	}

	/** All that follows from it, as it stands. */
	get judged(): Judged {
		return (this.#judged ??= judged(this.work));
	}

	/**
	 * Takes up an event; gives whether that was looked at by the judge.
	 *
	 * @param isKnown whether its mark was judged before
	 */
	take({ step, entry }: StepDone, isKnown: boolean): boolean {
		// Whoever sends an event may name any step, and names that every object has are among them.
		if (this.#indexOf(step) < 0) return false;
		const before = this.entries[step];
		this.entries[step] = entry;
		this.#judged = undefined;
		this.#help.set(step, Math.max(entry.help, this.#help.get(step) ?? 0));
		if (!isKnown) this.#touched = Math.min(this.#touched, this.#indexOf(step));
		const { placement } = entry;
		if (isKnown || !placement || !entry.checked || entry.shown || this.#isExam) return false;
		const where = whereOf(placement);
		if (before?.checked && before.placement && whereOf(before.placement) === where) return false;
		if (this.#wasWrong(step, where)) return false;
		const { work } = this;
		if (verdictOn(work, step).answer === 'wrong') {
			const missed = missedAt(work, judged(work), step);
			this.wrong[step] = [...(this.wrong[step] ?? []), { where, missed }];
		}
		return true;
	}

	#indexOf(step: string): number {
		return this.method.steps.findIndex(({ name }) => name === step);
	}

	/** Whether what was said of a step before still holds: nothing was done since at it, nor at anything before it. */
	holds(step: string): boolean {
		const isSame = (replay: Replay): boolean =>
			replay.#touched === Infinity && Object.values(replay.leant).every(isSame);
		return this.#indexOf(step) < this.#touched && Object.values(this.leant).every(isSame);
	}

	#wasWrong(step: string, where: string): boolean {
		return this.wrong[step]?.some((each) => each.where === where) ?? false;
	}

	/** Tries that were wrong before the place where a step's mark lies now. */
	#triesBefore(step: string): number {
		const placement = this.entries[step]?.placement;
		const isOne = placement && this.#wasWrong(step, whereOf(placement));
		return (this.wrong[step]?.length ?? 0) - (isOne ? 1 : 0);
	}

	#missed(step: string): readonly Missed[] {
		if (!this.#isExam) return (this.wrong[step] ?? []).map(({ missed }) => missed);
		return this.judged.verdict(step).answer === 'wrong' ? [missedAt(this.work, this.judged, step)] : [];
	}

	marked(step: string, policy: Policy): readonly StepMarked[] {
		const { checked = false, shown = false } = this.entries[step] ?? {};
		const help = this.#help.get(step) ?? 0;
		const cost = () => ({ wrongBefore: this.#triesBefore(step), help: shown ? 3 : help });
		const counts = (checked || this.#isExam) && !shown;
		return stepReports(this.work, this.judged, [step], policy, cost).map((report) => ({
			...report,
			method: this.method.id,
			mark: counts ? report.mark : 0,
			tries: this.wrong[step]?.length ?? 0,
			missed: this.#missed(step),
			help
		}));
	}
}

/** A replay of each method that is asked for, and of those that these lean on. */
const replaysOf = (
	asked: readonly Asked[],
	body: Body,
	task: Task,
	wrong: Wrong
): ReadonlyMap<string, Replay> => {
	const made = new Map<string, Replay>();
	const of = (method: Method): Replay => {
		const leant = Object.entries(method.uses).map(([alias, used]) => [alias, of(used)] as const);
		const replay =
			made.get(method.id) ?? new Replay(method, body, task, Object.fromEntries(leant), wrong[method.id]);
		made.set(method.id, replay);
		return replay;
	};
	for (const method of methodsOf(asked)) of(method);
	return made;
};

/**
 * Judges what a learner handed in, each mark as the work stood when it came. Never trusts what a browser said of it. It can be left
 * after each mark and each step, and gone on with.
 *
 * @param before what was said of the first events, where they were judged before
 */
export function* marking(
	asked: readonly Asked[],
	body: Body,
	task: Task,
	events: readonly Done[],
	before: Before = { steps: [], tried: { events: 0, wrong: {} } }
): Generator<undefined, Marked & Before, undefined> {
	const replays = replaysOf(asked, body, task, before.tried.wrong);
	for (const [index, done] of events.entries())
		if ('method' in done && replays.get(done.method)?.take(done, index < before.tried.events)) yield;
	const steps: StepMarked[] = [];
	for (const { method, steps: names } of asked) {
		const replay = replays.get(method.id);
		const wanted = method.steps.filter((step) => names.includes(step.name) && !isGiven(step));
		for (const { name } of replay ? wanted : []) {
			const known = before.steps.find((each) => each.method === method.id && each.step === name);
			if (known && replay?.holds(name)) steps.push(known);
			else if (replay?.judged.isIn(name)) steps.push(...replay.marked(name, task.policy));
			yield;
		}
	}
	const wrong = Object.fromEntries([...replays].map(([id, replay]) => [id, replay.wrong]));
	return { steps, total: totalOf(steps), tried: { events: events.length, wrong } };
}
