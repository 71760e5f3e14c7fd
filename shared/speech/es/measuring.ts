import { bodies } from './bodies.ts';

/** What only the page of measurements says. */
export const measuring = { bodies };
