import type { AllowanceValues } from '#shared/allowances.ts';
import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { measurementOf } from '#shared/measurements.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, printLength, type Mm } from '#shared/units.ts';
import { joined, pathEnd, pathLength, pathReversed, pathStart, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import type { Scope } from './formula/value.ts';
import type { Method, RefusalRule } from './method.ts';
import { workStep } from './steps/kinds.ts';
import type { Step } from './steps/step-rules.ts';

/** A line of a draft, with its length along the line. */
export interface DraftLine {
	readonly path: Path;
	readonly length: Mm;
}

/** A method worked out for a body. */
export interface Draft {
	readonly method: string;
	readonly points: Readonly<Record<string, SheetPoint>>;
	readonly lines: Readonly<Record<string, DraftLine>>;
}

/** Why a body cannot be drafted: the two measurements at odds (where they are known) and what is wrong between them. */
export interface Refusal {
	readonly odds: readonly string[];
	readonly because: string;
}

/** A draft, or the reasons why there is none. */
export type Evaluation =
	| { readonly kind: 'drafted'; readonly draft: Draft }
	| { readonly kind: 'refused'; readonly refusals: readonly Refusal[] };

/** Points and lines worked so far, while a draft is being made. */
interface Drafted {
	readonly points: Record<string, SheetPoint>;
	readonly lines: Record<string, DraftLine>;
}

const found = <T>(value: T | undefined, what: string, name: string): T => {
	if (value === undefined) throw new Error(`the ${what} "${name}" is not drafted yet`);
	return value;
};

/**
 * What formulas and steps are worked from: a body's measurements, the allowances (the body's own,
 * else `chosen`, else the defaults) and the given points and lines. Asking for a measurement that
 * the body lacks throws BadInput.
 */
export const scopeOf = (
	method: Method,
	body: Body,
	drafted: Pick<Draft, 'points' | 'lines'>,
	chosen: AllowanceValues = {}
): Scope => {
	const allowances: Record<string, Mm> = {};
	for (const { key, default: usual } of method.allowances)
		allowances[key] = chosen[key] ?? body.allowances[key] ?? usual;
	return {
		measurement: (key) => {
			const value = body.measurements[key];
			if (value === undefined)
				throw new BadInput(key, `${measurementOf(key).words} of ${body.name} is missing`);
			return value;
		},
		allowance: (key) => found(allowances[key], 'allowance', key),
		point: (name) => found(drafted.points[name], 'point', name),
		line: (name) => found(drafted.lines[name], 'line', name).path
	};
};

const broken = (
	{ way, between, atLeast, odds, because }: RefusalRule,
	points: Draft['points']
): Refusal | undefined => {
	const [from, to] = between.map((name) => found(points[name], 'point', name));
	const gap = mm(way === 'across' ? (to?.x ?? 0) - (from?.x ?? 0) : (to?.y ?? 0) - (from?.y ?? 0));
	if (gap >= atLeast - SAME_PLACE) return undefined;
	return { odds, because: `${because} (here it is ${printLength(gap, 'cm')})` };
};

const refused = (step: Step, why: string): Evaluation => ({
	kind: 'refused',
	refusals: [{ odds: 'odds' in step && step.odds ? step.odds : [], because: why }]
});

/**
 * Works a method out for a body. Gives the draft, or a refusal that names the two measurements at
 * odds, so that a tangled outline is never drawn. Throws BadInput where the body lacks a measurement
 * that the method needs.
 */
export const evaluate = (method: Method, body: Body, chosen: AllowanceValues = {}): Evaluation => {
	const drafted: Drafted = { points: {}, lines: {} };
	const scope = scopeOf(method, body, drafted, chosen);
	for (const step of method.steps) {
		const work = workStep(step, scope);
		if (work.kind === 'impossible') return refused(step, work.why);
		if (work.kind === 'point') drafted.points[step.name] = work.point;
		else drafted.lines[step.name] = { path: work.path, length: pathLength(work.path) };
	}
	const refusals = method.refusals.flatMap((rule) => broken(rule, drafted.points) ?? []);
	if (refusals.length > 0) return { kind: 'refused', refusals };
	return { kind: 'drafted', draft: { method: method.id, ...drafted } };
};

/**
 * A refusal in one sentence: what is at odds, why, and what to do. `speak` says a measurement's name,
 * by its key where nothing else is asked.
 */
export const refusalWords = (
	{ odds, because }: Refusal,
	speak: (key: string) => string = (key) => key
): string =>
	odds.length === 2
		? `${odds.map(speak).join(' and ')} disagree: ${because}; measure both again`
		: `this body cannot be drafted: ${because}`;

/** The closed outline of a draft: the method's outline lines end to end, each turned round where it must be. */
export const outlineOf = (method: Method, draft: Draft): Path | undefined => {
	const paths = method.outline.map((name) => found(draft.lines[name], 'line', name).path);
	return paths.reduce<Path | undefined>((outline, path) => {
		if (!outline) return path;
		const end = pathEnd(outline);
		const nearer = distance(end, pathStart(path)) <= distance(end, pathEnd(path)) ? path : pathReversed(path);
		return joined(outline, nearer, SAME_PLACE);
	}, undefined);
};
