import { printLength } from '#shared/units.ts';
import { at } from '#geometry/point.ts';
import { madePoint, type StepRules } from './step-rules.ts';

/** Where the line squared down from one point meets the line squared across from another. */
export const meeting: StepRules<'meeting'> = {
	makes: 'point',
	read: (file) => file,
	formulas: () => [],
	needs: ({ down, across }) => [down, across],
	start: ({ down }) => down,
	work: ({ down, across }, scope) => madePoint(at(scope.point(down).x, scope.point(across).y)),
	explain: ({ name, down, across }, scope, { unit }) => {
		const [x, y] = [scope.point(down).x, scope.point(across).y];
		return {
			where: `Look straight down from ${down}, and straight across from ${across}.`,
			rule: `${name} lies where the square line down from ${down} meets the square line across from ${across}.`,
			worked: `${name} is as far across as ${down}, ${printLength(x, unit)}, and as far down as ${across}, ${printLength(y, unit)}.`
		};
	}
};
