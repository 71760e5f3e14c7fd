import { moved } from '#geometry/point.ts';
import { lengthOf } from '../formula/value.ts';
import { saidFormula } from '../formula/words.ts';
import { COMPASS } from './compass.ts';
import { madePoint, PLACE, type StepRules } from './step-rules.ts';

/** A point marked from an earlier one: a direction and a distance. */
export const mark: StepRules<'mark'> = {
	makes: 'point',
	answer: () => PLACE,
	ruler: ({ from, go, by }) => ({ formula: by, from, go }),
	number: { of: ({ by }) => by, put: (step, by) => ({ ...step, by }) },
	rule: ({ go, by }) => [go, by],
	read: (file, formula) => ({ ...file, by: formula(file.by, 'by') }),
	formulas: ({ by }) => [by],
	needs: ({ from }) => [from],
	start: ({ from }) => from,
	work: ({ from, go, by }, scope) => madePoint(moved(scope.point(from), COMPASS[go], lengthOf(by, scope))),
	explain: ({ name, from, go, by }, scope, telling) => {
		const said = saidFormula(by, scope, telling);
		return { ...telling.speech.words.steps.mark({ name, from, go, ...said }), arithmetic: said.arithmetic };
	}
};
