import type { Allowance } from '#shared/allowances.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import type { Mm } from '#shared/units.ts';
import type { Step } from './steps/step-rules.ts';

/** The ordered steps of one draft, read and checked. Plain data: it can be sent to a browser as it is. */
export interface Method {
	readonly id: string;
	readonly name: string;
	/** Each step after everything it needs. */
	readonly steps: readonly Step[];
	/** The allowances that the formulas may name. */
	readonly allowances: readonly Allowance[];
	/** The measurements that the formulas do name. */
	readonly measurements: readonly MeasurementKey[];
	/** The names of the lines that make the closed outline, in turn. */
	readonly outline: readonly string[];
	readonly refusals: readonly RefusalRule[];
}

/** A distance that must not fall short, and the two measurements that are at odds where it does. */
export interface RefusalRule {
	readonly way: 'across' | 'down';
	readonly between: readonly [from: string, to: string];
	readonly atLeast: Mm;
	readonly odds: readonly [string, string];
	readonly because: string;
}

/** The step of this name. Throws where the method has none: a fault of ours or of a lesson, not of a learner. */
export const stepNamed = (method: Method, name: string): Step => {
	const step = method.steps.find((each) => each.name === name);
	if (!step) throw new Error(`the method ${method.id} has no step "${name}"`);
	return step;
};
