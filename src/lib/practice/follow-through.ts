import type { Body } from '#shared/body.ts';
import { placeOfPoint } from '#checker/placed.ts';
import { judged } from '#checker/work.ts';
import { brokenRules, type Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { SheetPoint } from '#geometry/point.ts';

/**
 * A draft in which one point was put at `place`, and every later step was done rightly from there.
 * Undefined where that cannot be drafted, or makes a draft that the method refuses.
 */
export const followedThrough = (
	method: Method,
	body: Body,
	draft: Drafted,
	stepName: string,
	place: SheetPoint
): Drafted | undefined => {
	const placement = { kind: 'point', at: placeOfPoint(place) };
	const entries = { [stepName]: { placement, checked: true, kept: true } };
	const { own, stuck } = judged({ method, body, truth: draft, entries, marks: 'pencilled' });
	return stuck.length > 0 || brokenRules(method, body, own).length > 0 ? undefined : own;
};
