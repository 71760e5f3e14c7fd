import type { Pattern } from '#garment/pattern.ts';
import { wornPattern } from '#garment/worn/view.ts';
import type { Worn } from '#garment/worn/worn.ts';
import type { Making } from './making.svelte.ts';

/** A pattern as it is worn by the body that it was made for; undefined where its garment does not say how. */
export const madeWorn = (
	{ garment, body, choices }: Pick<Making, 'garment' | 'body' | 'choices'>,
	pattern: Pattern
): Worn | undefined => wornPattern(garment, body, pattern, choices);
