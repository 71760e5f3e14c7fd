import { placementSchema, type Placement } from '#shared/placement.ts';
import type { Verdict } from '#shared/verdict.ts';
import { check } from '#checker/check.ts';
import { placementOfPath, placeOfPoint } from '#checker/placed.ts';
import { evaluate, type Draft, type Evaluation } from '#drafting/evaluate.ts';
import { explain } from '#drafting/explain.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { stepMakes, stepNeeds } from '#drafting/steps/kinds.ts';
import type { Explanation, Step } from '#drafting/steps/step-rules.ts';
import type { Learner } from '../learner/learner.svelte.ts';
import { load, savedKey } from '../saved/saved.ts';
import { workSchema, type Entry } from '../saved/schemas.ts';

type Entries = Readonly<Record<string, Entry>>;

const NEW_ENTRY: Entry = { checked: false, tries: 0, help: 0, shown: false };

/** How far a learner has come with a step. *locked*: something that it starts from is not right yet. */
export type StepState = 'locked' | 'open' | 'placed' | 'right' | 'wrong';

/** A learner's work on one method for the chosen body: placements, their verdicts, undo and redo. Saved at every change. */
export class Work {
	readonly method: Method;
	readonly learner: Learner;
	entries: Entries = $state.raw({});
	#undone: Entries[] = $state.raw([]);
	#done: Entries[] = $state.raw([]);

	readonly body = $derived.by(() => this.learner.current.body);
	readonly evaluation: Evaluation = $derived.by(() => this.#evaluate());
	readonly draft: Draft | undefined = $derived(
		this.evaluation.kind === 'drafted' ? this.evaluation.draft : undefined
	);
	readonly missing = $derived.by(() =>
		this.method.measurements.filter((key) => this.body.measurements[key] === undefined)
	);
	readonly verdicts: Readonly<Record<string, Verdict>> = $derived.by(() => this.#verdicts());
	readonly canUndo = $derived(this.#done.length > 0);
	readonly canRedo = $derived(this.#undone.length > 0);

	constructor(method: Method, learner: Learner) {
		this.method = method;
		this.learner = learner;
	}

	/** Where the work on this method for the chosen body is kept. */
	get key(): string {
		return savedKey('work', this.method.id, this.learner.current.id);
	}

	/** Reads back what was saved for the chosen body. */
	load(): void {
		const saved = this.learner.take(
			load(this.key, `Your draft of ${this.method.name} for ${this.body.name}`, workSchema)
		);
		this.entries = saved?.steps ?? {};
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
		return this.verdicts[name] ?? { answer: 'unfinished' };
	}

	/** The corner is given; any other step counts as drafted once its placement was checked and found right. */
	isRight(name: string): boolean {
		return (
			this.step(name).kind === 'corner' || (this.entry(name).checked && this.verdict(name).answer === 'right')
		);
	}

	state(name: string): StepState {
		if (this.isRight(name)) return 'right';
		if (this.blockers(name).length > 0) return 'locked';
		const { placement, checked } = this.entry(name);
		if (!placement) return 'open';
		return checked ? 'wrong' : 'placed';
	}

	/** The earlier steps that must be right before this one can be drawn. */
	blockers(name: string): readonly string[] {
		return stepNeeds(this.step(name)).filter((need) => !this.isRight(need));
	}

	/** What stands in ink: every step that is right, at its computed place, so that slips of the hand do not add up. */
	readonly inked: Pick<Draft, 'points' | 'lines'> = $derived.by(() => {
		const { draft } = this;
		const right = new Set(this.method.steps.map(({ name }) => name).filter((name) => this.isRight(name)));
		const kept = <T>(all: Readonly<Record<string, T>> = {}): Record<string, T> =>
			Object.fromEntries(Object.entries(all).filter(([name]) => right.has(name)));
		return { points: kept(draft?.points), lines: kept(draft?.lines) };
	});

	/** The rule of a step for the chosen body, in its three rungs; undefined where the body cannot be drafted. */
	explain(name: string): Explanation | undefined {
		return this.draft ? explain(this.method, name, this.body, this.draft, this.learner.unit) : undefined;
	}

	/** Puts a placement down, unchecked. */
	place(name: string, placement: Placement): void {
		this.#change({ [name]: { ...this.entry(name), placement, checked: false, shown: false } });
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
		const costs = verdict.answer === 'right' || verdict.answer === 'wrong';
		this.#set({ ...this.entries, [name]: { ...entry, checked: true, tries: entry.tries + (costs ? 1 : 0) } });
		return verdict;
	}

	/** Opens the next rung of help. */
	help(name: string): void {
		const entry = this.entry(name);
		this.#set({ ...this.entries, [name]: { ...entry, help: Math.min(3, entry.help + 1) } });
	}

	/** Drafts the steps that this one leans on, for a learner who begins at a later lesson. They are noted as shown. */
	draftBefore(name: string): void {
		const shown: Record<string, Entry> = {};
		const add = (each: string): void => {
			if (each in shown || this.isRight(each)) return;
			for (const need of stepNeeds(this.step(each))) add(need);
			shown[each] = { ...this.entry(each), placement: this.answer(each), checked: true, shown: true };
		};
		for (const need of stepNeeds(this.step(name))) add(need);
		this.#change(shown);
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

	undo(): void {
		const before = this.#done.at(-1);
		if (!before) return;
		this.#done = this.#done.slice(0, -1);
		this.#undone = [...this.#undone, this.entries];
		this.#set(this.#restored(before));
	}

	redo(): void {
		const after = this.#undone.at(-1);
		if (!after) return;
		this.#undone = this.#undone.slice(0, -1);
		this.#done = [...this.#done, this.entries];
		this.#set(this.#restored(after));
	}

	/** Placements as they were; tries and help as they are now, so that undo neither costs nor hides anything. */
	#restored(entries: Entries): Entries {
		const names = new Set([...Object.keys(entries), ...Object.keys(this.entries)]);
		return Object.fromEntries(
			[...names].map((name) => {
				const { tries, help } = this.entry(name);
				return [name, { ...(entries[name] ?? NEW_ENTRY), tries, help }];
			})
		);
	}

	#change(entries: Entries): void {
		this.#done = [...this.#done, this.entries];
		this.#undone = [];
		this.#set({ ...this.entries, ...entries });
	}

	#set(entries: Entries): void {
		this.entries = entries;
		this.learner.keep(this.key, {
			version: 1,
			method: this.method.id,
			body: this.learner.current.id,
			steps: entries
		});
	}

	#evaluate(): Evaluation {
		if (this.missing.length > 0) return { kind: 'refused', refusals: [] };
		return evaluate(this.method, this.body);
	}

	#verdicts(): Record<string, Verdict> {
		const { draft } = this;
		if (!draft) return {};
		return Object.fromEntries(
			Object.entries(this.entries)
				.filter(([name]) => this.method.steps.some((step) => step.name === name))
				.map(([name, { placement }]) => [name, check(this.method, name, draft, placement)])
		);
	}
}
