import { polyline } from '#geometry/path.ts';
import { moved } from '#geometry/point.ts';
import { lengthOf } from '../formula/value.ts';
import { saidFormula } from '../formula/words.ts';
import { COMPASS } from './compass.ts';
import { madeLine, type StepRules } from './step-rules.ts';

/** A line squared across from a point on the centre line, at least as long as `reach`. */
export const level: StepRules<'level'> = {
	makes: 'line',
	ink: 'level',
	answer: ({ from }) => ({ put: 'level', from }),
	rule: ({ reach }) => [reach],
	read: (file, formula) => ({ ...file, reach: formula(file.reach, 'reach') }),
	formulas: ({ reach }) => [reach],
	needs: ({ from }) => [from],
	start: ({ from }) => from,
	work: ({ from, reach }, scope) => {
		const start = scope.point(from);
		return madeLine(polyline(start, moved(start, COMPASS.across, lengthOf(reach, scope))));
	},
	explain: ({ from, reach }, scope, telling) => {
		const said = saidFormula(reach, scope, telling);
		return { ...telling.speech.words.steps.level({ from, ...said }), arithmetic: said.arithmetic };
	}
};
