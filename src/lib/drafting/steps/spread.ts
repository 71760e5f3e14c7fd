import { moved } from '#geometry/point.ts';
import { lengthOf } from '../formula/value.ts';
import { saidFormula } from '../formula/words.ts';
import { COMPASS } from './compass.ts';
import { madePoint, type StepRules } from './step-rules.ts';

/** A part of the draft moved away whole, so that a slash opens by the same width all along. */
export const spread: StepRules<'spread'> = {
	makes: 'point',
	answer: ({ move, go }) => ({ put: 'way', from: move, on: { go } }),
	motion: ({ move, name }) => ({ kind: 'spread', from: move, to: name }),
	leaves: ({ move }) => move,
	rule: ({ by }) => [by],
	read: (file, formula) => ({ ...file, by: formula(file.by, 'by') }),
	formulas: ({ by }) => [by],
	needs: ({ move }) => [move],
	start: ({ move }) => move,
	work: ({ move, go, by }, scope) => madePoint(moved(scope.point(move), COMPASS[go], lengthOf(by, scope))),
	explain: ({ name, move, go, by }, scope, telling) => {
		const said = saidFormula(by, scope, telling);
		return { ...telling.speech.words.steps.spread({ name, move, go, ...said }), arithmetic: said.arithmetic };
	}
};
