import { SAME_PLACE } from '#shared/tolerances.ts';
import { at, between, distance, type SheetPoint } from '#geometry/point.ts';
import { fractionOf } from '../fractions.ts';
import { slip, type Misstep, type Part } from '../misstep.ts';
import { laid, startParts } from '../parts.ts';
import { PRIORS } from '../priors.ts';
import type { Stand } from '../stand.ts';
import type { KindMissteps } from './kind-missteps.ts';

/**
 * Points above one another give the same line down, and points beside one another the same line across:
 * one of them stands for all, the likeliest.
 */
const oneForEachLine = (candidates: readonly Misstep[]): readonly Misstep[] =>
	candidates
		.toSorted((a, b) => b.prior - a.prior)
		.reduce<readonly Misstep[]>((kept, next) => {
			const same = kept.find(({ place }) => distance(place, next.place) <= SAME_PLACE);
			if (!same) return [...kept, next];
			return kept.map((each) => (each === same ? { ...each, prior: each.prior + next.prior } : each));
		}, []);

/** Half of the way to where the lines meet, or twice: only for a mark. */
const shares = (starts: readonly string[], { placed, scope, step, right }: Stand): readonly Misstep[] =>
	!placed
		? []
		: starts.flatMap((from) =>
				[1 / 2, 2].map((share) => ({
					note: `fraction:${fractionOf(share).name}-for-whole`,
					prior: PRIORS.metElsewhere,
					place: between(scope.point(from), right, share),
					slips: [slip('share', { wrong: fractionOf(share).name, right: 'whole', from, to: step.name })]
				}))
			);

/** Where two square lines meet: either line from a wrong point, or the two lines exchanged. */
export const meetingMissteps: KindMissteps<'meeting'> = ({ down, across }, stand) => {
	const [above, beside] = [stand.scope.point(down), stand.scope.point(across)];
	const starts = (right: string, way: 'down' | 'across'): readonly Part<SheetPoint>[] =>
		startParts(right, stand, 1 / 2, (wrong) => slip('squaredFrom', { wrong, right, way }));
	return [
		...oneForEachLine(laid(stand, starts(down, 'down'), ({ x }) => at(x, beside.y))),
		...oneForEachLine(laid(stand, starts(across, 'across'), ({ y }) => at(above.x, y))),
		{
			note: 'direction:crossed',
			prior: PRIORS.crossed,
			place: at(beside.x, above.y),
			slips: [slip('squaresExchanged', { down, across })]
		},
		...shares([down, across], stand)
	];
};
