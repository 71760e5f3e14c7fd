import { mm } from '#shared/units.ts';
import { at } from '#geometry/point.ts';
import { madePoint, PLACE, type StepRules } from './step-rules.ts';

/** Where the line squared down from one point meets the line squared across from another. */
export const meeting: StepRules<'meeting'> = {
	makes: 'point',
	answer: () => PLACE,
	read: (file) => file,
	formulas: () => [],
	needs: ({ down, across }) => [down, across],
	start: ({ down }) => down,
	work: ({ down, across }, scope) => madePoint(at(scope.point(down).x, scope.point(across).y)),
	explain: ({ name, down, across }, scope, { speech }) => {
		const [x, y] = [mm(scope.point(down).x), mm(scope.point(across).y)];
		return speech.words.steps.meeting({ name, down, across, x, y });
	}
};
