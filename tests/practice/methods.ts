import type { Practised } from '#practice/exercises/exercise.ts';
import { practised } from '#practice/exercises/seams.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { garmentOf } from '../garment/garment-files.ts';

const BLOCK = garmentOf('body-block');

export const BACK = practised(backBlock(), [BLOCK]);
export const FRONT = practised(frontBlock(), [BLOCK]);

/** Finds the two blocks by their ids. */
export const library = (id: string): Practised | undefined =>
	[BACK, FRONT].find((method) => method.id === id);

/** The whole numbers from 0 up to, but not, `count`. */
export const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);
