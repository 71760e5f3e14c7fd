import { notTaken } from '#shared/measurements.ts';
import type { Body } from '#shared/body.ts';
import type { Entries, Entry } from '#shared/entry.ts';
import { placementSchema, type Placement } from '#shared/placement.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { NamedStep } from '#shared/speech/en/desk.ts';
import { TOLERANCES, type Tolerances } from '#shared/tolerances.ts';
import type { Verdict } from '#shared/verdict.ts';
import { judged, type Judged, type LearnersWork, type StepState } from '#checker/work.ts';
import { placementOfPath, placeOfPoint } from '#checker/placed.ts';
import { evaluate, type Draft, type Drafted, type Evaluation } from '#drafting/evaluate.ts';
import { explain, givenLengths, type GivenLength } from '#drafting/explain.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { isGiven, stepMakes } from '#drafting/steps/kinds.ts';
import type { Explanation, Step } from '#drafting/steps/step-rules.ts';
import type { Learner } from '#ui/keeping/learner.svelte.ts';
import { workSlot } from '#ui/keeping/kinds.ts';
import type { Slot } from '#ui/keeping/saved.ts';

/** Where a placement lies, however it was made. */
const whereOf = (placement: Placement): string =>
	JSON.stringify(placement.kind === 'point' ? placement.at : placement.segments);

const NEW_ENTRY: Entry = { checked: false, tries: 0, help: 0, kept: false, shown: false };

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
	/** What was wrong and is counted already, by step: the same placement checked again is no second try. */
	readonly #counted = new Map<string, readonly string[]>();
	/** Later steps that were right from an earlier mark and moved with it when that was last changed. */
	movedAlong: readonly string[] = $state.raw([]);

	/** The learner's own drafts that this one leans on, by its short names for them. */
	readonly #leant: Readonly<Record<string, Work>>;
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
	readonly missing = $derived.by(() => notTaken(this.method.measurements, this.body));
	/** How near a mark must come. */
	readonly allowed: Tolerances = $derived.by(() => this.learner.judging?.allowed ?? TOLERANCES.normal);
	/** All that the judge looks at, and what it finds. */
	readonly handed: LearnersWork = $derived.by(() => {
		const { method, body, draft, entries } = this;
		const own = Object.entries(this.#leant).filter(([, { keeps }]) => keeps);
		const uses = Object.fromEntries(own.map(([alias, { judged }]) => [alias, judged]));
		return { method, body, truth: draft, entries, marks: 'inked', allowed: this.allowed, uses };
	});
	readonly judged: Judged = $derived.by(() => (this.learner.judging?.judge ?? judged)(this.handed));
	/** Whether anything stands elsewhere than it should: something was kept as it was, here or in a draft that this one leans on. */
	readonly keeps: boolean = $derived.by(
		() =>
			Object.values(this.entries).some(({ kept }) => kept) ||
			Object.values(this.#leant).some(({ keeps }) => keeps)
	);
	/** What steps are drawn from. */
	readonly own: Drafted = $derived(this.judged.own);
	/** Whether every line of the outline stands. */
	readonly closed: boolean = $derived.by(() => {
		const { outline } = this.method;
		return outline.length > 0 && this.left(outline).length === 0;
	});
	/** Whether the last check closed it. */
	closedNow = $state(false);
	/** Steps whose first rung of help was passed over, since a verdict had told it. */
	readonly passed = new Set<string>();
	readonly canUndo = $derived(this.#done.length > 0);
	readonly canRedo = $derived(this.#undone.length > 0);

	constructor(method: Method, learner: Learner, exercise?: Body) {
		this.#exercise = exercise;
		const uses = exercise ? [] : Object.entries(method.uses);
		this.#leant = Object.fromEntries(uses.map(([alias, used]) => [alias, new Work(used, learner)]));
		this.method = method;
		this.learner = learner;
	}

	#slotFor(body: boolean): Slot<Entries> {
		const { id } = this.learner.current;
		return workSlot(this.method, body ? { id, name: this.body.name } : undefined, (name) => {
			const step = this.method.steps.find((each) => each.name === name);
			return step && stepMakes(step) === 'line' ? message('keeping', 'called', { label: step.label }) : name;
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
		for (const work of Object.values(this.#leant)) work.load();
		this.#done = [];
		this.#undone = [];
		this.#counted.clear();
		this.passed.clear();
		this.movedAlong = [];
	}

	entry(name: string): Entry {
		return this.entries[name] ?? NEW_ENTRY;
	}

	step(name: string): Step {
		return stepNamed(this.method, name);
	}

	/** A step as it is named: a point has a name beside what it is called. */
	named(name: string): NamedStep {
		const { label } = this.step(name);
		return this.makes(name) === 'point' ? { point: name, label } : { label };
	}

	verdict(name: string): Verdict {
		return this.judged.verdict(name);
	}

	/** Whether a step is right only from the learner's own earlier points. */
	followsThrough(name: string): boolean {
		return this.judged.verdicts[name]?.followThrough ?? false;
	}

	/** What is given stands as soon as what it needs does; any other step once its placement was checked and found right. */
	isRight(name: string): boolean {
		return this.isDrafted(name) && !this.isKept(name);
	}

	/** Whether later steps can be drawn from this one: it is right, or it is wrong and was kept as it is. */
	isDrafted(name: string): boolean {
		return this.judged.standing.has(name);
	}

	isKept(name: string): boolean {
		return this.state(name) === 'kept';
	}

	/** Whether what was kept is wrong in itself, and not excused for an earlier mistake. */
	isMistake(name: string): boolean {
		return this.isKept(name) && this.verdict(name).answer === 'wrong';
	}

	/** Whether this body's draft has the step at all: some steps depend on the measurements. */
	isNeeded(name: string): boolean {
		return this.judged.isIn(name);
	}

	/** Those of some steps that are still to be drafted. */
	left(names: readonly string[]): readonly string[] {
		return names.filter((name) => this.isNeeded(name) && !this.isDrafted(name));
	}

	state(name: string): StepState {
		return this.judged.state(name);
	}

	/** The earlier steps that must be drafted before this one can be drawn; for what is given, those that it waits for. */
	blockers(name: string): readonly string[] {
		return this.judged.blockers(name);
	}

	/**
	 * What stands in ink: every step that is right, at its computed place, so that slips of the hand do
	 * not add up; and what the learner kept, where they put it.
	 */
	readonly inked: Pick<Draft, 'points' | 'lines'> = $derived.by(() => {
		const { standing, own } = this.judged;
		const kept = <T>(all: Readonly<Record<string, T>>): Record<string, T> =>
			Object.fromEntries(Object.entries(all).filter(([name]) => standing.has(name)));
		return this.draft ? { points: kept(own.points), lines: kept(own.lines) } : { points: {}, lines: {} };
	});

	/** The rule of a step for the chosen body, in its three rungs; undefined where the body cannot be drafted. */
	explain(name: string, speech: Speech): Explanation | undefined {
		return this.draft && this.isNeeded(name)
			? explain(this.method, name, this.body, this.own, speech)
			: undefined;
	}

	/** The drawn lengths that a step's rule starts from, once they are drafted. */
	given(name: string, speech: Speech): readonly GivenLength[] {
		return this.draft && this.isNeeded(name) && this.blockers(name).length === 0
			? givenLengths(this.method, name, this.body, this.own, speech)
			: [];
	}

	/** Puts a placement down, unchecked; where it lies there already and was checked, nothing changes. */
	place(name: string, placement: Placement): void {
		const { checked, shown, placement: before } = this.entry(name);
		if (checked && !shown && before && whereOf(before) === whereOf(placement)) return;
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
		if (verdict.answer === 'our-fault')
			console.error('our-fault', ...this.judged.faults.filter(({ step }) => step === name));
		if (verdict.answer === 'unfinished' || entry.checked) return verdict;
		const cost = verdict.answer === 'wrong' && this.#isNew(name) ? 1 : 0;
		const { closed } = this;
		if (this.movedAlong.length > 0) this.movedAlong = [];
		this.#set({ ...this.entries, [name]: { ...entry, checked: true, tries: entry.tries + cost } });
		this.closedNow = this.closed && !closed;
		return verdict;
	}

	/** Whether a placement was not counted yet; from now on it is. */
	#isNew(name: string): boolean {
		const { placement } = this.entry(name);
		const [where, counted] = [placement ? whereOf(placement) : '', this.#counted.get(name) ?? []];
		this.#counted.set(name, [...counted, where]);
		return !counted.includes(where);
	}

	/** Opens a step that is right, or was kept, to be changed. */
	reopen(name: string): void {
		this.#change({ [name]: { ...this.entry(name), checked: false, kept: false } });
	}

	/** Leaves a wrong placement as it is, to go on from it. */
	keep(name: string): void {
		this.#change({ [name]: { ...this.entry(name), kept: true } });
	}

	/** Opens the next rung of help; as many as were `told` already are passed over. */
	help(name: string, told = 0): void {
		const entry = this.entry(name);
		if (told > entry.help) this.passed.add(name);
		this.#set({ ...this.entries, [name]: { ...entry, help: Math.min(3, Math.max(entry.help, told) + 1) } });
	}

	/** Drafts the steps that this one leans on, for a learner who begins at a later lesson. They are noted as shown. */
	draftBefore(name: string): void {
		const shown: Record<string, Entry> = {};
		const { judged } = this;
		const seen = new Set<string>();
		const add = (each: string): void => {
			if (seen.has(each) || this.left([each]).length === 0) return;
			seen.add(each);
			for (const need of judged.wants(each)) add(need);
			if (isGiven(this.step(each))) return;
			shown[each] = { ...this.entry(each), placement: this.answer(each), checked: true, shown: true };
		};
		for (const need of judged.wants(name)) add(need);
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
		const { entries: was, judged } = this;
		const leant = this.method.steps
			.map(({ name }) => name)
			.filter((name) => judged.verdicts[name]?.followThrough && was[name]?.checked && !(name in entries));
		this.#undone = [];
		this.closedNow = false;
		this.#set({ ...was, ...entries });
		this.movedAlong = leant.filter((name) => this.#moveAlong(name));
		const changed = [...Object.keys(entries), ...this.movedAlong];
		this.#done = [...this.#done, Object.fromEntries(changed.map((name) => [name, was[name] ?? NEW_ENTRY]))];
	}

	/** What was right from an earlier mark goes with it when that is changed, and stays right; false where it needs not. */
	#moveAlong(name: string): boolean {
		if (this.verdict(name).answer !== 'wrong') return false;
		this.#set({ ...this.entries, [name]: { ...this.entry(name), placement: this.answer(name) } });
		return true;
	}

	#set(entries: Entries): void {
		if (this.#exercise) this.#unsaved = entries;
		else this.learner.work.keep(this.#slot, entries);
	}

	#evaluate(): Evaluation {
		if (this.missing.length > 0) return { kind: 'refused', refusals: [] };
		return evaluate(this.method, this.body);
	}
}
