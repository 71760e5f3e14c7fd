import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import type { Body } from '#shared/body.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { scopeOf, type Drafted } from '#drafting/evaluate.ts';
import type { Scope } from '#drafting/formula/value.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { isCorner, isGiven, stepStart, workStep } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { keeps } from '../check-point.ts';
import { START_WEIGHTS } from './priors.ts';

/** A named place on the sheet, and how likely it is started from by mistake. */
export interface NamedPoint {
	readonly name: string;
	readonly place: SheetPoint;
	/** A share of one: all the points of a stand have one together. */
	readonly share: number;
}

/** Where a learner stands who is to place a point: the step, what is on the sheet already, and the right place. */
export interface Stand {
	readonly method: Method;
	readonly step: Step;
	readonly body: Body;
	readonly scope: Scope;
	readonly drafted: Drafted;
	readonly right: SheetPoint;
	/** Where the learner put it; a kind may pass over what leads elsewhere without working it. */
	readonly placed?: SheetPoint;
	/** The points drafted before this step. */
	readonly earlier: readonly NamedPoint[];
}

const earlierPoints = (method: Method, step: Step, drafted: Drafted): readonly NamedPoint[] => {
	const starts = new Set(method.steps.map(stepStart));
	const before = method.steps.slice(0, method.steps.indexOf(stepNamed(method, step.name)));
	const found = before.flatMap((each) => {
		const { name } = each;
		const place = drafted.points[name];
		const usual = starts.has(name) ? START_WEIGHTS.usual : START_WEIGHTS.other;
		return place ? [{ name, place, share: isCorner(each) ? START_WEIGHTS.corner : usual }] : [];
	});
	const whole = found.reduce((sum, { share }) => sum + share, 0);
	return found.map((each) => ({ ...each, share: each.share / whole }));
};

/**
 * The stand of a point step; undefined where the step makes no point for this body, or
 * only what is given. Throws NotDrafted
 * where the step starts from something that `drafted` does not hold, BadInput where a measurement is missing.
 */
export const standOf = (method: Method, step: Step, body: Body, drafted: Drafted): Stand | undefined => {
	const scope = scopeOf(method, body, drafted);
	const work = workStep(step, scope);
	if (work.kind !== 'point' || isGiven(step)) return undefined;
	const earlier = earlierPoints(method, step, drafted);
	return { method, step, body, scope, drafted, right: work.point, earlier };
};

/** The points before this step without some of them. */
export const othersThan = ({ earlier }: Stand, ...names: readonly string[]): readonly NamedPoint[] =>
	earlier.filter(({ name }) => !names.includes(name));

/** Whether a place would pass for right. */
export const passes = ({ right }: Stand, place: SheetPoint): boolean =>
	keeps(distance(place, right), POINT_TOLERANCE);
