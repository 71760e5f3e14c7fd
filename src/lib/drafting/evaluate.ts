import type { AllowanceValues } from '#shared/allowances.ts';
import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { lastFor } from '#shared/kept.ts';
import { message, type Message } from '#shared/speech/message.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm, type Mm } from '#shared/units.ts';
import { chained, pathLength, type Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { depends, keeps, measured, type Condition } from './conditions.ts';
import type { Formula } from './formula/formula.ts';
import type { Scope } from './formula/value.ts';
import type { Method } from './method.ts';
import { isPointName } from './names.ts';
import { isDrafted, workStep } from './steps/kinds.ts';
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
	/** The drafts that this one leaned on, by the short names of its method. */
	readonly uses: Readonly<Record<string, Draft>>;
	/** What the drafter should look at before cutting, though the body could be drafted. */
	readonly warnings: readonly Refusal[];
}

/** Why a body cannot be drafted: the two measurements at odds (where they are known) and what is wrong between them. */
export interface Refusal {
	/** The name of the condition that is broken, or of the step that cannot be worked. */
	readonly name: string;
	readonly odds: readonly string[];
	/** In the words of the method, or of ours where no step can be worked. */
	readonly because: string | Message;
	/** What the condition looks at. */
	readonly measured?: Mm;
	/** Whether what it looks at is a difference that must keep to one side of nothing: then only by how much it does not is worth telling. */
	readonly differs?: 'too-much' | 'too-little';
}

/** A draft, or the reasons why there is none. */
export type Evaluation =
	| { readonly kind: 'drafted'; readonly draft: Draft }
	| { readonly kind: 'refused'; readonly refusals: readonly Refusal[] };

/** The points and lines that formulas and steps are worked from. */
export interface Drafted extends Pick<Draft, 'points' | 'lines'> {
	readonly uses?: Readonly<Record<string, Drafted>>;
}

/** Points and lines worked so far, while a draft is being made. */
interface Drafting {
	readonly points: Record<string, SheetPoint>;
	readonly lines: Record<string, DraftLine>;
	readonly uses: Record<string, Draft>;
}

/** Something was asked for that is not drafted: a fault of ours, or work that is not finished. */
export class NotDrafted extends Error {
	constructor(what: string, name: string) {
		super(`the ${what} "${name}" is not drafted`);
		this.name = 'NotDrafted';
	}
}

const found = <T>(value: T | undefined, what: string, name: string): T => {
	if (value === undefined) throw new NotDrafted(what, name);
	return value;
};

/** A point or a line of the draft, or of one that it leans on (`back.shoulder`); undefined where it is not drafted. */
const named = <K extends 'points' | 'lines'>(kind: K, name: string, drafted: Drafted) => {
	// Asked some thousand times for one draft: `split` made a list for each.
	const dot = name.indexOf('.');
	const all: Drafted[K] | undefined = dot < 0 ? drafted[kind] : drafted.uses?.[name.slice(0, dot)]?.[kind];
	return all?.[name.slice(dot + 1)] as Drafted[K][string] | undefined;
};

/**
 * What formulas and steps are worked from: a body's measurements, the allowances (the body's own,
 * else `chosen`, else the defaults) and the given points and lines. Asking for a measurement that
 * the body lacks throws BadInput.
 */
export const scopeOf = (
	method: Pick<Method, 'allowances'>,
	body: Body,
	drafted: Drafted,
	chosen: AllowanceValues = {}
): Scope => {
	const allowances: Record<string, number> = {};
	for (const { key, default: usual } of method.allowances)
		allowances[key] = chosen[key] ?? body.allowances[key] ?? usual;
	return {
		measurement: (key) => {
			const value = body.measurements[key];
			if (value === undefined)
				throw new BadInput(key, message('drafts', 'missing', { key, body: body.name }));
			return value;
		},
		allowance: (key) => mm(found(allowances[key], 'allowance', key)),
		share: (key) => found(allowances[key], 'allowance', key),
		point: (name) => found(named('points', name, drafted), 'point', name),
		line: (name) => found(named('lines', name, drafted), 'line', name).path,
		has: (name) => named(isPointName(name) ? 'points' : 'lines', name, drafted) !== undefined
	};
};

/** The conditions that a draft breaks, with what was measured. */
const broken = (conditions: readonly Condition[], scope: Scope): readonly Refusal[] =>
	conditions
		.filter((condition) => depends(condition, scope))
		.map((condition) => ({ condition, length: measured(condition.measure, scope) }))
		.filter(({ condition, length }) => !keeps(length, condition.bounds))
		.map(({ condition: { name, odds, because, bounds }, length }) => ({
			name,
			odds,
			because,
			measured: length,
			...(bounds.atMost === 0 ? { differs: 'too-much' } : {}),
			...(bounds.atLeast === 0 || bounds.moreThan === 0 ? { differs: 'too-little' } : {})
		}));

/** Which refusal rules the given points and lines break: none for a sound draft. Rules whose points are not drafted yet are passed over. */
export const brokenRules = (method: Method, body: Body, drafted: Drafted): readonly Refusal[] => {
	const scope = scopeOf(method, body, drafted);
	return method.refusals.flatMap((rule) => {
		try {
			return broken([rule], scope);
		} catch (error) {
			if (error instanceof NotDrafted) return [];
			throw error;
		}
	});
};

const refused = (...refusals: readonly Refusal[]): Evaluation => ({ kind: 'refused', refusals });

const impossible = (step: Step, why: Message): Evaluation =>
	refused({ name: step.name, odds: 'odds' in step && step.odds ? step.odds : [], because: why });

/** Works the steps in turn; gives the refusal of the first that is impossible. */
const workSteps = (method: Method, drafted: Drafting, scope: Scope): Evaluation | undefined => {
	for (const step of method.steps) {
		if (!isDrafted(step, scope)) continue;
		const work = workStep(step, scope);
		if (work.kind === 'impossible') return impossible(step, work.why);
		if (work.kind === 'point') drafted.points[step.name] = work.point;
		else drafted.lines[step.name] = { path: work.path, length: pathLength(work.path) };
	}
	return undefined;
};

/**
 * Works a method out for a body, with the methods it uses. Gives the draft, or a refusal that names
 * the two measurements at odds, so that a tangled outline is never drawn. Throws BadInput where the
 * body lacks a measurement that the method needs. `known` holds what was worked already for the same
 * body and choices, so that a method used by several is worked once.
 */
export const evaluate = (
	method: Method,
	body: Body,
	chosen: AllowanceValues = {},
	known: Map<Method, Evaluation> = new Map()
): Evaluation => {
	const before = known.get(method);
	if (before) return before;
	const evaluation = worked(method, body, chosen, known);
	known.set(method, evaluation);
	return evaluation;
};

/**
 * A draft that is worked from the same numbers as the last of its method, on the same drafts, is that one: what is made of it need not
 * be made again either, when a slider moves what the method does not read.
 */
const workedAnew = lastFor<Evaluation>();

const worked = (
	method: Method,
	body: Body,
	chosen: AllowanceValues,
	known: Map<Method, Evaluation>
): Evaluation => {
	const drafted: Drafting = { points: {}, lines: {}, uses: {} };
	for (const [alias, used] of Object.entries(method.uses)) {
		const evaluation = evaluate(used, body, chosen, known);
		if (evaluation.kind === 'refused') return evaluation;
		drafted.uses[alias] = evaluation.draft;
	}
	const scope = { ...scopeOf(method, body, drafted, chosen), known: new Map<Formula, number>() };
	const from = [
		...method.measurements.map((key) => body.measurements[key]),
		...method.allowances.map(({ key }) => scope.share(key)),
		...Object.values(drafted.uses)
	];
	return workedAnew(method, from, () => {
		const stopped = workSteps(method, drafted, scope);
		if (stopped) return stopped;
		const refusals = broken(method.refusals, scope);
		if (refusals.length > 0) return refused(...refusals);
		const warnings = broken(method.warnings, scope);
		return { kind: 'drafted', draft: { method: method.id, ...drafted, warnings } };
	});
};

/** What is wrong between the measurements at odds, with what was measured. */
export const reasonWords = ({ because, measured, differs }: Refusal, speech: Speech): string =>
	speech.words.drafts.broken({
		because: typeof because === 'string' ? because : speech.tell(because),
		measured,
		differs
	});

/** A warning in one sentence: the two measurements to look at, and why. */
export const warningWords = (warning: Refusal, speech: Speech): string => {
	const { drafts, nouns } = speech.words;
	return drafts.warning({ odds: warning.odds.map(nouns.measurement), because: reasonWords(warning, speech) });
};

/**
 * A refusal in one sentence: what is at odds, why, and what to do. `noun` is what a measurement is called, by its key,
 * where it is not its usual name.
 */
export const refusalWords = (
	refusal: Refusal,
	speech: Speech,
	noun: (key: string) => Noun = speech.words.nouns.measurement
): string => {
	const { drafts } = speech.words;
	const because = reasonWords(refusal, speech);
	return refusal.odds.length === 2
		? drafts.disagree({ odds: refusal.odds.map(noun), because })
		: drafts.cannot({ because });
};

/**
 * The closed outline of a draft: the method's outline lines end to end, each turned round where it
 * must be; a line that this body does not have is passed over.
 */
export const outlineOf = (method: Method, draft: Draft): Path | undefined => {
	const lines = method.outline.flatMap((name) => {
		const line = draft.lines[name];
		return line ? [line.path] : [];
	});
	const outline = chained(lines);
	if (!outline && lines.length > 0) throw new Error(`the outline of ${method.id} does not join`);
	return outline;
};
