import type { Pattern } from '#garment/pattern.ts';
import { wornOf } from '#garment/worn/view.ts';
import type { Worn } from '#garment/worn/worn.ts';
import type { Making } from './making.svelte.ts';

/** A pattern as it is worn by the body that it was made for; undefined where its garment does not say how. */
export const madeWorn = ({ garment, body, choices }: Making, { drafts, pieces }: Pattern): Worn | undefined =>
	wornOf(
		garment,
		body,
		{ drafts, edges: Object.fromEntries(pieces.map(({ key, edges }) => [key, edges])) },
		choices
	);
