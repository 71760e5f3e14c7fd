import { slip } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import type { KindMissteps } from './kind-missteps.ts';
import { markMissteps } from './mark.ts';

/** A part moved away whole: as a point that is marked from where its own point lay, and not moved at all. */
export const spreadMissteps: KindMissteps<'spread'> = ({ name, label, move, go, by }, stand) => [
	...markMissteps({ kind: 'mark', name, label, from: move, go, by }, stand),
	{
		note: 'unmoved',
		prior: PRIORS.unmoved,
		place: stand.scope.point(move),
		slips: [slip('notSpread', { point: move })]
	}
];
