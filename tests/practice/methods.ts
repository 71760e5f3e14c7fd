import type { Practised } from '#practice/exercises/exercise.ts';
import { practised } from '#practice/exercises/seams.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { findMethod, garmentOf, garments } from '../garment/garment-files.ts';

const BLOCK = garmentOf('body-block');

export const BACK = practised(backBlock(), [BLOCK]);
export const FRONT = practised(frontBlock(), [BLOCK]);

/** All that is practised, in the order of the course, with the seams of all garments. */
export const PRACTISED: readonly Practised[] = [
	'back-block',
	'front-block',
	'dress-back-top',
	'dress-front',
	'dress-back',
	'dress-skirt',
	'straight-skirt-front',
	'straight-skirt-back',
	'circle-skirt',
	'set-in-sleeve'
].map((id) => {
	const method = findMethod(id);
	if (!method?.practised) throw new Error(`${id} is not practised`);
	return practised(method, garments());
});

/** Finds the two blocks by their ids. */
export const library = (id: string): Practised | undefined =>
	[BACK, FRONT].find((method) => method.id === id);

/** The whole numbers from 0 up to, but not, `count`. */
export const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);
