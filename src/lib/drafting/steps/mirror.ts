import { message } from '#shared/speech/message.ts';
import { mirroring, movedBy } from '#geometry/motion.ts';
import { distance } from '#geometry/point.ts';
import { impossible, madePoint, PLACE, type StepRules } from './step-rules.ts';

/** A part of the draft mirrored on a fold, as cloth or paper is folded over a line. */
export const mirror: StepRules<'mirror'> = {
	makes: 'point',
	answer: () => PLACE,
	motion: ({ fold }) => ({ kind: 'mirror', fold }),
	read: (file) => file,
	formulas: () => [],
	needs: ({ move, fold }) => [move, ...fold],
	start: ({ move }) => move,
	work: ({ name, move, fold }, scope) => {
		const [first, second] = [scope.point(fold[0]), scope.point(fold[1])];
		return distance(first, second) === 0
			? impossible(message('drafts', 'noFold', { name }))
			: madePoint(movedBy(mirroring(first, second), scope.point(move)));
	},
	explain: ({ name, move, fold }, _scope, { speech }) =>
		speech.words.steps.mirror({ name, move, fold: fold.join('–') })
};
