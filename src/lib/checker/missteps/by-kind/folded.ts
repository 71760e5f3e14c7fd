import { radians } from '#shared/units.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { slip } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import type { KindMissteps } from './kind-missteps.ts';

/** A point carried by a folded dart: left where it was, folded the wrong way, or the dart folded only half shut. */
export const foldedMissteps: KindMissteps<'folded'> = ({ point, about, from, onto }, { scope }) => {
	const [centre, start] = [scope.point(about), scope.point(point)];
	const angle = turnAngle(centre, scope.point(from), scope.point(onto));
	const turned = (share: number): SheetPoint => movedBy(turning(centre, radians(angle * share)), start);
	return [
		{
			note: 'unmoved',
			prior: PRIORS.unmoved,
			place: start,
			slips: [slip('notTurned', { point, about })]
		},
		{
			note: 'direction:opposite',
			prior: PRIORS.opposite,
			place: turned(-1),
			slips: [slip('turnedBack', { point: from, onto })]
		},
		{
			note: 'fraction:half-for-whole',
			prior: PRIORS.fraction,
			place: turned(1 / 2),
			slips: [slip('turnedShare', { wrong: 'half', right: 'whole', onto })]
		}
	];
};
