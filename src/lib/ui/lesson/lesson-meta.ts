import { z } from 'zod';

/** The front matter of a lesson. */
export const lessonMetaSchema = z.strictObject({
	title: z.string().min(1),
	part: z.string().min(1),
	method: z.string().optional(),
	/** The garment whose pieces and seams its text shows. */
	garment: z.string().optional(),
	minutes: z.number().int().positive(),
	summary: z.string().min(1)
});

export type LessonMeta = z.infer<typeof lessonMetaSchema>;

/** A lesson as another page names it. */
export interface LessonLink {
	readonly href: string;
	readonly title: string;
}
