import type { Body, Measurements } from '#shared/body.ts';
import { mm, type Mm } from '#shared/units.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { birdOf } from './bodies/birds.ts';
import { drawnMeasurements } from './bodies/survey.ts';
import { chanceOf } from './chance.ts';

/** A tape is read to the nearest half centimetre. */
const TAPE_STEP: Mm = mm(5);

/** Draws after which something must be wrong with the method: of the survey's own bodies fewer than one in ten is refused. */
const MOST_DRAWS = 200;

const asRead = (centimetres: number): Mm => mm(Math.round((centimetres * 10) / TAPE_STEP) * TAPE_STEP);

/** One body drawn from the survey's means and covariances: the `draw`th of this seed, whether or not it can be drafted. */
export const drawnBody = (seed: number, draw: number): Body => {
	const drawn = Object.entries(drawnMeasurements(chanceOf(seed, 'body', draw)));
	const measurements: Measurements = Object.fromEntries(drawn.map(([key, value]) => [key, asRead(value)]));
	return { name: birdOf(seed), unit: 'cm', measurements, allowances: {} };
};

/** A generated body, and the method worked out for it. */
export interface DraftedBody {
	readonly body: Body;
	readonly draft: Draft;
}

/** The bodies of a seed that a method can be drafted for, one draw after the other; the rest are refused and drawn again. */
export function* draftedBodies(seed: number, method: Method): Generator<DraftedBody, undefined> {
	for (let draw = 0; draw < MOST_DRAWS; draw++) {
		const body = drawnBody(seed, draw);
		const evaluation = evaluate(method, body);
		if (evaluation.kind === 'drafted') yield { body, draft: evaluation.draft };
	}
}

/**
 * An invented body of this seed that the method can be drafted for: the same seed gives the same body.
 * It is drawn from the means and covariances of the survey (never a real woman's row), each measurement
 * rounded as a tape is read. Throws where no draw can be drafted: a fault of the method.
 */
export const generatedBody = (seed: number, method: Method): Body => {
	const first = draftedBodies(seed, method).next().value;
	if (first) return first.body;
	throw new Error(`none of ${MOST_DRAWS} drawn bodies can be drafted by ${method.id}`);
};
