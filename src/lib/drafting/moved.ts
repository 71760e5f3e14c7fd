import type { Drafted } from './evaluate.ts';
import type { Method } from './method.ts';
import { stepLeaves, stepNeeds, stepPartOf, stepPasses } from './steps/kinds.ts';
import type { Step, StepOf } from './steps/step-rules.ts';

/** What motions take along, and where that leaves what a draft had before. */

const isCarried = (step: Step): step is StepOf<'carried'> => step.kind === 'carried';

/** What a motion carries along with its own point, in the method's order; nothing for a step that moves nothing. */
export const carriedWith = (method: Method, name: string): readonly StepOf<'carried'>[] =>
	method.steps.filter(isCarried).filter((step) => step.with === name);

/** Everything that a step moves, by the names that it has before: its own point and what goes along with that. */
export const movedIn = (method: Method, step: Step): readonly string[] =>
	'move' in step ? [step.move, ...carriedWith(method, step.name).map(({ of }) => of)] : [];

/** The name that something had before anything was moved: `F` for `F1`, which was `F2`, which was `F`. */
export const nameAtRest = (method: Method, name: string): string => {
	const step = method.steps.find((each) => each.name === name);
	return step && isCarried(step) ? nameAtRest(method, step.of) : name;
};

/** Where a name went in one motion: the name that it has after that, or the same where it was left. */
const afterMotion = (method: Method, motion: string, name: string): string => {
	const mover = method.steps.find((each) => each.name === motion);
	if (mover && 'move' in mover && mover.move === name) return motion;
	return carriedWith(method, motion).find(({ of }) => of === name)?.name ?? name;
};

/** The points that a drawn line, or the line that it is a moved copy of, runs through. */
const pointsOn = (method: Method, step: Step | undefined): readonly string[] => {
	if (!step) return [];
	if (!isCarried(step)) return stepPasses(step);
	const before = method.steps.find(({ name }) => name === step.of);
	return pointsOn(method, before).map((point) => afterMotion(method, step.with, point));
};

/** The points through which the lines run that a method draws itself. */
export const pointsDrawnOn = (method: Method, { lines }: Drafted): ReadonlySet<string> =>
	new Set(method.steps.flatMap((step) => (step.name in lines ? pointsOn(method, step) : [])));

/**
 * The names of which a draft holds a copy that was moved, and of lines of which a part was. A line of which a part is an
 * edge of the outline was only laid down once more: it stays, with its points.
 */
const copiedAway = (method: Method, drafted: readonly Step[]): Set<string> => {
	const away = new Set(drafted.flatMap((step) => stepLeaves(step) ?? []));
	for (const step of drafted) {
		const whole = stepPartOf(step);
		if (whole === undefined) continue;
		if (away.has(step.name)) away.add(whole);
		else if (method.outline.includes(step.name)) {
			const line = drafted.find(({ name }) => name === whole);
			for (const name of [whole, ...pointsOn(method, line)]) away.delete(name);
		}
	}
	return away;
};

/**
 * What a draft has moved away: the names of points and lines that have a newer copy, of copies of which a part was
 * moved on, and of what rests on nothing but those. A point stays where a line that stays runs through it, as the
 * inner edge of a slash does.
 */
export const movedAway = (method: Method, { points, lines }: Drafted): ReadonlySet<string> => {
	const drafted = method.steps.filter(({ name }) => name in points || name in lines);
	const away = copiedAway(method, drafted);
	if (away.size === 0) return away;
	for (const step of drafted) {
		const needs = stepNeeds(step);
		const isTorn = isCarried(step) && pointsOn(method, step).some((point) => away.has(point));
		if (isTorn || (needs.length > 0 && needs.every((need) => away.has(need)))) away.add(step.name);
	}
	for (const step of drafted) {
		if (!away.has(step.name)) for (const point of pointsOn(method, step)) away.delete(point);
	}
	return away;
};
