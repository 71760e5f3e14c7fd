import { z } from '#shared/shape.ts';
import type { Practised } from '#practice/exercises/exercise.ts';
import { exercise, judge } from '#practice/exercises/kinds.ts';
import { exerciseKeySchema, type Exercise, type Judged } from '#practice/exercises/exercise.ts';
import { afterExample, afterTry, masterySchema, NO_MASTERY, type Mastery } from '#practice/mastery.ts';
import { practiceSet, skillsOf, type SetItem, type Skill } from '#practice/practice-set.ts';
import { isProbeDue, NO_PROBES, probeSet, withFinished, withTaken, type Probes } from '#practice/probe.ts';
import { Work } from '#ui/desk/work.svelte.ts';
import { PROBES, today } from '#ui/keeping/probes.ts';
import type { Learner } from '#ui/keeping/learner.svelte.ts';
import { message } from '#shared/speech/message.ts';
import { savedKey } from '#ui/keeping/shelf.ts';
import { whole } from '#ui/keeping/saved.ts';

/** Exercises in a set: about a quarter of an hour. */
const SET_SIZE = 10;

const savedSetSchema = z.object({
	version: z._default(z.literal(1), 1),
	items: z.array(z.extend(exerciseKeySchema, { rule: z.string(), exampleFirst: z.boolean() })),
	at: z.int().check(z.minimum(0)),
	results: z.array(z.enum(['right', 'wrong', 'helped', 'passed'])),
	helped: z._default(z.boolean(), false),
	exampleSeen: z._default(z.boolean(), false),
	/** The drafts that were chosen; none while nothing was. */
	topics: z._default(z.array(z.string()), []),
	/** The draft of which it is tried what has stayed, where that is what the set is for. */
	probe: z.optional(z.string())
});

const MASTERY = whole(savedKey('mastery'), message('keeping', 'practised'), masterySchema);
const SET = whole(savedKey('practice'), message('keeping', 'practiceSet'), savedSetSchema);

/** How an exercise went, by its first answer. */
export type Result = z.infer<typeof savedSetSchema>['results'][number];

/** A learner's practice: the set at hand, and what seems to be mastered. Kept in the browser at every answer. */
export class Practice {
	readonly learner: Learner;
	readonly methods: readonly Practised[];
	mastery: Mastery = $state.raw(NO_MASTERY);
	items: readonly SetItem[] = $state.raw([]);
	at = $state(0);
	results: readonly Result[] = $state.raw([]);
	judged: Judged | undefined = $state.raw();
	/** Whether the rule was looked at before an answer: the answer then says nothing of what was known. */
	helped = $state(false);
	exampleSeen = $state(false);
	probes: Probes = $state.raw(NO_PROBES);
	/** The draft of which it is tried what has stayed: without help. */
	probing: string | undefined = $state();
	/** The drafts that are practised, by their ids. */
	topics: readonly string[] = $state.raw([]);

	readonly item: SetItem | undefined = $derived(this.items[this.at]);
	readonly exercise: Exercise | undefined = $derived.by(() => {
		const { item } = this;
		return item && exercise(item, (id) => this.methods.find((method) => method.id === id));
	});
	readonly skills: readonly Skill[] = $derived.by(() => skillsOf(this.methods, this.mastery, this.day()));
	/** The skills of the chosen drafts. */
	readonly chosen: readonly Skill[] = $derived(
		this.skills.filter(({ method }) => this.topics.includes(method))
	);
	readonly finished = $derived(this.items.length > 0 && this.at >= this.items.length);

	/** The drafts that were finished so long ago that it is time to try what has stayed. */
	readonly due: readonly Practised[] = $derived.by(() =>
		this.methods.filter(({ id }) => isProbeDue(this.probes, id, this.day()))
	);

	/** `day` tells the learner's own day. */
	constructor(
		learner: Learner,
		methods: readonly Practised[],
		readonly day: () => string = today
	) {
		this.learner = learner;
		this.methods = methods;
	}

	/** Reads back what was kept: the mastery, and a set that was begun. */
	load(): void {
		this.mastery = this.learner.take(MASTERY) ?? NO_MASTERY;
		const set = this.learner.take(SET);
		this.items = set?.items ?? [];
		this.at = set?.at ?? 0;
		this.results = set?.results ?? [];
		this.helped = set?.helped ?? false;
		this.exampleSeen = set?.exampleSeen ?? false;
		this.probing = set?.probe;
		this.topics = this.#met(set?.topics ?? []);
		const finished = this.methods.filter((method) => this.#isFinished(method)).map(({ id }) => id);
		this.#keepProbes(withFinished(this.learner.take(PROBES) ?? NO_PROBES, finished, this.day()));
	}

	/** Begins a new set; the same seed and the same mastery give the same set. */
	begin(seed: number): void {
		this.#beginWith(practiceSet(seed, this.chosen, SET_SIZE), undefined);
	}

	/** Begins to try what has stayed of a draft. */
	probe(seed: number, method: Practised): void {
		this.#beginWith(probeSet(seed, method, this.day()), method.id);
	}

	#beginWith(items: readonly SetItem[], probing: string | undefined): void {
		this.items = items;
		this.probing = probing;
		this.results = [];
		this.#goTo(0);
	}

	/** Takes a draft up among those that are practised, or leaves it out. */
	choose(id: string, taken: boolean): void {
		this.topics = this.methods
			.map((method) => method.id)
			.filter((each) => (each === id ? taken : this.topics.includes(each)));
		this.#save();
	}

	/** Whether the learner has placed anything of a draft, for the body that is chosen. */
	#isBegun(method: Practised): boolean {
		const work = new Work(method, this.learner);
		work.load();
		return method.steps.some(({ name }) => work.entry(name).placement !== undefined);
	}

	/** Whether all of a draft that the chosen body needs is drafted. */
	#isFinished(method: Practised): boolean {
		const work = new Work(method, this.learner);
		work.load();
		return work.draft !== undefined && work.left(method.steps.map(({ name }) => name)).length === 0;
	}

	#keepProbes(probes: Probes): void {
		if (probes !== this.probes && Object.keys(probes.parts).length > 0) this.learner.keep(PROBES.key, probes);
		this.probes = probes;
	}

	/** What was chosen before; else the drafts that were begun here. A newcomer is asked. */
	#met(chosen: readonly string[]): readonly string[] {
		const known = this.methods.filter(({ id }) => chosen.includes(id));
		const begun = this.methods.filter((method) => this.#isBegun(method));
		return (known.length > 0 ? known : begun).map(({ id }) => id);
	}

	/** Judges an answer, and keeps the first one that is right or wrong. */
	answer(answer: unknown): Judged | undefined {
		const { exercise: asked, item } = this;
		if (!asked || !item) return undefined;
		const judged = judge(asked, answer);
		this.judged = judged;
		if (judged.answer !== 'right' && judged.answer !== 'wrong') return judged;
		const first = this.results[this.at] === undefined;
		if (first) {
			this.mastery = afterTry(this.mastery, {
				rule: item.rule,
				body: String(item.seed),
				day: this.day(),
				answer: judged.answer,
				first,
				helped: this.helped
			});
			this.learner.keep(MASTERY.key, this.mastery);
			this.#note(this.helped ? 'helped' : judged.answer);
		}
		return judged;
	}

	/** The worked example was read: the rule's tries are counted anew. */
	seeExample(): void {
		if (this.item) this.mastery = afterExample(this.mastery, this.item.rule);
		this.learner.keep(MASTERY.key, this.mastery);
		this.exampleSeen = true;
		this.#save();
	}

	/** Shows the rule before an answer. */
	help(): void {
		this.helped = true;
		this.#save();
	}

	/** Goes on to the next exercise; one that was not answered is passed over. */
	next(): void {
		if (this.results[this.at] === undefined) this.#note('passed');
		this.#goTo(this.at + 1);
		if (!this.finished || this.probing === undefined) return;
		const right = this.results.filter((result) => result === 'right').length;
		this.#keepProbes(withTaken(this.probes, this.probing, this.day(), right, this.items.length));
	}

	/** Puts the set away. */
	end(): void {
		this.#beginWith([], undefined);
	}

	#note(result: Result): void {
		this.results = [...this.results.slice(0, this.at), result];
		this.#save();
	}

	#goTo(at: number): void {
		this.at = at;
		this.judged = undefined;
		this.helped = false;
		this.exampleSeen = false;
		this.#save();
	}

	#save(): void {
		const { items, at, results, helped, exampleSeen, topics, probing } = this;
		this.learner.keep(SET.key, {
			version: 1,
			items,
			at,
			results,
			helped,
			exampleSeen,
			topics,
			...(probing === undefined ? {} : { probe: probing })
		});
	}
}
