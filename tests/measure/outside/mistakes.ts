import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import { evaluate, NotDrafted, type Draft } from '#drafting/evaluate.ts';
import type { Scope } from '#drafting/formula/value.ts';
import type { Method } from '#drafting/method.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { generatedBody } from '#practice/generate-body.ts';
import { frontBlock, methodOf } from '../../drafting/lesson-method.ts';
import { readLead, scopeFor, type How } from './place.ts';

/** Bodies beside the demo bodies, drawn by seed from the survey's means and covariances. */
const [DRAWN, SEED] = [9, 4711];

/** A mistake of the list. */
export interface Mistake {
	readonly method: Method;
	readonly step: string;
	/** In a teacher's words. */
	readonly what: string;
	/** Half of the list was held back while the wrong rules were made. */
	readonly heldBack: boolean;
	readonly how: How;
	readonly lead: (scope: Scope) => SheetPoint | undefined;
}

/** A mistake made for a body. */
export interface Made extends Mistake {
	readonly body: Body;
	readonly draft: Draft;
	readonly right: SheetPoint;
	readonly place: SheetPoint;
	/** How far the nearest other mistake of the list at the step leads from it, in millimetres. */
	readonly apart: number;
}

type Listed = Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, How>>>>>>;

/** By the sum of its letters, so that a mistake stays in its half when others are added. */
const isHeldBack = (text: string): boolean =>
	Array.from(text).reduce((sum, sign, i) => sum + sign.charCodeAt(0) * (i + 1), 0) % 2 === 1;

const listed = (name: string): readonly Mistake[] => {
	const all = parse(readFileSync(new URL(`${name}.yaml`, import.meta.url), 'utf8')) as Listed;
	return Object.entries(all).flatMap(([id, steps]) => {
		const method = methodOf(id);
		return Object.entries(steps).flatMap(([step, mistakes]) =>
			Object.entries(mistakes).map(([what, how]) => ({
				...{ method, step, what, how, heldBack: isHeldBack(`${id} ${step} ${what}`) },
				lead: readLead(method, step, how)
			}))
		);
	});
};

/** Every mistake of the list. */
export const mistakes = (): readonly Mistake[] => [...listed('blocks'), ...listed('garments')];

/** The demo bodies and as many more as make sixteen. */
export const measuredBodies = (): readonly Body[] => [
	...DEMO_BODIES.map(({ body }) => body),
	...Array.from({ length: DRAWN }, (_, i) => generatedBody(SEED + i, frontBlock()))
];

const leadOf = ({ lead }: Mistake, scope: Scope): SheetPoint | undefined => {
	try {
		return lead(scope);
	} catch (error) {
		if (error instanceof NotDrafted) return undefined;
		throw error;
	}
};

/** The mistakes of one step for one body that can be seen: each leads more than a tolerance from the right place. */
const madeAt = (
	step: string,
	own: readonly Mistake[],
	method: Method,
	body: Body,
	draft: Draft
): readonly Made[] => {
	const [right, scope] = [draft.points[step], scopeFor(method, body, draft)];
	if (!right) return [];
	const places = own.flatMap((each) => {
		const place = leadOf(each, scope);
		return place && distance(place, right) > POINT_TOLERANCE ? [{ ...each, place }] : [];
	});
	return places.map((each) => {
		const others = places.filter((other) => other !== each).map(({ place }) => distance(place, each.place));
		return { ...each, body, draft, right, apart: Math.min(Infinity, ...others) };
	});
};

/** Every mistake for every body whose draft has its step. */
export const made = (all: readonly Mistake[], bodies: readonly Body[]): readonly Made[] => {
	const methods = [...new Set(all.map(({ method }) => method))];
	return methods.flatMap((method) =>
		bodies.flatMap((body) => {
			const evaluation = evaluate(method, body);
			if (evaluation.kind === 'refused') return [];
			const own = all.filter((each) => each.method === method);
			const steps = [...new Set(own.map(({ step }) => step))];
			return steps.flatMap((step) =>
				madeAt(
					step,
					own.filter((each) => each.step === step),
					method,
					body,
					evaluation.draft
				)
			);
		})
	);
};
