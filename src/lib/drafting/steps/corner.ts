import { at } from '#geometry/point.ts';
import { madePoint, NOTHING, type StepRules } from './step-rules.ts';

/** The corner from which everything is measured: the centre line meets the level of the side neck point there. */
export const corner: StepRules<'corner'> = {
	makes: 'point',
	answer: () => NOTHING,
	read: (file) => file,
	formulas: () => [],
	needs: () => [],
	start: () => undefined,
	work: () => madePoint(at(0, 0)),
	explain: ({ name }, _scope, { speech }) => speech.words.steps.corner({ name })
};
