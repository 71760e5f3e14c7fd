/** The most questions that are asked at once. */
const MOST = 500;

interface Waiting<Q, A> {
	readonly question: Q;
	readonly land: (answer: A) => void;
	readonly fail: (problem: unknown) => void;
}

/**
 * Asks a store many questions of one kind in one go: those that come while it is at work are asked together with the next ones, so
 * that a whole class that comes at once waits for a few answers and not for one each. Whoever comes alone is answered at once.
 * Nothing is kept: each question is asked after it came.
 */
class Together<Q, A> {
	#waiting: Waiting<Q, A>[] = [];
	#asking = false;

	/** @param all answers some questions, in their order; what it throws is thrown to each of them */
	constructor(private readonly all: (questions: readonly Q[]) => Promise<readonly A[]>) {}

	ask(question: Q): Promise<A> {
		return new Promise((land, fail) => {
			this.#waiting.push({ question, land, fail });
			if (!this.#asking) void this.#work();
		});
	}

	async #work(): Promise<void> {
		this.#asking = true;
		// Requests that have come with this one are read first, so that they come along.
		await new Promise((resolve) => setImmediate(resolve));
		while (this.#waiting.length > 0) {
			const together = this.#waiting.splice(0, MOST);
			try {
				const answers = await this.all(together.map(({ question }) => question));
				for (const [index, { land }] of together.entries()) land(answers[index] as A);
			} catch (problem) {
				for (const { fail } of together) fail(problem);
			}
		}
		this.#asking = false;
	}
}

/** One such for each store, made when it is first asked for. */
export const togetherIn = <S extends object, Q, A>(
	all: (store: S, questions: readonly Q[]) => Promise<readonly A[]>
): ((store: S, question: Q) => Promise<A>) => {
	const made = new WeakMap<S, Together<Q, A>>();
	return (store, question) => {
		const known = made.get(store) ?? new Together<Q, A>((questions) => all(store, questions));
		made.set(store, known);
		return known.ask(question);
	};
};
