import { z } from '#shared/shape.ts';
import { PROBE } from './constants.ts';
import { dayNumber, daySchema } from './day.ts';
import type { Practised } from './exercises/exercise.ts';
import { NO_MASTERY } from './mastery.ts';
import { practiceSet, skillsOf, type SetItem } from './practice-set.ts';

/**
 * What has stayed of a part, tried once: some days after it was finished, on new bodies, without help. What is measured at once
 * flatters: an effect of 0.71 was 0.36 after one to two weeks. The result is the learner's own and stays with her.
 */

const partSchema = z.object({
	/** The day on which it was first seen to be finished. */
	finished: daySchema,
	taken: z.optional(
		z.object({ day: daySchema, right: z.int().check(z.minimum(0)), of: z.int().check(z.minimum(1)) })
	)
});

/** Parts by the id of their draft, as they are saved. */
export const probesSchema = z.object({
	version: z._default(z.literal(1), 1),
	parts: z._default(z.record(z.string(), partSchema), {})
});
export type Probes = z.infer<typeof probesSchema>;

/** Nothing was finished yet. */
export const NO_PROBES: Probes = { version: 1, parts: {} };

/** Notes what is finished on a day; the same object where all of it was known. */
export const withFinished = (probes: Probes, finished: readonly string[], day: string): Probes => {
	const fresh = finished.filter((id) => !(id in probes.parts));
	if (fresh.length === 0) return probes;
	const noted = Object.fromEntries(fresh.map((id) => [id, { finished: day }]));
	return { ...probes, parts: { ...probes.parts, ...noted } };
};

/** Whether it is to be tried on a day what has stayed of a part. */
export const isProbeDue = ({ parts }: Probes, id: string, day: string): boolean => {
	const part = parts[id];
	return part !== undefined && !part.taken && dayNumber(day) - dayNumber(part.finished) >= PROBE.after;
};

/** Notes how a probe went. The first result stands. */
export const withTaken = (probes: Probes, id: string, day: string, right: number, of: number): Probes => {
	const part = probes.parts[id];
	if (!part || part.taken) return probes;
	return { ...probes, parts: { ...probes.parts, [id]: { ...part, taken: { day, right, of } } } };
};

/** The exercises of a probe: of one part, any rule as likely as any other, and none shown first. */
export const probeSet = (seed: number, method: Practised, day: string): readonly SetItem[] =>
	practiceSet(seed, skillsOf([method], NO_MASTERY, day), PROBE.exercises);
