import type { Body } from '#shared/body.ts';
import type { StepKind } from '#shared/method.ts';
import { readPlacement, type Placement } from '#shared/placement.ts';
import { TOLERANCES, type Tolerances } from '#shared/tolerances.ts';
import type { Verdict } from '#shared/verdict.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { movedIn } from '#drafting/moved.ts';
import { followsFromLines, isGiven, stepNeeds } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { OwnDraft, type DoubleVerdict, type Own } from './own-draft.ts';

/** What was put down for one step. It may be anything: a placement that is none is judged as such. */
export interface Answer {
	readonly placement?: unknown;
	readonly checked?: boolean;
	readonly kept?: boolean;
}

/** A learner's work on a method, whole or in part. */
export interface LearnersWork {
	readonly method: Method;
	readonly body: Body;
	/** The computed draft of the body; undefined where there is none. */
	readonly truth: Drafted | undefined;
	/** By step. Steps that nothing was put down for may be missing; what is said of a given step is passed over. */
	readonly entries: Readonly<Record<string, Answer>>;
	/** Where a right mark stands: inked at its computed place, as on the screen, or where the pencil put it. */
	readonly marks: 'inked' | 'pencilled';
	/** The tolerances to be kept, the normal ones where nothing is said. */
	readonly allowed?: Tolerances;
	/** The learner's own drafts that this one leans on, by its short names for them; the computed ones where they are not given. */
	readonly uses?: Readonly<Record<string, Own>>;
}

/**
 * How far a learner has come with a step. *absent*: this body does not need it. *locked*: something
 * that it starts from is not drafted yet. *kept*: wrong, excused or not to be told, and the learner goes on from it.
 */
export type StepState = 'absent' | 'locked' | 'kept' | 'open' | 'placed' | 'right' | 'wrong';

/** A fault of the program's own, with what led to it and without anything that was measured: for a log. */
export interface Fault {
	readonly method: string;
	readonly step: string;
	readonly kind: StepKind;
	readonly placed: Placement['kind'] | 'nothing';
	readonly problem: string;
}
/** A number that is no part of a name: it may be a measurement. */
const NUMBER = /(?<![\p{L}\d])-?\d[\d.,/]*/gu;

/** All that follows from a learner's work. */
export interface Judged extends Own {
	/** A verdict for every step that something was put down for. */
	readonly verdicts: Readonly<Record<string, DoubleVerdict>>;
	/** The steps that the learner's own earlier marks lead nowhere: only their computed places are right. */
	readonly stuck: readonly string[];
	readonly faults: readonly Fault[];
	/** The steps that later ones can be drawn from: given, right, or wrong and kept. */
	readonly standing: ReadonlySet<string>;
	/** Whether the body's draft has a step at all; while there is no draft, every step is taken to be in it. */
	isIn(name: string): boolean;
	verdict(name: string): Verdict;
	state(name: string): StepState;
	/** What must stand before a step is drawn: what it is worked from, and all that it moves, for a panel is turned whole. */
	wants(name: string): readonly string[];
	/** The earlier steps that must be drafted before this one can be drawn; for what is given, those that it waits for. */
	blockers(name: string): readonly string[];
	/** The draft as it stood when a step was to be drawn: the learner's own before it, the computed one from there on. */
	before(name: string): Drafted;
}

const NOTHING: Drafted = { points: {}, lines: {} };
const UNFINISHED: Verdict = { answer: 'unfinished' };

/** What the judge finds in going through the steps once. */
interface Gone {
	readonly verdicts: Record<string, DoubleVerdict>;
	readonly stuck: string[];
	readonly faults: Fault[];
	readonly own: OwnDraft;
}

const faultAt = (
	{ method }: LearnersWork,
	step: Step,
	placed: Placement | undefined,
	problem: string
): Fault => ({
	...{ method: method.id, step: step.name, kind: step.kind },
	placed: placed?.kind ?? 'nothing',
	problem: problem.replace(NUMBER, '#')
});

/** Whether a placement lies, or may lie, elsewhere than it should: it stands only where the learner keeps it. */
const isOff = (answer: Verdict['answer'] | undefined): boolean =>
	answer === 'wrong' || answer === 'excused' || answer === 'cannot-tell';

/** Whether a right mark is gone on from where it lies: work on paper, and what was measured on paper and put onto the sheet. */
const isPencilled = ({ marks }: LearnersWork, placement: unknown): boolean =>
	placement !== undefined && (marks === 'pencilled' || readPlacement(placement).data?.error !== undefined);

/** Judges every placement in the method's order, each from what stands before it; or one alone, with those before it that may bear on it. */
const goneThrough = (work: LearnersWork, truth: Drafted, only?: string): Gone => {
	const { method, body, entries, allowed = TOLERANCES.normal } = work;
	const gone: Gone = {
		verdicts: {},
		stuck: [],
		faults: [],
		own: new OwnDraft(method, body, truth, work.uses)
	};
	const { own } = gone;
	const judgeStep = (step: Step, { placement, checked = false, kept = false }: Answer): void => {
		const placed = readPlacement(placement).data;
		const double = own.check(step, placement, allowed);
		const { answer } = double.verdict;
		if (answer !== 'unfinished') gone.verdicts[step.name] = double;
		if (double.verdict.answer === 'our-fault')
			gone.faults.push(faultAt(work, step, placed, JSON.stringify(double.verdict.because.values)));
		const standsAsPut = isOff(answer) ? checked && kept : answer === 'right' && isPencilled(work, placement);
		const follows = answer === 'right' ? double.followThrough : answer !== 'wrong';
		if (standsAsPut && placed) own.keep(step, placed, answer === 'wrong');
		// What was not put down, or cannot be used, is taken to follow from what was.
		else if (follows && own.leansOnOwn(step) && !own.follow(step)) gone.stuck.push(step.name);
	};
	const bears = (step: Step, { kept, placement }: Answer): boolean =>
		step.name === only || kept || isPencilled(work, placement) || own.leansOnOwn(step);
	for (const step of method.steps) {
		const answer = (isGiven(step) ? undefined : entries[step.name]) ?? {};
		if (isIn(truth, step.name) && (only === undefined || bears(step, answer))) judgeStep(step, answer);
		if (step.name === only) break;
	}
	return gone;
};

const isIn = (truth: Drafted | undefined, name: string): boolean =>
	!truth || name in truth.points || name in truth.lines;

/** What a step is worked from. A given line waits for the step that is asked before it too: it would show where that one lies. */
const needsOf = ({ method, truth }: LearnersWork, step: Step): readonly string[] => {
	if (!followsFromLines(step)) return stepNeeds(step);
	const before = method.steps.slice(0, method.steps.indexOf(step));
	const asked = before.findLast((each) => !isGiven(each) && isIn(truth, each.name));
	return [...stepNeeds(step), ...(asked ? [asked.name] : [])];
};

/** The steps that later ones can be drawn from. The method has each after all that it needs, so one pass finds them. */
const standingIn = (work: LearnersWork, verdicts: Judged['verdicts']): ReadonlySet<string> => {
	const standing = new Set<string>();
	for (const step of work.method.steps) {
		const { checked = false, kept = false } = work.entries[step.name] ?? {};
		const answer = verdicts[step.name]?.verdict.answer;
		const stands = isGiven(step)
			? needsOf(work, step).every((need) => standing.has(need) || !isIn(work.truth, need))
			: checked && (answer === 'right' || (kept && isOff(answer)));
		if (stands && isIn(work.truth, step.name)) standing.add(step.name);
	}
	return standing;
};

const only = <T>(all: Readonly<Record<string, T>>, wanted: (name: string) => boolean): Record<string, T> =>
	Object.fromEntries(Object.entries(all).filter(([name]) => wanted(name)));

/** One draft before a step, and another from there on. */
const joinedAt = (method: Method, name: string, before: Drafted, after: Drafted): Drafted => {
	const earlier = new Set(
		method.steps.slice(0, method.steps.indexOf(stepNamed(method, name))).map((step) => step.name)
	);
	const isEarlier = (each: string): boolean => earlier.has(each);
	const isLater = (each: string): boolean => !earlier.has(each);
	return {
		...after,
		points: { ...only(before.points, isEarlier), ...only(after.points, isLater) },
		lines: { ...only(before.lines, isEarlier), ...only(after.lines, isLater) }
	};
};

/** What `judged` says of one step, without going through what has nothing to do with it. Never throws. */
export const verdictOn = (work: LearnersWork, name: string): Verdict =>
	(work.truth && goneThrough(work, work.truth, name).verdicts[name]?.verdict) ?? UNFINISHED;

/**
 * Judges a learner's work: every placement against the true earlier marks and, where it is wrong, against the
 * learner's own, so that one slip is one mistake. What was not put down is taken to follow from what was. Never throws.
 */
export const judged = (work: LearnersWork): Judged => {
	const { method, truth, entries } = work;
	const gone = truth && goneThrough(work, truth);
	const verdicts = gone?.verdicts ?? {};
	const standing = standingIn(work, verdicts);
	const has = (name: string): boolean => isIn(truth, name);
	const verdict = (name: string): Verdict => verdicts[name]?.verdict ?? UNFINISHED;
	const wants = (name: string): readonly string[] => {
		const step = stepNamed(method, name);
		return [...needsOf(work, step), ...movedIn(method, step)];
	};
	const blockers = (name: string): readonly string[] => {
		const missing = wants(name).filter((need) => has(need) && !standing.has(need));
		return [
			...new Set(missing.flatMap((need) => (isGiven(stepNamed(method, need)) ? blockers(need) : [need])))
		];
	};
	const state = (name: string): StepState => {
		const { answer } = verdict(name);
		if (!has(name)) return 'absent';
		if (standing.has(name)) return isOff(answer) ? 'kept' : 'right';
		if (blockers(name).length > 0) return 'locked';
		const { placement, checked = false } = entries[name] ?? {};
		if (!placement) return 'open';
		// An entry that cannot be used, or that we could not judge, is not a wrong one.
		return checked && answer === 'wrong' ? 'wrong' : 'placed';
	};
	const own = gone?.own.drafted ?? NOTHING;
	return {
		...{ verdicts, own, standing, verdict, wants, blockers, state, isIn: has },
		moved: gone?.own.moved ?? new Map(),
		errors: gone?.own.errors ?? new Map(),
		...{ stuck: gone?.stuck ?? [], faults: gone?.faults ?? [] },
		before: (name) => joinedAt(method, name, own, truth ?? NOTHING)
	};
};
