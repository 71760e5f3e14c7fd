import { classroom } from './classroom.ts';

/** What is said on the pages of a school's classes alone. */
export const school = { classroom };
