import type { Allowance } from '#shared/allowances.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import type { Words } from '#shared/speech/catalogue.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Condition } from './conditions.ts';
import type { Formula } from './formula/formula.ts';
import type { Step } from './steps/step-rules.ts';

/** A draft that leans on another, and its rules for the steps that both have: what may be followed in the wrong one. */
export interface Twin {
	readonly id: string;
	readonly called: Noun;
	readonly rules: readonly { readonly step: string; readonly formula: Formula }[];
}

/** The ordered steps of one draft, read and checked. Plain data: it can be sent to a browser as it is. */
export interface Method {
	readonly id: string;
	readonly name: string;
	/** What other drafts call it: "the back", in "the back's shoulder". */
	readonly called: Noun;
	/** Each step after everything it needs. */
	readonly steps: readonly Step[];
	/** The allowances that the formulas may name. */
	readonly allowances: readonly Allowance[];
	/** The measurements that the formulas do name. */
	readonly measurements: readonly MeasurementKey[];
	/** The names of the lines that make the closed outline, in turn. */
	readonly outline: readonly string[];
	/** The line of the outline on which the draft is mirrored, where it is half of a piece. */
	readonly fold: string | undefined;
	/** A body that breaks one of these cannot be drafted. */
	readonly refusals: readonly Condition[];
	/** A body that breaks one of these is drafted with a warning. */
	readonly warnings: readonly Condition[];
	/** Other methods whose lines the formulas name, by the short name that they go by here. */
	readonly uses: Readonly<Record<string, Method>>;
	/** What the drafts that lean on this one do where it does otherwise. */
	readonly twins: readonly Twin[];
	/** Whether exercises ask for its rules. */
	readonly practised: boolean;
}

/** The step of this name. Throws where the method has none: a fault of ours or of a lesson, not of a learner. */
export const stepNamed = (method: Method, name: string): Step => {
	const step = method.steps.find((each) => each.name === name);
	if (!step) throw new Error(`the method ${method.id} has no step "${name}"`);
	return step;
};

/** What a point or line is called: "the shoulder", or of a method that this one uses "the back's shoulder". */
export const nounOf = (method: Method, name: string, nouns: Words['nouns']): Noun => {
	const [alias = '', own] = name.split('.');
	if (own === undefined) return method.steps.find((each) => each.name === name)?.label ?? { name };
	const used = method.uses[alias];
	return used ? nouns.partOf(nounOf(used, own, nouns), used.called) : { name };
};

/** What an allowance is called, by its key. */
export const allowanceOf = (method: Method, key: string, nouns: Words['nouns']): Noun =>
	nouns.allowance(method.allowances.find((each) => each.key === key) ?? { key });
