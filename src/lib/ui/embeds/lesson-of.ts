import { getContext, setContext } from 'svelte';
import type { LessonLink } from '#shared/lesson-meta.ts';

/** Which lesson drafts each step of the method at hand. */
export type LessonOf = Readonly<Record<string, LessonLink>>;

const LESSON_OF = Symbol('lesson of a step');

/** Makes known in which lesson each step is drafted. `lessons` is asked again whenever it is needed. */
export const provideLessonOf = (lessons: () => LessonOf): void => {
	setContext(LESSON_OF, lessons);
};

/** In which lesson each step is drafted; none where no page says so. */
export const useLessonOf = (): (() => LessonOf) =>
	getContext<(() => LessonOf) | undefined>(LESSON_OF) ?? (() => ({}));
