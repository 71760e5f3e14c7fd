import { moved } from '#geometry/point.ts';
import { lengthOf } from '../formula/value.ts';
import { formulaArithmetic, formulaWords } from '../formula/words.ts';
import { capitalised, COMPASS_WORDS } from '../words.ts';
import { COMPASS } from './compass.ts';
import { madePoint, type StepRules } from './step-rules.ts';

/** A point marked from an earlier one: a direction and a distance. */
export const mark: StepRules<'mark'> = {
	makes: 'point',
	read: (file, formula) => ({ ...file, by: formula(file.by, 'by') }),
	formulas: ({ by }) => [by],
	needs: ({ from }) => [from],
	start: ({ from }) => from,
	work: ({ from, go, by }, scope) => madePoint(moved(scope.point(from), COMPASS[go], lengthOf(by, scope))),
	explain: ({ name, from, go, by }, scope, speech) => {
		const arithmetic = formulaArithmetic(by, scope, speech);
		return {
			where: `Start at ${from} and go ${COMPASS_WORDS[go]}.`,
			rule: `From ${from} to ${name}: ${formulaWords(by, scope, { ...speech, allowances: 'named' })}.`,
			worked: `${capitalised(arithmetic)}, ${COMPASS_WORDS[go]} from ${from}.`,
			arithmetic
		};
	}
};
