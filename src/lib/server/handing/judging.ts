import { createHash } from 'node:crypto';
import type { Body } from '#shared/body.ts';
import type { Done, HandedEntry } from '#shared/hand-in.ts';
import type { Placement } from '#shared/placement.ts';
import type { Policy } from '#shared/policy.ts';
import { TOLERANCES } from '#shared/tolerances.ts';
import { stepReports, totalOf, type StepReport, type SubmissionReport } from '#checker/check-submission.ts';
import { judged, type Judged, type LearnersWork } from '#checker/work.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
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
}

/** What is said of an attempt. */
export interface Marked {
	readonly steps: readonly StepMarked[];
	readonly total: SubmissionReport['total'];
}

/** A hash of what some methods say, those included that they lean on. */
export const hashOfMethods = (methods: readonly Method[]): string =>
	createHash('sha256').update(JSON.stringify(methods)).digest('hex').slice(0, 16);

const whereOf = (placement: Placement): string =>
	JSON.stringify(placement.kind === 'point' ? placement.at : placement.segments);

/** What a learner has done of one method, replayed. */
class Replay {
	readonly entries: Record<string, HandedEntry> = {};
	/** The wrong places of each step, each once: the same place checked again is no second try. */
	readonly #wrong = new Map<string, Map<string, Missed>>();
	readonly #help = new Map<string, number>();

	constructor(
		readonly method: Method,
		readonly body: Body,
		readonly truth: Draft | undefined,
		readonly task: Pick<Task, 'policy' | 'mode'>,
		readonly uses: LearnersWork['uses']
	) {}

	/** All that the judge looks at. In an exam what was put down counts, whether or not it was checked. */
	get work(): LearnersWork {
		const { method, body, truth, entries, uses = {}, task } = this;
		const allowed = TOLERANCES[task.policy.level];
		const isExam = task.mode === 'exam';
		const answers = isExam
			? Object.fromEntries(
					Object.entries(entries).map(([name, entry]) => [name, { ...entry, checked: true, kept: true }])
				)
			: entries;
		return { method, body, truth, entries: answers, marks: isExam ? 'pencilled' : 'inked', allowed, uses };
	}

	take({ step, entry }: Done): void {
		const before = this.entries[step];
		this.entries[step] = entry;
		this.#help.set(step, Math.max(entry.help, this.#help.get(step) ?? 0));
		const { placement } = entry;
		if (!placement || !entry.checked || entry.shown || this.task.mode === 'exam') return;
		if (before?.checked && before.placement && whereOf(before.placement) === whereOf(placement)) return;
		const wrong = this.#wrong.get(step) ?? new Map<string, Missed>();
		if (wrong.has(whereOf(placement))) return;
		const { work } = this;
		const found = judged(work);
		if (found.verdict(step).answer !== 'wrong') return;
		this.#wrong.set(step, wrong.set(whereOf(placement), missedAt(work, found, step)));
	}

	/** Tries that were wrong before the place where a step's mark lies now. */
	#triesBefore(step: string): number {
		const placement = this.entries[step]?.placement;
		const wrong = this.#wrong.get(step);
		return (wrong?.size ?? 0) - (placement && wrong?.has(whereOf(placement)) ? 1 : 0);
	}

	#missed(found: Judged, step: string): readonly Missed[] {
		if (this.task.mode !== 'exam') return [...(this.#wrong.get(step)?.values() ?? [])];
		return found.verdict(step).answer === 'wrong' ? [missedAt(this.work, found, step)] : [];
	}

	marked(found: Judged, steps: readonly string[], policy: Policy): readonly StepMarked[] {
		const cost = (step: string) => ({
			wrongBefore: this.#triesBefore(step),
			help: this.entries[step]?.shown ? 3 : (this.#help.get(step) ?? 0)
		});
		return stepReports(this.work, found, steps, policy, cost).map((report) => {
			const { step } = report;
			const { checked = false, shown = false } = this.entries[step] ?? {};
			const counts = (checked || this.task.mode === 'exam') && !shown;
			return {
				...report,
				method: this.method.id,
				mark: counts ? report.mark : 0,
				tries: this.#wrong.get(step)?.size ?? 0,
				missed: this.#missed(found, step),
				help: this.#help.get(step) ?? 0
			};
		});
	}
}

const replays = (
	asked: readonly Asked[],
	body: Body,
	task: Task,
	events: readonly Done[]
): ReadonlyMap<string, { readonly replay: Replay; readonly found: Judged }> => {
	const made = new Map<string, { readonly replay: Replay; readonly found: Judged }>();
	const replayed = (method: Method): Judged => {
		const known = made.get(method.id);
		if (known) return known.found;
		const handed = events.filter((done) => done.method === method.id);
		const leant = Object.entries(method.uses).filter(([, { id }]) =>
			events.some((done) => done.method === id)
		);
		const uses = Object.fromEntries(leant.map(([alias, used]) => [alias, replayed(used)]));
		const evaluation = evaluate(method, body);
		const truth = evaluation.kind === 'drafted' ? evaluation.draft : undefined;
		const replay = new Replay(method, body, truth, task, uses);
		for (const done of handed) replay.take(done);
		const found = judged(replay.work);
		made.set(method.id, { replay, found });
		return found;
	};
	for (const method of methodsOf(asked)) replayed(method);
	return made;
};

/** Judges what a learner handed in, by replaying it from the first event on. Never trusts what a browser said of it. */
export const marked = (asked: readonly Asked[], body: Body, task: Task, events: readonly Done[]): Marked => {
	const made = replays(asked, body, task, events);
	const steps = asked.flatMap(({ method, steps: names }): readonly StepMarked[] => {
		const { replay, found } = made.get(method.id) ?? {};
		if (!replay || !found) return [];
		const wanted = method.steps.filter(
			(step) => names.includes(step.name) && !isGiven(step) && found.isIn(step.name)
		);
		return replay.marked(
			found,
			wanted.map(({ name }) => name),
			task.policy
		);
	});
	return { steps, total: totalOf(steps) };
};
