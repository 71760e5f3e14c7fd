import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import type { Placement } from '#shared/placement.ts';
import { SAME_PLACE, type Tolerances } from '#shared/tolerances.ts';
import type { Verdict } from '#shared/verdict.ts';
import { conditionNeeds } from '#drafting/conditions.ts';
import { brokenRules, NotDrafted, scopeOf, type Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { stepMakes, stepNeeds, workStep } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { pathLength } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';
import { turnedTo } from './check-line.ts';
import { check } from './check.ts';
import { pathOfPlacement, pointOfPlace } from './placed.ts';

/** What the checker says of a step that is judged twice. */
export interface DoubleVerdict {
	readonly verdict: Verdict;
	/** Right only from the learner's own earlier points. */
	readonly followThrough: boolean;
}

/** The learner's own points and lines so far, over the computed ones where nothing of theirs stands. */
export class OwnDraft {
	readonly #method: Method;
	readonly #body: Body;
	readonly #truth: Drafted;
	readonly #points: Record<string, Drafted['points'][string]>;
	readonly #lines: Record<string, Drafted['lines'][string]>;
	readonly #moved = new Set<string>();

	constructor(method: Method, body: Body, truth: Drafted) {
		this.#method = method;
		this.#body = body;
		this.#truth = truth;
		this.#points = { ...truth.points };
		this.#lines = { ...truth.lines };
	}

	/** The points and lines from which the next step is drafted. */
	get drafted(): Drafted {
		return { ...this.#truth, points: this.#points, lines: this.#lines };
	}

	/** Names of what stands elsewhere than it should. */
	get moved(): ReadonlySet<string> {
		return this.#moved;
	}

	/** Whether a step starts from something that stands elsewhere than it should. */
	leansOnOwn(step: Step): boolean {
		return stepNeeds(step).some((need) => this.#moved.has(need));
	}

	/** Takes up what the learner put down for a step; what is no placement of its kind changes nothing. */
	keep(step: Step, placement: Placement): void {
		const { name } = step;
		if (placement.kind === 'point' && stepMakes(step) === 'point') {
			const point = pointOfPlace(placement.at);
			const right = this.#truth.points[name];
			this.#points[name] = point;
			if (!right || distance(point, right) > SAME_PLACE) this.#moved.add(name);
		}
		if (placement.kind === 'line' && stepMakes(step) === 'line') {
			const [drawn, right] = [pathOfPlacement(placement), this.#truth.lines[name]?.path];
			// Later steps measure from a line's start, whichever way the learner's hand went.
			const path = right ? turnedTo(drawn, right) : drawn;
			this.#lines[name] = { path, length: pathLength(path) };
			this.#moved.add(name);
		}
	}

	/** Takes up a step at the place where the learner's own earlier points lead it; false where they lead it nowhere. */
	follow(step: Step): boolean {
		const consequence = this.consequence(step);
		const [point, line] = [consequence?.points[step.name], consequence?.lines[step.name]];
		if (point) this.#points[step.name] = point;
		if (line) this.#lines[step.name] = line;
		if (consequence) this.#moved.add(step.name);
		return consequence !== undefined;
	}

	/**
	 * The rule of a step applied to the learner's own points; undefined where those make it meaningless: it cannot be
	 * worked, or it breaks a rule by which a body is refused.
	 */
	consequence(step: Step): Drafted | undefined {
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
	 * the learner's own, against those; the better counts.
	 */
	check(step: Step, placement: unknown, allowed: Tolerances): DoubleVerdict {
		const against = (draft: Drafted): Verdict => check(this.#method, step.name, draft, placement, allowed);
		const verdict = against(this.#truth);
		if (verdict.answer !== 'wrong' || !this.leansOnOwn(step)) return { verdict, followThrough: false };
		const consequence = this.consequence(step);
		const own = consequence && against(consequence);
		return own?.answer === 'right'
			? { verdict: own, followThrough: true }
			: { verdict, followThrough: false };
	}
}
