import type { Body } from '#shared/body.ts';
import type { Garment } from '#garment/garment.ts';
import { sewnFor } from '#garment/sewn.ts';
import { wornOf } from '#garment/worn/view.ts';
import type { Worn } from '#garment/worn/worn.ts';

/** A garment with its usual numbers as a body wears it; undefined where the body cannot have it. */
export const wornBy = (garment: Garment, body: Body): Worn | undefined => {
	const work = sewnFor(garment, body);
	return work.kind === 'sewn'
		? wornOf(garment, body, work.sewn, { allowances: body.allowances, edges: {} })
		: undefined;
};
