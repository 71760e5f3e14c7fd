import { readBody, type Body } from '#shared/body.ts';
import type { MeasurementKey, Supposed } from '#shared/measurements.ts';
import { judge } from '#shared/plausible/doubts.ts';
import { expected, surveyedOf, type Expected } from '#shared/plausible/expect.ts';
import type { People } from '#shared/plausible/people.ts';
import { mm, printNumber, type Mm, type Unit } from '#shared/units.ts';
import { toKeep, withTyped } from '#ui/keeping/in-unit.ts';
import type { OwnBodyFile } from '#ui/keeping/schemas.ts';

/** How much higher the side neck point lies than the nape. Common practice, no source; shared/survey/README.md says the same. */
const SIDE_NECK_OVER_NAPE = mm(20);
/** From fewer measurements nothing is estimated: it would be the survey's mean. */
const ENOUGH = 3;

/** What may stand for a measurement that was not taken: worked out from another, or estimated from all; undefined where nothing can. */
export type Standing =
	{ readonly how: 'workedOut'; readonly value: Mm } | ({ readonly how: 'estimated' } & Expected);

/** What may stand for a measurement of a body that is seen in `unit`; `choice` is whose survey it is compared with. */
export const standingFor = (
	body: Body,
	key: MeasurementKey,
	unit: Unit,
	choice: People | undefined
): Standing | undefined => {
	const { trusted, people } = judge(body, unit, choice);
	const nape = body.measurements.napeToWaist;
	if (key === 'backLength' && nape !== undefined && !body.supposed?.napeToWaist)
		return { how: 'workedOut', value: mm(nape + SIDE_NECK_OVER_NAPE) };
	const others = { ...trusted, [key]: undefined };
	if (surveyedOf(others).length < ENOUGH) return undefined;
	const found = expected(people, key, others);
	return found && { how: 'estimated', ...found };
};

/** A body's file with what stands for a measurement, marked as not taken. */
export const withStanding = (
	file: OwnBodyFile,
	key: MeasurementKey,
	{ how, value }: { how: Supposed; value: Mm }
): OwnBodyFile => {
	const kept = withTyped(file, key, printNumber(mm(Math.round(value)), file.unit), file.unit);
	return { ...kept, supposed: { ...kept.supposed, [key]: how } };
};

/** A body's file with everything that was not taken made anew of what was: it changes with it. */
export const refreshed = (file: OwnBodyFile, choice: People | undefined): OwnBodyFile =>
	(Object.keys(file.supposed ?? {}) as MeasurementKey[]).reduce((made, key) => {
		const standing = standingFor(readBody(made), key, made.unit, choice);
		return standing ? withStanding(made, key, standing) : made;
	}, file);

/** What the tape read each time, in millimetres. */
export const readingsOf = (file: OwnBodyFile, key: MeasurementKey): readonly Mm[] =>
	readBody(file).readings?.[key] ?? [];

/** A body's file with a second reading of a measurement, typed in the page's unit, and their mean as the measurement; emptied, with the first alone. */
export const withSecond = (
	file: OwnBodyFile,
	key: MeasurementKey,
	typed: string,
	page: Unit
): OwnBodyFile => {
	const [first] = file.readings?.[key] ?? [];
	const one = first ?? (file[key] as string | number | undefined);
	if (one === undefined) return file;
	if (typed === '') return withTyped(file, key, String(one), file.unit);
	const two = toKeep(typed, page, file.unit);
	const [a = mm(0), b = mm(0)] = readBody({ ...file, readings: { [key]: [one, two] } }).readings?.[key] ?? [];
	const kept = withTyped(file, key, printNumber(mm((a + b) / 2), file.unit), file.unit);
	return { ...kept, readings: { ...kept.readings, [key]: [one, two] } };
};

/** Girths round the body and round a limb, and lengths, may be read so far apart (ISO 20685's allowed errors, from memory). */
const LARGE: ReadonlySet<MeasurementKey> = new Set(['bust', 'waist', 'hip', 'upperBust', 'underBust']);
const SMALL: ReadonlySet<MeasurementKey> = new Set(['neck', 'upperArm', 'wrist']);
export const allowedApart = (key: MeasurementKey): Mm => mm(LARGE.has(key) ? 9 : SMALL.has(key) ? 4 : 5);
