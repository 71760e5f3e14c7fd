import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { isMeasurementKey } from '#shared/measurements.ts';
import { printLength } from '#shared/units.ts';
import { evaluate, refusalWords, type Draft, type Evaluation } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';

/** Throws BadInput where the body lacks a measurement that the method needs. */
const checkComplete = (method: Method, body: Body, place: string): void => {
	const missing = method.measurements.filter((key) => body.measurements[key] === undefined);
	if (missing.length > 0)
		throw new BadInput(`${place}: ${missing.join(', ')}`, `missing; ${method.id} needs it`);
};

/** Each failing rule in a sentence that names both measurements and their values, as the body's file writes them. */
export const reasons = (evaluation: Extract<Evaluation, { kind: 'refused' }>, body: Body): string => {
	const valued = (key: string): string => {
		const length = isMeasurementKey(key) ? body.measurements[key] : undefined;
		return length === undefined ? key : `${key} (${printLength(length, body.unit)})`;
	};
	return evaluation.refusals.map((refusal) => refusalWords(refusal, valued)).join('; ');
};

/** The draft of a body. Throws BadInput at `place` where it cannot be drafted, with every reason. */
export const draftOrRefuse = (method: Method, body: Body, place: string): Draft => {
	checkComplete(method, body, place);
	const evaluation = evaluate(method, body);
	if (evaluation.kind === 'refused') throw new BadInput(place, reasons(evaluation, body));
	return evaluation.draft;
};
