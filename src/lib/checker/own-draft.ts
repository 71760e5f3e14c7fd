import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import type { Placement } from '#shared/placement.ts';
import type { Mark } from '#shared/speech/en/verdicts.ts';
import { message } from '#shared/speech/message.ts';
import { SAME_PLACE, type Tolerances } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Verdict } from '#shared/verdict.ts';
import { conditionNeeds } from '#drafting/conditions.ts';
import { brokenRules, NotDrafted, scopeOf, type Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { stepLeansOn, stepMakes, workStep } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { pathLength } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';
import { turnedTo } from './check-line.ts';
import { check } from './check.ts';
import { pathOfPlacement, pointOfPlace } from './placed.ts';

/** A draft as the learner has it: the points and lines, and what of them stands elsewhere than it should, with the mistakes that it comes of. */
export interface Own {
	readonly own: Drafted;
	readonly moved: ReadonlyMap<string, readonly Mark[]>;
	/** How far what was measured, and what follows from it, may lie from where it is said to. */
	readonly errors: ReadonlyMap<string, Mm>;
}

/** What the checker says of a step that is judged twice. */
export interface DoubleVerdict {
	readonly verdict: Verdict;
	/** Right only from the learner's own earlier points. */
	readonly followThrough: boolean;
}

/** A point goes by its name, a line by what it is called. */
const markOf = (step: Step): Mark => ({
	noun: stepMakes(step) === 'point' ? { name: step.name } : step.label
});

const isSame = (a: Mark, b: Mark): boolean => a.noun.name === b.noun.name && a.of?.name === b.of?.name;

/** The learner's own points and lines so far, over the computed ones where nothing of theirs stands. */
export class OwnDraft {
	readonly #method: Method;
	readonly #body: Body;
	readonly #truth: Drafted;
	readonly #points: Record<string, Drafted['points'][string]>;
	readonly #lines: Record<string, Drafted['lines'][string]>;
	readonly #uses: Readonly<Record<string, Drafted>>;
	readonly #moved = new Map<string, readonly Mark[]>();
	/** What the learner's own marks lead nowhere, and nothing was put down for that could be taken up. */
	readonly #lost = new Map<string, readonly Mark[]>();
	readonly #errors = new Map<string, Mm>();

	/** `uses` are the learner's own drafts that this one leans on; the computed ones stand for those that are not given. */
	constructor(method: Method, body: Body, truth: Drafted, uses: Readonly<Record<string, Own>> = {}) {
		this.#method = method;
		this.#body = body;
		const borrowed = Object.entries(uses);
		const drafts = borrowed.map(([alias, { own }]) => [alias, own] as const);
		this.#truth = truth;
		this.#uses = { ...truth.uses, ...Object.fromEntries(drafts) };
		for (const [alias, { moved, errors }] of borrowed) {
			for (const [name, error] of errors) this.#errors.set(`${alias}.${name}`, error);
			const of = method.uses[alias]?.called ?? { name: alias };
			for (const [name, marks] of moved)
				this.#moved.set(
					`${alias}.${name}`,
					marks.map((mark) => ({ of, ...mark }))
				);
		}
		this.#points = { ...truth.points };
		this.#lines = { ...truth.lines };
	}

	/** The points and lines from which the next step is drafted. */
	get drafted(): Drafted {
		return { points: this.#points, lines: this.#lines, uses: this.#uses };
	}

	/** What stands elsewhere than it should, with the mistakes that it comes of. */
	get moved(): Own['moved'] {
		return this.#moved;
	}

	/** How far what was measured may lie from where it is said to. */
	get errors(): Own['errors'] {
		return this.#errors;
	}

	/** How far the place where the learner's own earlier points lead a step may lie elsewhere: as they do, each by itself. */
	#errorOf(step: Step): Mm {
		return mm(Math.hypot(...stepLeansOn(step).map((need) => this.#errors.get(need) ?? 0)));
	}

	/** The mistakes that a step comes of where it starts from something that stands elsewhere than it should; undefined where it does not. */
	#causesOf(step: Step): readonly Mark[] | undefined {
		const found = stepLeansOn(step).flatMap((need) => this.#moved.get(need) ?? this.#lost.get(need) ?? []);
		return found.length === 0
			? undefined
			: found.filter((mark, i) => found.findIndex((each) => isSame(each, mark)) === i);
	}

	/** Whether a step starts from something that stands elsewhere than it should. */
	leansOnOwn(step: Step): boolean {
		return this.#causesOf(step) !== undefined;
	}

	/** Takes up what the learner put down for a step; what is no placement of its kind changes nothing. */
	keep(step: Step, placement: Placement, isMistake: boolean): void {
		const { name } = step;
		if (placement.error) this.#errors.set(name, mm(placement.error));
		const causes = (isMistake ? undefined : this.#causesOf(step)) ?? [markOf(step)];
		if (placement.kind === 'point' && stepMakes(step) === 'point') {
			const point = pointOfPlace(placement.at);
			const right = this.#truth.points[name];
			this.#points[name] = point;
			if (!right || distance(point, right) > SAME_PLACE) this.#moved.set(name, causes);
		}
		if (placement.kind === 'line' && stepMakes(step) === 'line') {
			const [drawn, right] = [pathOfPlacement(placement), this.#truth.lines[name]?.path];
			// Later steps measure from a line's start, whichever way the learner's hand went.
			const path = right ? turnedTo(drawn, right) : drawn;
			this.#lines[name] = { path, length: pathLength(path) };
			this.#moved.set(name, causes);
		}
	}

	/** Takes up a step at the place where the learner's own earlier points lead it; false where they lead it nowhere. */
	follow(step: Step): boolean {
		const consequence = this.consequence(step);
		const [point, line] = [consequence?.points[step.name], consequence?.lines[step.name]];
		if (point) this.#points[step.name] = point;
		if (line) this.#lines[step.name] = line;
		this.#errors.set(step.name, this.#errorOf(step));
		(consequence ? this.#moved : this.#lost).set(step.name, this.#causesOf(step) ?? []);
		return consequence !== undefined;
	}

	/**
	 * The rule of a step applied to the learner's own points; undefined where those make it meaningless: it cannot be
	 * worked, or it breaks a rule by which a body is refused.
	 */
	consequence(step: Step): Drafted | undefined {
		if (stepLeansOn(step).some((need) => this.#lost.has(need))) return undefined;
		try {
			const work = workStep(step, scopeOf(this.#method, this.#body, this.drafted));
			if (work.kind === 'impossible') return undefined;
			const drafted: Drafted =
				work.kind === 'point'
					? { ...this.drafted, points: { ...this.#points, [step.name]: work.point } }
					: {
							...this.drafted,
							lines: { ...this.#lines, [step.name]: { path: work.path, length: pathLength(work.path) } }
						};
			// Only the rules that name the step: what another step has broken is that one's mistake.
			const refusals = this.#method.refusals.filter((rule) => conditionNeeds(rule).includes(step.name));
			return brokenRules({ ...this.#method, refusals }, this.#body, drafted).length > 0 ? undefined : drafted;
		} catch (error) {
			if (error instanceof NotDrafted || error instanceof BadInput) return undefined;
			throw error;
		}
	}

	/**
	 * Judges a placement against the true earlier points and, where that is wrong and the step leans on
	 * the learner's own, against those; the better counts. Where those lead it nowhere it is *excused*. What was
	 * measured may be neither right nor wrong against either.
	 */
	check(step: Step, placement: unknown, allowed: Tolerances): DoubleVerdict {
		const against = (draft: Drafted, error?: Mm): Verdict =>
			check(this.#method, step.name, draft, placement, allowed, error);
		const verdict = against(this.#truth);
		const { answer } = verdict;
		const first = answer === 'wrong' || answer === 'cannot-tell' ? this.#causesOf(step) : undefined;
		if (!first) return { verdict, followThrough: false };
		const consequence = this.consequence(step);
		if (!consequence && answer === 'wrong')
			return {
				verdict: { answer: 'excused', because: message('verdicts', 'putFirst', { first }) },
				followThrough: false
			};
		const own = consequence && against(consequence, this.#errorOf(step));
		if (own?.answer === 'right') return { verdict: own, followThrough: true };
		return {
			verdict: answer === 'wrong' && own?.answer === 'cannot-tell' ? own : verdict,
			followThrough: false
		};
	}
}
