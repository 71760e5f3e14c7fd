import { mm } from '#shared/units.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Garment } from './garment.ts';

/** How far outside every stitching line a toile is cut, so that any seam can be let out. Common practice, no source. */
const TOILE_ALLOWANCE = mm(25);

/** A garment as it is cut in cheap cloth to be tried on: wide allowances everywhere but at a fold, and nothing but the cloth itself. */
export const toileOf = (garment: Garment, { words }: Speech): Garment => ({
	...garment,
	name: words.garments.toile({ garment: garment.name }),
	pieces: garment.pieces.map((piece) => ({
		...piece,
		edges: piece.edges.map((edge) =>
			edge.kind === 'fold' ? edge : { ...edge, allowance: { kind: 'number', value: TOILE_ALLOWANCE } }
		),
		cut: piece.cut.filter((each) => each.in === 'fabric')
	}))
});
