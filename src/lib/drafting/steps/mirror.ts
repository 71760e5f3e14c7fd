import { mirroring, movedBy } from '#geometry/motion.ts';
import { distance } from '#geometry/point.ts';
import { impossible, madePoint, type StepRules } from './step-rules.ts';

/** A part of the draft mirrored on a fold, as cloth or paper is folded over a line. */
export const mirror: StepRules<'mirror'> = {
	makes: 'point',
	read: (file) => file,
	formulas: () => [],
	needs: ({ move, fold }) => [move, ...fold],
	start: ({ move }) => move,
	work: ({ name, move, fold }, scope) => {
		const [first, second] = [scope.point(fold[0]), scope.point(fold[1])];
		return distance(first, second) === 0
			? impossible(`${name} cannot be mirrored: its fold has no length`)
			: madePoint(movedBy(mirroring(first, second), scope.point(move)));
	},
	explain: ({ name, move, fold }) => ({
		where: `Fold along ${fold.join('–')} and look where ${move} comes to lie.`,
		rule: `${name} lies as far beyond the fold ${fold.join('–')} as ${move} lies before it, on a line square to the fold.`,
		worked: `Square from ${move} to the fold, and as far again.`
	})
};
