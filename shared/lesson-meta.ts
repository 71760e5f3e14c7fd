import { z } from './shape.ts';
import type { Language } from './speech/language.ts';

const text = z.string().check(z.minLength(1));

/** The front matter of a lesson. */
export const lessonMetaSchema = z.strictObject({
	title: text,
	part: text,
	method: z.optional(z.string()),
	/** The garment whose pieces and seams its text shows. */
	garment: z.optional(z.string()),
	/** That it stands beside the course: no lesson before or after it leads to it, but its own neighbours. */
	aside: z.optional(z.boolean()),
	minutes: z.int().check(z.positive()),
	summary: text,
	/** Of a translation: the hash of each section of the English that it was made of, and its own. */
	of: z.optional(z.record(text, text)),
	own: z.optional(text)
});

export type LessonMeta = z.infer<typeof lessonMetaSchema>;

/** A lesson as another page names it. */
export interface LessonLink {
	readonly href: string;
	readonly title: string;
	/** The language that it is written in, and its title with it. */
	readonly language: Language;
}
