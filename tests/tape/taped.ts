import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody, type Body } from '#shared/body.ts';
import { mm, type Mm } from '#shared/units.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import type { Method } from '#drafting/method.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { tapedBy, type Taped } from '#tape/by-tape.ts';
import { planOf, type Plan } from '#tape/plan.ts';
import type { Tape } from '#tape/tapes.ts';
import { draftOf } from '../drafting/small-method.ts';

/** A paper draft to be measured: where its points truly lie, and what is measured of it. */
export interface Paper {
	readonly plan: Plan;
	readonly given: ReadonlySet<string>;
	readonly points: Readonly<Record<string, SheetPoint>>;
}

export const HERON: Body = DEMO_BODIES[0]?.body ?? readBody({});

/** A method drafted on paper without a fault, but for points that are put elsewhere. */
export const paperOf = (
	method: Method,
	body: Body = HERON,
	put: Readonly<Record<string, SheetPoint>> = {}
): Paper => {
	const draft = draftOf(method, body);
	return {
		plan: planOf(method, draft),
		given: new Set(method.steps.filter(isGiven).map(({ name }) => name)),
		points: { ...draft.points, ...put }
	};
};

/** The place of a point. Throws where there is none. */
export const placeOf = (points: Readonly<Record<string, SheetPoint>>, name: string): SheetPoint => {
	const place = points[name];
	if (!place) throw new Error(`there is no ${name}`);
	return place;
};

/** What a tape reads, each off by what `noise` gives. */
export const readingsOf = ({ plan, points }: Paper, noise: () => number = () => 0): readonly Mm[] =>
	plan.takings.map(({ from, to }) => mm(distance(placeOf(points, from), placeOf(points, to)) + noise()));

/** What is found by what the tape said, each so many times. */
export const taped = (
	{ plan, given }: Paper,
	read: readonly (Mm | undefined)[],
	tape: Tape = 'tape',
	times = 1
): Taped =>
	tapedBy(
		plan,
		read.map((length) => (length === undefined ? undefined : { length, times })),
		given,
		tape
	);

/** How far each point that was found lies from where it truly lies, and how far it may by its own error. */
export const strays = (
	{ points }: Paper,
	{ measured }: Taped
): readonly (readonly [off: number, error: number])[] =>
	Object.entries(measured).flatMap(([name, placement]) =>
		placement.kind === 'point'
			? [[distance(at(...placement.at), placeOf(points, name)), placement.error ?? 0] as const]
			: []
	);

/** Numbers between 0 and 1, the same for the same seed: Park and Miller's "minimal standard" (1988). */
export const drawnBy = (seed: number): (() => number) => {
	let state = seed;
	return () => {
		state = (state * 48271) % 2147483647;
		return state / 2147483647;
	};
};

/** Errors of a standard deviation of 1, by Box and Muller's way (1958). */
export const normalBy = (seed: number): (() => number) => {
	const draw = drawnBy(seed);
	return () => Math.sqrt(-2 * Math.log(draw())) * Math.cos(2 * Math.PI * draw());
};
