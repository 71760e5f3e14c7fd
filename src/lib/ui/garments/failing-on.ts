import type { Garment } from '#garment/garment.ts';
import type { WearReport } from '#garment/wear.ts';

/** The checks of wear that fail and are seen on a draft: those of the pieces that are traced off it. */
export const failingOn = (
	{ pieces, uses }: Pick<Garment, 'pieces' | 'uses'>,
	wear: readonly WearReport[],
	method: string
): readonly WearReport[] => {
	const traced = pieces.filter(({ draft }) => uses[draft]?.id === method).map(({ key }) => key);
	return wear.filter(({ state, place }) => state === 'fails' && place && traced.includes(place.piece));
};
