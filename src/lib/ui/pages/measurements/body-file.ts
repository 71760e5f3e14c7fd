import { BadInput } from '#shared/bad-input.ts';
import { bodyFileSchema, readBody, readMeasurement } from '#shared/body.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { PEOPLE } from '#shared/plausible/people.ts';
import { oneOf, parsed } from '#shared/reading.ts';
import { z } from '#shared/shape.ts';
import { message } from '#shared/speech/message.ts';
import { underNewNames } from '#ui/keeping/own-body.ts';
import type { OwnBodyFile } from '#ui/keeping/schemas.ts';

/** What may differ between left and right, and be noted for both: the shoulders, and the hips by their height and way. */
export const SIDED = ['shoulderLength', 'shoulderDrop', 'sideWaistToFloor'] as const;
export const SIDES = ['left', 'right'] as const;

const written = z.union([z.number(), z.string()]);
/** The longest that somebody's own remarks on a body are. */
export const LONGEST_REMARKS = 1000;

/** What is noted of a body beside what is drafted from: nothing is worked from it. */
const notesSchema = z.object({
	sides: z.optional(z.record(z.string(), z.record(z.string(), written))),
	/** Whose survey the body is compared with, where somebody has chosen. */
	survey: z.optional(z.enum(PEOPLE)),
	remarks: z.optional(z.string().check(z.maxLength(LONGEST_REMARKS)))
});
export type BodyNotes = z.infer<typeof notesSchema>;

/** What a kept file notes; nothing where that cannot be read. */
export const notesOf = (file: OwnBodyFile): BodyNotes => {
	const read = z.safeParse(notesSchema, file);
	return read.success ? read.data : {};
};

/** Throws BadInput where what is noted is of no side, no measurement that has two, or no length. */
const checkedNotes = (file: OwnBodyFile): BodyNotes => {
	const notes = parsed(notesSchema, file, '', 'body');
	for (const [side, lengths] of Object.entries(notes.sides ?? {})) {
		if (!SIDES.some((each) => each === side))
			throw new BadInput(`sides.${side}`, message('shapes', 'invalid'));
		for (const [key, value] of Object.entries(lengths)) {
			const of = oneOf('measurement', key, SIDED, `sides.${side}`, SIDED);
			readMeasurement(of, value, file.unit, `sides.${side}.`);
		}
	}
	return notes;
};

/**
 * A body's file as it was saved, from parsed JSON: numbers as they were typed, under the names that they have now, and
 * nothing that is no part of a body. Throws BadInput where it is none.
 */
export const openedBody = (input: unknown, name: string): OwnBodyFile => {
	const body = readBody(input, '', name);
	const file = underNewNames(z.parse(bodyFileSchema, input));
	const { readings, supposed } = file;
	return {
		name: body.name,
		unit: body.unit,
		...Object.fromEntries(
			MEASUREMENT_KEYS.flatMap((key) => (key in body.measurements ? [[key, file[key]]] : []))
		),
		allowances: file.allowances,
		...(readings && { readings }),
		...(supposed && { supposed }),
		...checkedNotes(file)
	};
};
