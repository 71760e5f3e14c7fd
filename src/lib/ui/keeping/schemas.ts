import { bodyFileSchema, readBody } from '#shared/body.ts';
import { z } from '#shared/shape.ts';

/** The shapes in which a learner's things are saved; `version` lets a later program read an earlier one's. */
export const VERSION = 1;
const snap = z.number().check(z.positive());
const version = z._default(z.literal(VERSION), VERSION);

export const settingsSchema = z.object({
	version,
	unit: z._default(z.enum(['cm', 'in']), 'cm'),
	body: z._default(z.string(), 'heron'),
	/** Whether what is right goes on to the next step by itself. */
	goesOn: z._default(z.boolean(), true),
	/** Snap of the sheet in millimetres, for each unit. */
	snap: z._default(z.object({ cm: snap, in: snap }), { cm: 1, in: 25.4 / 16 })
});

/** A body file that reads without an error; what is wrong with it otherwise is the engine's own message. */
const readableBody = bodyFileSchema.check(
	z.superRefine((file, context) => {
		try {
			readBody(file);
		} catch (error) {
			context.addIssue({
				code: 'custom',
				message: error instanceof Error ? error.message : String(error),
				params: { slip: error }
			});
		}
	})
);

export const ownBodySchema = z.object({ id: z.string().check(z.minLength(1)), file: readableBody });

/** Each body is read by itself, so that one that cannot be read takes no other with it. */
export const ownBodiesSchema = z.object({ version, bodies: z.array(z.unknown()) });

/** Each step is read by itself, as each body is. */
export const workSchema = z.object({
	version,
	method: z.string(),
	/** Absent where the method needs no measurement, so that its draft is the same for every body. */
	body: z.optional(z.string()),
	steps: z.record(z.string(), z.unknown())
});

export type Settings = z.infer<typeof settingsSchema>;
export type OwnBody = z.infer<typeof ownBodySchema>;
export type OwnBodyFile = z.infer<typeof bodyFileSchema>;
