import { z } from 'zod';
import { BadInput, shown } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { message } from '#shared/speech/message.ts';
import type { Placement } from '#shared/placement.ts';
import type { Unit } from '#shared/units.ts';
import { asHandedIn } from '#checker/check-submission.ts';
import type { Own } from '#checker/own-draft.ts';
import { judged } from '#checker/work.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { readSum } from '#drafting/formula/sum.ts';
import type { Method } from '#drafting/method.ts';
import { isBorrowed } from '#drafting/names.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { stepRuler } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { moved, type SheetPoint } from '#geometry/point.ts';

const placeSchema = z.tuple([z.number(), z.number()]);
/** A place that was measured, with its own error. */
const measuredSchema = z.strictObject({ at: placeSchema, error: z.number() });
const sumSchema = z.strictObject({
	typed: z.union([z.string(), z.number()]).transform(String),
	from: z.string().optional(),
	go: z.enum(['up', 'down', 'across', 'in']).optional()
});

/** A typed distance as a placement: from the step's own start and in its own direction where none is named. */
const typedPlacement = (
	step: Step,
	{ typed, from, go }: z.infer<typeof sumSchema>,
	placeOf: (name: string) => SheetPoint | undefined,
	unit: Unit,
	place: string
): Placement | BadInput => {
	const ruler = stepRuler(step);
	const [start, way] = [from ?? (ruler?.go ? ruler.from : ''), go ?? ruler?.go];
	const origin = placeOf(start);
	if (!origin || !way) throw new BadInput(place, message('command', 'typedNeeds'));
	try {
		const { x, y } = moved(origin, COMPASS[way], readSum(typed, unit).value);
		return { kind: 'point', at: [x, y], typed: { form: 'distance', sum: typed, from: start, go: way, unit } };
	} catch (problem) {
		if (problem instanceof BadInput) return problem;
		throw problem;
	}
};

/** Placements to be checked, and why some of what was typed cannot be one, by step. */
export interface ReadPlacements {
	readonly placements: Readonly<Record<string, unknown>>;
	readonly unreadable: Readonly<Record<string, BadInput>>;
	/** The drafts that the method leans on, where anything of them was handed in too. */
	readonly uses: Readonly<Record<string, Own>>;
}

type Named = Readonly<Record<string, unknown>>;

const namedSteps = (input: unknown, { steps, uses }: Method, place: string): Named => {
	const record = z.record(z.string(), z.unknown()).safeParse(input);
	if (!record.success)
		throw new BadInput(`${place}placements`, message('command', 'placementsShape', { seen: shown(input) }));
	const names = steps.map(({ name }) => name);
	for (const name of Object.keys(record.data)) {
		if (!names.includes(name) && !((name.split('.')[0] ?? '') in uses && isBorrowed(name)))
			throw new BadInput(place + name, message('input', 'noSuchStep', { near: nearestName(name, names) }));
	}
	return record.data;
};

/** What was handed in of one of the drafts that a method leans on: `{"back.K":[90,0]}`. */
const handedInOf = (record: Named, alias: string): Named =>
	Object.fromEntries(
		Object.entries(record).flatMap(([name, value]) =>
			name.startsWith(`${alias}.`) ? [[name.slice(alias.length + 1), value]] : []
		)
	);

const readUses = (
	record: Named,
	{ uses }: Method,
	body: Body,
	truth: Draft,
	place: string
): ReadPlacements['uses'] => {
	const read = Object.entries(uses).flatMap(([alias, method]) => {
		const [own, draft] = [handedInOf(record, alias), truth.uses[alias]];
		if (!draft || Object.keys(own).length === 0) return [];
		const { placements, uses } = readPlacements(own, method, body, draft, `${place}${alias}.`);
		return [[alias, judged(asHandedIn(method, body, draft, placements, undefined, uses))] as const];
	});
	return Object.fromEntries(read);
};

/**
 * Reads placements as a file holds them: `{"A":[0,222]}` in millimetres, `{"A":{"typed":"38.4/2+3"}}` in
 * the body's unit, `{"A":{"at":[0,222],"error":1}}` for what was measured, or a whole placement (`{"kind":"line",...}`). A typed distance starts from the
 * learner's own earlier points; a sum that cannot be read spoils its own step and no other. Steps of a draft that this
 * one leans on go by its short name for that: `{"back.K":[90,0]}`. Throws
 * BadInput, naming the step and the value.
 */
export const readPlacements = (
	input: unknown,
	method: Method,
	body: Body,
	truth: Draft,
	place: string
): ReadPlacements => {
	const record = namedSteps(input, method, place);
	const uses = readUses(record, method, body, truth, place);
	const placements: Record<string, unknown> = {};
	const unreadable: Record<string, BadInput> = {};
	/** Where a point stands for this learner: as it was put, or following from what was. */
	const placeOf = (name: string): SheetPoint | undefined =>
		judged(asHandedIn(method, body, truth, placements, undefined, uses)).own.points[name];
	for (const step of method.steps) {
		const { name } = step;
		const value = record[name];
		if (value === undefined || value === null) continue;
		const [at, sum] = [placeSchema.safeParse(value).data, sumSchema.safeParse(value).data];
		const read = sum && typedPlacement(step, sum, placeOf, body.unit, place + name);
		if (read instanceof BadInput) unreadable[name] = read;
		// What is no placement at all is left to the checker: for one step it is not valid, and the others are judged.
		const measured = at ? { at } : measuredSchema.safeParse(value).data;
		placements[name] = measured ? { kind: 'point', ...measured } : (read ?? value);
	}
	return { placements, unreadable, uses };
};
