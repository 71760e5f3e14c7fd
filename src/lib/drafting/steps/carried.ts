import { movedBy, pathMovedBy } from '#geometry/motion.ts';
import { isPointName } from '../names.ts';
import { motionIn, motionNeeds } from './motion.ts';
import { madeLine, madePoint, NOTHING, type StepRules } from './step-rules.ts';

/** A point or line that went along with a turn, a spread or a mirroring; all its lengths and angles are kept. */
export const carried: StepRules<'carried'> = {
	makes: 'either',
	answer: () => NOTHING,
	leaves: ({ of }) => of,
	read: (file) => file,
	formulas: () => [],
	needs: ({ of, motion }) => [of, ...motionNeeds(motion)],
	start: () => undefined,
	exists: ({ of }, scope) => scope.has(of),
	work: ({ name, of, motion }, scope) => {
		const moved = motionIn(motion, scope);
		return isPointName(name)
			? madePoint(movedBy(moved, scope.point(of)))
			: madeLine(pathMovedBy(moved, scope.line(of)));
	},
	explain: ({ name, of, with: step }, _scope, { speech }) => speech.words.steps.carried({ name, of, step })
};
