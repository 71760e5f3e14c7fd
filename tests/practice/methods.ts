import type { Method } from '#drafting/method.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';

export const BACK = backBlock();
export const FRONT = frontBlock();

/** Finds the two blocks by their ids. */
export const library = (id: string): Method | undefined => [BACK, FRONT].find((method) => method.id === id);

/** The whole numbers from 0 up to, but not, `count`. */
export const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);
