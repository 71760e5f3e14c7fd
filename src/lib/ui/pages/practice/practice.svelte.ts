import { z } from '#shared/shape.ts';
import type { Practised } from '#practice/exercises/exercise.ts';
import { exercise, judge } from '#practice/exercises/kinds.ts';
import { exerciseKeySchema, type Exercise, type Judged } from '#practice/exercises/exercise.ts';
import { afterExample, afterTry, masterySchema, NO_MASTERY, type Mastery } from '#practice/mastery.ts';
import { practiceSet, skillsOf, type SetItem, type Skill } from '#practice/practice-set.ts';
import { Work } from '#ui/desk/work.svelte.ts';
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
	topics: z._default(z.array(z.string()), [])
});

const MASTERY = whole(savedKey('mastery'), message('keeping', 'practised'), masterySchema);
const SET = whole(savedKey('practice'), message('keeping', 'practiceSet'), savedSetSchema);

/** How an exercise went, by its first answer. */
export type Result = z.infer<typeof savedSetSchema>['results'][number];

/** The learner's own day, as 2026-11-25. */
const today = (): string => {
	const now = new Date();
	const two = (part: number): string => String(part).padStart(2, '0');
	return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

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
	/** The drafts that are practised, by their ids. */
	topics: readonly string[] = $state.raw([]);

	readonly item: SetItem | undefined = $derived(this.items[this.at]);
	readonly exercise: Exercise | undefined = $derived.by(() => {
		const { item } = this;
		return item && exercise(item, (id) => this.methods.find((method) => method.id === id));
	});
	readonly skills: readonly Skill[] = $derived.by(() => skillsOf(this.methods, this.mastery, today()));
	/** The skills of the chosen drafts. */
	readonly chosen: readonly Skill[] = $derived(
		this.skills.filter(({ method }) => this.topics.includes(method))
	);
	readonly finished = $derived(this.items.length > 0 && this.at >= this.items.length);

	constructor(learner: Learner, methods: readonly Practised[]) {
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
		this.topics = this.#met(set?.topics ?? []);
	}

	/** Begins a new set; the same seed and the same mastery give the same set. */
	begin(seed: number): void {
		this.items = practiceSet(seed, this.chosen, SET_SIZE);
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

	/** What was chosen before; else the drafts that were begun here; else those that the course begins with. */
	#met(chosen: readonly string[]): readonly string[] {
		const known = this.methods.filter(({ id }) => chosen.includes(id));
		const begun = this.methods.filter((method) => this.#isBegun(method));
		const first = this.methods.filter(({ practised }) => practised);
		return ([known, begun].find((some) => some.length > 0) ?? first).map(({ id }) => id);
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
				day: today(),
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
	}

	/** Puts the set away. */
	end(): void {
		this.items = [];
		this.results = [];
		this.#goTo(0);
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
		const { items, at, results, helped, exampleSeen, topics } = this;
		this.learner.keep(SET.key, { version: 1, items, at, results, helped, exampleSeen, topics });
	}
}
