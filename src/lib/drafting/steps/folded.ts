import { radians } from '#shared/units.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { distance } from '#geometry/point.ts';
import { turnAngle } from './motion.ts';
import { madePoint, PLACE, type StepRules } from './step-rules.ts';

/** Where a point comes to lie while a dart is folded shut: turned about the dart's point as one leg is onto the other. Nothing stays moved. */
export const folded: StepRules<'folded'> = {
	makes: 'point',
	answer: () => PLACE,
	read: (file) => file,
	formulas: () => [],
	needs: ({ point, about, from, onto }) => [point, about, from, onto],
	start: ({ about }) => about,
	rule: () => ['folded'],
	work: ({ point, about, from, onto }, scope) => {
		const centre = scope.point(about);
		const angle = turnAngle(centre, scope.point(from), scope.point(onto));
		return madePoint(movedBy(turning(centre, angle), scope.point(point)));
	},
	explain: ({ name, point, about, from, onto }, scope, { speech }) => {
		const centre = scope.point(about);
		return speech.words.steps.folded({
			name,
			point,
			about,
			from,
			onto,
			radius: distance(centre, scope.point(point)),
			angle: radians(Math.abs(turnAngle(centre, scope.point(from), scope.point(onto))))
		});
	}
};
