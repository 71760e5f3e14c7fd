import { z } from 'zod';
import { BadInput, ruleWords, shown } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import type { Placement } from '#shared/placement.ts';
import type { Unit } from '#shared/units.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { readSum } from '#drafting/formula/sum.ts';
import type { Method } from '#drafting/method.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { moved, type SheetPoint } from '#geometry/point.ts';

const writtenSchema = z.union([
	z.tuple([z.number(), z.number()]),
	z.strictObject({
		typed: z.union([z.string(), z.number()]).transform(String),
		from: z.string().optional(),
		go: z.enum(['up', 'down', 'across', 'in']).optional()
	}),
	z.looseObject({ kind: z.enum(['point', 'line']) })
]);

/** A typed distance as a placement: from the step's own start and in its own direction where none is named. */
const typedPlacement = (
	step: Step,
	{ typed, from, go }: { typed: string; from?: string | undefined; go?: keyof typeof COMPASS | undefined },
	known: Readonly<Record<string, SheetPoint>>,
	unit: Unit,
	place: string
): Placement | Unreadable => {
	const [start, way] = [
		from ?? (step.kind === 'mark' ? step.from : ''),
		go ?? (step.kind === 'mark' ? step.go : undefined)
	];
	const origin = known[start];
	if (!origin || !way)
		throw new BadInput(
			place,
			'a typed distance needs "from" (a point that is drafted) and "go" (up, down, across or in) here'
		);
	try {
		const { x, y } = moved(origin, COMPASS[way], readSum(typed, unit).value);
		return { kind: 'point', at: [x, y], typed: { form: 'distance', sum: typed, from: start, go: way, unit } };
	} catch (problem) {
		if (problem instanceof BadInput) return { unreadable: ruleWords(problem, englishIn('cm')) };
		throw problem;
	}
};

/** What a learner typed that is no sum. */
interface Unreadable {
	readonly unreadable: string;
}

/** Placements to be checked, and why some of what was typed cannot be one, by step. */
export interface ReadPlacements {
	readonly placements: Readonly<Record<string, unknown>>;
	readonly unreadable: Readonly<Record<string, string>>;
}

/**
 * Reads placements as a file holds them: `{"A":[0,222]}` in millimetres, `{"A":{"typed":"38.4/2+3"}}` in
 * the body's unit, or a whole placement (`{"kind":"line",...}`). A typed distance starts from the
 * learner's own earlier points; a sum that cannot be read spoils its own step and no other. Throws
 * BadInput, naming the step and the value.
 */
export const readPlacements = (
	input: unknown,
	method: Method,
	truth: Draft,
	unit: Unit,
	place: string
): ReadPlacements => {
	const record = z.record(z.string(), z.unknown()).safeParse(input);
	if (!record.success)
		throw new BadInput(`${place}placements`, `this is not {"A":[across,down],...}: ${shown(input)}`);
	const names = method.steps.map(({ name }) => name);
	for (const name of Object.keys(record.data)) {
		if (!names.includes(name))
			throw new BadInput(place + name, `there is no such step${didYouMean(name, names)}`);
	}
	const own: Record<string, SheetPoint> = { ...truth.points };
	const placements: Record<string, unknown> = {};
	const unreadable: Record<string, string> = {};
	for (const step of method.steps) {
		const value = record.data[step.name];
		if (value === undefined || value === null) continue;
		const written = writtenSchema.safeParse(value);
		// What is no placement at all is left to the checker: for one step it is not valid, and the others are judged.
		if (!written.success) placements[step.name] = value;
		else if (Array.isArray(written.data)) placements[step.name] = { kind: 'point', at: written.data };
		else if ('typed' in written.data && typeof written.data.typed === 'string')
			placements[step.name] = typedPlacement(
				step,
				written.data as { typed: string },
				own,
				unit,
				place + step.name
			);
		else placements[step.name] = value;
		const placed = placements[step.name] as { at?: readonly [number, number] } & Partial<Unreadable>;
		if (placed.unreadable !== undefined) unreadable[step.name] = placed.unreadable;
		if (placed.at)
			own[step.name] = { x: placed.at[0] as SheetPoint['x'], y: placed.at[1] as SheetPoint['y'] };
	}
	return { placements, unreadable };
};
