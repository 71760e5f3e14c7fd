import type { Lesson } from './course.ts';

/** The lessons before and after one. Those that stand beside the course are passed over, but from one of them to another. */
export const neighbours = (
	lessons: readonly Lesson[],
	lesson: Lesson
): { readonly previous: Lesson | undefined; readonly next: Lesson | undefined } => {
	const chain = lessons.filter(({ meta }) => !meta.aside || lesson.meta.aside);
	const index = chain.indexOf(lesson);
	return { previous: chain[index - 1], next: chain[index + 1] };
};

/** The lesson that the course goes on with after one, whether that stands beside the course or in it; undefined after the last. */
export const goesOnWith = (lessons: readonly Lesson[], lesson: Lesson): Lesson | undefined =>
	lessons.slice(lessons.indexOf(lesson) + 1).find(({ meta }) => !meta.aside);
