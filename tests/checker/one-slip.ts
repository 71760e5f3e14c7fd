import type { Body } from '#shared/body.ts';
import type { Placement } from '#shared/placement.ts';
import { pathOfPlacement, placementOfPath, placeOfPoint } from '#checker/placed.ts';
import { judged, type Answer, type Judged, type LearnersWork } from '#checker/work.ts';
import { mapped } from '#checker/missteps/curve-shape.ts';
import { NotDrafted, scopeOf, type Draft, type Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven, workStep } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { pathLength, pathReversed } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';

/** One slip: a step put down so far from where its rule leads. */
export interface Slip {
	readonly step: string;
	readonly across: number;
	readonly down: number;
}

/** A method worked out for a body. */
export interface Sheet {
	readonly method: Method;
	readonly body: Body;
	readonly truth: Drafted;
}

type Placements = Readonly<Record<string, Placement>>;

/** The steps that a learner is asked for. */
export const askedOf = ({ method, truth }: Sheet): readonly Step[] =>
	method.steps.filter((step) => !isGiven(step) && (step.name in truth.points || step.name in truth.lines));

/** Where a hand puts what it means to put at a place. */
export type Hand = (place: SheetPoint) => SheetPoint;
const SURE: Hand = (place) => place;

/** A step drawn by its rule from these marks; undefined where they lead it nowhere. */
const byRule = (
	{ method, body }: Sheet,
	step: Step,
	from: Drafted,
	slip: Slip | undefined,
	hand = SURE
): Placement | undefined => {
	const put: Hand = ({ x, y }) =>
		hand(step.name === slip?.step ? at(x + slip.across, y + slip.down) : at(x, y));
	try {
		const work = workStep(step, scopeOf(method, body, from));
		if (work.kind === 'impossible') return undefined;
		return work.kind === 'point'
			? { kind: 'point', at: placeOfPoint(put(work.point)) }
			: placementOfPath(mapped(work.path, put));
	} catch (error) {
		if (error instanceof NotDrafted) return undefined;
		throw error;
	}
};

/** What is put down by a learner who slips once, or not at all, and draws all that follows truly from what is on the paper. */
export const onPaper = (sheet: Sheet, slip?: Slip, hand?: Hand): Placements => {
	const { method, truth } = sheet;
	const points: Record<string, SheetPoint> = {};
	const lines: Record<string, Draft['lines'][string]> = {};
	const placements: Record<string, Placement> = {};
	for (const step of method.steps.filter(({ name }) => name in truth.points || name in truth.lines)) {
		const { name } = step;
		const placement = byRule(
			sheet,
			step,
			{ points, lines, uses: truth.uses },
			slip,
			isGiven(step) ? undefined : hand
		);
		if (placement?.kind === 'point') points[name] = at(...placement.at);
		if (placement?.kind === 'line') {
			const path = pathOfPlacement(placement);
			lines[name] = { path, length: pathLength(path) };
		}
		if (placement && !isGiven(step)) placements[name] = placement;
	}
	return placements;
};

const judgedAs = (
	sheet: Sheet,
	entries: Readonly<Record<string, Answer>>,
	marks: LearnersWork['marks']
): Judged => judged({ ...sheet, entries, marks });

/** The judge's findings on work that was handed in on paper. */
export const judgedOnPaper = (sheet: Sheet, placements: Readonly<Record<string, unknown>>): Judged => {
	const entries = Object.entries(placements).map(([name, placement]) => [
		name,
		{ placement, checked: true, kept: true }
	]);
	return judgedAs(sheet, Object.fromEntries(entries) as Record<string, Answer>, 'pencilled');
};

/** The judge's findings on the screen, where each step is drawn from what stands in ink, and the slip is kept. */
export const judgedOnScreen = (sheet: Sheet, slip: Slip): Judged => {
	const entries: Record<string, Answer> = {};
	for (const step of askedOf(sheet)) {
		const { own } = judgedAs(sheet, entries, 'inked');
		const placement = byRule(sheet, step, own, slip);
		if (placement) entries[step.name] = { placement, checked: true, kept: true };
	}
	return judgedAs(sheet, entries, 'inked');
};

/** The steps whose answer is *wrong*: the mistakes. */
export const mistakesIn = ({ verdicts }: Judged): readonly string[] =>
	Object.entries(verdicts).flatMap(([name, { verdict }]) => (verdict.answer === 'wrong' ? [name] : []));

/** A line drawn from its end to its start; a point as it is. */
export const drawnBackwards = (placement: Placement): Placement =>
	placement.kind === 'line' ? placementOfPath(pathReversed(pathOfPlacement(placement))) : placement;
