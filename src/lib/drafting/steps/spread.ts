import { moved } from '#geometry/point.ts';
import { lengthOf } from '../formula/value.ts';
import { formulaArithmetic, formulaWords } from '../formula/words.ts';
import { capitalised, COMPASS_WORDS } from '../words.ts';
import { COMPASS } from './compass.ts';
import { madePoint, type StepRules } from './step-rules.ts';

/** A part of the draft moved away whole, so that a slash opens by the same width all along. */
export const spread: StepRules<'spread'> = {
	makes: 'point',
	read: (file, formula) => ({ ...file, by: formula(file.by, 'by') }),
	formulas: ({ by }) => [by],
	needs: ({ move }) => [move],
	start: ({ move }) => move,
	work: ({ move, go, by }, scope) => madePoint(moved(scope.point(move), COMPASS[go], lengthOf(by, scope))),
	explain: ({ name, move, go, by }, scope, speech) => {
		const arithmetic = formulaArithmetic(by, scope, speech);
		return {
			where: `Slide the part that holds ${move} ${COMPASS_WORDS[go]}, without turning it.`,
			rule: `${name} is where ${move} comes to lie: ${formulaWords(by, scope, { ...speech, allowances: 'named' })}, ${COMPASS_WORDS[go]}.`,
			worked: `${capitalised(arithmetic)}, ${COMPASS_WORDS[go]} from ${move}.`,
			arithmetic
		};
	}
};
