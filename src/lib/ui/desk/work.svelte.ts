import { the } from '#shared/speech/en/grammar.ts';
import type { Body } from '#shared/body.ts';
import { placementSchema, type Placement } from '#shared/placement.ts';
import type { Verdict } from '#shared/verdict.ts';
import { OwnDraft, type DoubleVerdict } from '#checker/own-draft.ts';
import { placementOfPath, placeOfPoint } from '#checker/placed.ts';
import { evaluate, type Draft, type Drafted, type Evaluation } from '#drafting/evaluate.ts';
import { explain, givenLengths, type GivenLength } from '#drafting/explain.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { followsFromLines, isGiven, stepMakes, stepNeeds } from '#drafting/steps/kinds.ts';
import type { Explanation, Step } from '#drafting/steps/step-rules.ts';
import { movedIn } from '#drafting/moved.ts';
import type { Learner } from '#ui/keeping/learner.svelte.ts';
import { workSlot, type Entries } from '#ui/keeping/kinds.ts';
import type { Slot } from '#ui/keeping/saved.ts';
import type { Entry } from '#ui/keeping/schemas.ts';

const NEW_ENTRY: Entry = { checked: false, tries: 0, help: 0, kept: false, shown: false };

/** Whether a draft has a step at all; while there is none, every step is taken to be in it. */
const isIn = (draft: Draft | undefined, name: string): boolean =>
	!draft || name in draft.points || name in draft.lines;

/** A learner's work judged as a whole: a verdict for every placement, and the draft that they stand on. */
interface Judged {
	readonly verdicts: Readonly<Record<string, DoubleVerdict>>;
	/** The computed draft, but for what the learner kept of their own and what follows from it. */
	readonly own: Drafted;
}

/**
 * How far a learner has come with a step. *absent*: this body does not need it. *locked*: something
 * that it starts from is not drafted yet. *kept*: wrong, and the learner goes on from it.
 */
export type StepState = 'absent' | 'locked' | 'kept' | 'open' | 'placed' | 'right' | 'wrong';

/**
 * A learner's work on one method for the chosen body (or for an exercise's own): placements, their
 * verdicts, undo and redo. Saved at every change, but for an exercise.
 */
export class Work {
	readonly method: Method;
	readonly learner: Learner;
	/** Each change that can be taken back or done again: the steps that it touched, as they were. */
	#undone: Entries[] = $state.raw([]);
	#done: Entries[] = $state.raw([]);

	/** The body of an exercise; work on it is not kept. */
	readonly #exercise: Body | undefined;
	#unsaved: Entries = $state.raw({});
	/** Where the work on this method is kept: for the chosen body, or for all where it needs no measurement. */
	readonly #slot: Slot<Entries> = $derived.by(() => this.#slotFor(this.method.measurements.length > 0));
	readonly body = $derived.by(() => this.#exercise ?? this.learner.current.body);
	readonly evaluation: Evaluation = $derived.by(() => this.#evaluate());
	readonly draft: Draft | undefined = $derived(
		this.evaluation.kind === 'drafted' ? this.evaluation.draft : undefined
	);
	readonly missing = $derived.by(() =>
		this.method.measurements.filter((key) => this.body.measurements[key] === undefined)
	);
	readonly #judged: Judged = $derived.by(() => this.#judge());
	/** What steps are drawn from: see Judged. */
	readonly own: Drafted = $derived(this.#judged.own);
	readonly canUndo = $derived(this.#done.length > 0);
	readonly canRedo = $derived(this.#undone.length > 0);

	constructor(method: Method, learner: Learner, exercise?: Body) {
		this.#exercise = exercise;
		this.method = method;
		this.learner = learner;
	}

	#slotFor(body: boolean): Slot<Entries> {
		const { id } = this.learner.current;
		return workSlot(this.method, body ? { id, name: this.body.name } : undefined, (name) => {
			const step = this.method.steps.find((each) => each.name === name);
			return step && stepMakes(step) === 'line' ? the(step.label) : name;
		});
	}

	/** What was placed for each step, in whichever tab of this browser. */
	get entries(): Entries {
		return this.#exercise ? this.#unsaved : this.learner.work.entries(this.#slot.key);
	}

	/** Reads back what was saved for the chosen body. */
	load(): void {
		// An earlier program kept a draft that needs no measurement once for every body.
		if (!this.#exercise) this.learner.work.open(this.#slot, this.#slotFor(true));
		this.#done = [];
		this.#undone = [];
	}

	entry(name: string): Entry {
		return this.entries[name] ?? NEW_ENTRY;
	}

	step(name: string): Step {
		return stepNamed(this.method, name);
	}

	verdict(name: string): Verdict {
		return this.#judged.verdicts[name]?.verdict ?? { answer: 'unfinished' };
	}

	/** Whether a step is right only from the learner's own earlier points. */
	followsThrough(name: string): boolean {
		return this.#judged.verdicts[name]?.followThrough ?? false;
	}

	/** What is given stands as soon as what it needs does; any other step once its placement was checked and found right. */
	isRight(name: string): boolean {
		if (isGiven(this.step(name))) return this.#standing.has(name);
		return this.entry(name).checked && this.verdict(name).answer === 'right';
	}

	/** Whether later steps can be drawn from this one: it is right, or it is wrong and was kept as it is. */
	isDrafted(name: string): boolean {
		return this.#standing.has(name);
	}

	/** The steps that later ones can be drawn from. The method has each after all that it needs, so one pass finds them. */
	readonly #standing: ReadonlySet<string> = $derived.by(() => {
		const { draft, entries } = this;
		const { verdicts } = this.#judged;
		const standing = new Set<string>();
		for (const step of this.method.steps) {
			const { name } = step;
			const { checked, kept } = entries[name] ?? NEW_ENTRY;
			const answer = verdicts[name]?.verdict.answer;
			const stands = isGiven(step)
				? this.#needs(step).every((need) => standing.has(need) || !isIn(draft, need))
				: checked && (answer === 'right' || (kept && answer === 'wrong'));
			if (stands && isIn(draft, name)) standing.add(name);
		}
		return standing;
	});

	isKept(name: string): boolean {
		const { kept, checked } = this.entry(name);
		return kept && checked && this.verdict(name).answer === 'wrong';
	}

	/** Whether this body's draft has the step at all: some steps depend on the measurements. */
	isNeeded(name: string): boolean {
		return isIn(this.draft, name);
	}

	/** Those of some steps that are still to be drafted. */
	left(names: readonly string[]): readonly string[] {
		return names.filter((name) => this.isNeeded(name) && !this.isDrafted(name));
	}

	state(name: string): StepState {
		if (!this.isNeeded(name)) return 'absent';
		if (this.isRight(name)) return 'right';
		if (this.isKept(name)) return 'kept';
		if (this.blockers(name).length > 0) return 'locked';
		const { placement, checked } = this.entry(name);
		if (!placement) return 'open';
		// An entry that cannot be used, or that we could not judge, is not a wrong one.
		return checked && this.verdict(name).answer === 'wrong' ? 'wrong' : 'placed';
	}

	/** What must stand before a step is drawn: what it is worked from, and all that it moves, for a panel is turned whole. */
	#wants(name: string): readonly string[] {
		return [...this.#needs(this.step(name)), ...movedIn(this.method, this.step(name))];
	}

	/** What a step is worked from. A given line waits for the step that is asked before it too: it would show where that one lies. */
	#needs(step: Step): readonly string[] {
		if (!followsFromLines(step)) return stepNeeds(step);
		const before = this.method.steps.slice(0, this.method.steps.indexOf(step));
		const asked = before.findLast((each) => !isGiven(each) && isIn(this.draft, each.name));
		return [...stepNeeds(step), ...(asked ? [asked.name] : [])];
	}

	/** The earlier steps that must be drafted before this one can be drawn; for what is given, those that it waits for. */
	blockers(name: string): readonly string[] {
		const { draft } = this;
		const standing = this.#standing;
		const blocking = (each: string): readonly string[] => {
			const missing = this.#wants(each).filter((need) => isIn(draft, need) && !standing.has(need));
			return [...new Set(missing.flatMap((need) => (isGiven(this.step(need)) ? blocking(need) : [need])))];
		};
		return blocking(name);
	}

	/**
	 * What stands in ink: every step that is right, at its computed place, so that slips of the hand do
	 * not add up; and what the learner kept, where they put it.
	 */
	readonly inked: Pick<Draft, 'points' | 'lines'> = $derived.by(() => {
		const [names, own] = [this.#standing, this.own];
		const kept = <T>(all: Readonly<Record<string, T>>): Record<string, T> =>
			Object.fromEntries(Object.entries(all).filter(([name]) => names.has(name)));
		return this.draft ? { points: kept(own.points), lines: kept(own.lines) } : { points: {}, lines: {} };
	});

	/** The rule of a step for the chosen body, in its three rungs; undefined where the body cannot be drafted. */
	explain(name: string): Explanation | undefined {
		return this.draft && this.isNeeded(name)
			? explain(this.method, name, this.body, this.own, this.learner.unit)
			: undefined;
	}

	/** The drawn lengths that a step's rule starts from, once they are drafted. */
	given(name: string): readonly GivenLength[] {
		return this.draft && this.isNeeded(name) && this.blockers(name).length === 0
			? givenLengths(this.method, name, this.body, this.own)
			: [];
	}

	/** Puts a placement down, unchecked. */
	place(name: string, placement: Placement): void {
		this.#change({ [name]: { ...this.entry(name), placement, checked: false, kept: false, shown: false } });
	}

	/** Takes a placement away again; tries and help stay counted. */
	clear(name: string): void {
		if (!this.entry(name).placement) return;
		const { placement: _, ...rest } = this.entry(name);
		this.#change({ [name]: { ...rest, checked: false } });
	}

	/** Gives the placement to the checker. Only a wrong answer counts as a try. */
	check(name: string): Verdict {
		const verdict = this.verdict(name);
		const entry = this.entry(name);
		if (verdict.answer === 'unfinished' || entry.checked) return verdict;
		const cost = verdict.answer === 'wrong' ? 1 : 0;
		this.#set({ ...this.entries, [name]: { ...entry, checked: true, tries: entry.tries + cost } });
		return verdict;
	}

	/** Opens a step that is right, or was kept, to be changed. */
	reopen(name: string): void {
		this.#change({ [name]: { ...this.entry(name), checked: false, kept: false } });
	}

	/** Leaves a wrong placement as it is, to go on from it. */
	keep(name: string): void {
		this.#change({ [name]: { ...this.entry(name), kept: true } });
	}

	/** Opens the next rung of help. */
	help(name: string): void {
		const entry = this.entry(name);
		this.#set({ ...this.entries, [name]: { ...entry, help: Math.min(3, entry.help + 1) } });
	}

	/** Drafts the steps that this one leans on, for a learner who begins at a later lesson. They are noted as shown. */
	draftBefore(name: string): void {
		const shown: Record<string, Entry> = {};
		const { draft, entries } = this;
		const standing = this.#standing;
		const seen = new Set<string>();
		const add = (each: string): void => {
			if (seen.has(each) || !isIn(draft, each) || standing.has(each)) return;
			seen.add(each);
			for (const need of this.#wants(each)) add(need);
			if (isGiven(this.step(each))) return;
			const entry = entries[each] ?? NEW_ENTRY;
			shown[each] = { ...entry, placement: this.answer(each), checked: true, shown: true };
		};
		for (const need of this.#wants(name)) add(need);
		if (Object.keys(shown).length > 0) this.#change(shown);
	}

	/** The computed placement of a step. */
	answer(name: string): Placement {
		const point = this.draft?.points[name];
		if (point) return { kind: 'point', at: placeOfPoint(point) };
		const line = this.draft?.lines[name];
		if (!line) throw new Error(`the step ${name} has no answer`);
		return placementSchema.parse(placementOfPath(line.path));
	}

	/** What a learner answers the step with. */
	makes(name: string): 'point' | 'line' {
		return stepMakes(this.step(name));
	}

	/** Takes back the last change of a placement; gives the step that it was made to. */
	undo(): string | undefined {
		const before = this.#done.at(-1);
		if (!before) return undefined;
		this.#done = this.#done.slice(0, -1);
		this.#undone = [...this.#undone, this.#asNow(before)];
		return this.#restore(before);
	}

	/** Makes the change again that was last taken back; gives the step that it was made to. */
	redo(): string | undefined {
		const after = this.#undone.at(-1);
		if (!after) return undefined;
		this.#undone = this.#undone.slice(0, -1);
		this.#done = [...this.#done, this.#asNow(after)];
		return this.#restore(after);
	}

	/** The same steps as they are now. */
	#asNow(changed: Entries): Entries {
		return Object.fromEntries(Object.keys(changed).map((name) => [name, this.entry(name)]));
	}

	/** Placements as they were; tries and help as they are now, so that undo neither costs nor hides anything. */
	#restore(before: Entries): string | undefined {
		const moved = this.method.steps.find(({ name }) => {
			const [then, now] = [before[name], this.entry(name)];
			return (
				then && (then.placement !== now.placement || then.checked !== now.checked || then.kept !== now.kept)
			);
		});
		const restored = Object.entries(before).map(([name, entry]): [string, Entry] => {
			const { tries, help } = this.entry(name);
			return [name, { ...entry, tries, help }];
		});
		this.#set({ ...this.entries, ...Object.fromEntries(restored) });
		return moved?.name;
	}

	#change(entries: Entries): void {
		this.#done = [...this.#done, this.#asNow(entries)];
		this.#undone = [];
		this.#set({ ...this.entries, ...entries });
	}

	#set(entries: Entries): void {
		if (this.#exercise) this.#unsaved = entries;
		else this.learner.work.keep(this.#slot, entries);
	}

	#evaluate(): Evaluation {
		if (this.missing.length > 0) return { kind: 'refused', refusals: [] };
		return evaluate(this.method, this.body);
	}

	/** Judges every placement in the method's order, each from what stands before it. */
	#judge(): Judged {
		const { draft } = this;
		if (!draft) return { verdicts: {}, own: { points: {}, lines: {} } };
		const own = new OwnDraft(this.method, this.body, draft);
		const verdicts: Record<string, DoubleVerdict> = {};
		const { entries } = this;
		for (const step of this.method.steps.filter(({ name }) => isIn(draft, name))) {
			const { placement, checked, kept } = entries[step.name] ?? NEW_ENTRY;
			if (!placement) {
				if (own.leansOnOwn(step)) own.follow(step);
				continue;
			}
			const double = own.check(step, placement);
			verdicts[step.name] = double;
			if (checked && kept && double.verdict.answer === 'wrong') own.keep(step, placement);
			else if (double.followThrough) own.follow(step);
		}
		return { verdicts, own: own.drafted };
	}
}
