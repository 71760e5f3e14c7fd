import { message } from '#shared/speech/message.ts';
import { mirroring, movedBy } from '#geometry/motion.ts';
import { directionTo, distance, type SheetPoint } from '#geometry/point.ts';
import { lineMeeting } from '#geometry/rays.ts';
import type { Scope } from '../formula/value.ts';
import { impossible, madePoint, PLACE, type StepOf, type StepRules } from './step-rules.ts';

/** The two points of the line that crosses, folded over where the rule says so. */
const courseOf = ({ of, over }: StepOf<'crossing'>, scope: Scope): readonly [SheetPoint, SheetPoint] => {
	const [first, last] = [scope.point(of[0]), scope.point(of[1])];
	if (!over) return [first, last];
	const motion = mirroring(scope.point(over[0]), scope.point(over[1]));
	return [movedBy(motion, first), movedBy(motion, last)];
};

/** Where one straight line crosses another that goes on from its first point through its second. */
export const crossing: StepRules<'crossing'> = {
	makes: 'point',
	answer: () => PLACE,
	read: (file) => file,
	formulas: () => [],
	needs: ({ of, over, ray }) => [...of, ...ray, ...(over ?? [])],
	start: ({ ray }) => ray[0],
	rule: ({ over }) => [over ? 'folded' : 'straight'],
	work: (step, scope) => {
		const [first, last] = courseOf(step, scope);
		const start = scope.point(step.ray[0]);
		const [along, ahead] = [directionTo(first, last), directionTo(start, scope.point(step.ray[1]))];
		const meeting = along && ahead && lineMeeting(first, along, start, ahead);
		return meeting && meeting.alongSecond > 0
			? madePoint(meeting.point)
			: impossible(message('drafts', 'doesNotCross', { name: step.name }));
	},
	explain: (step, scope, { speech }) => {
		const { name, of, over, ray } = step;
		const work = crossing.work(step, scope);
		const start = scope.point(ray[0]);
		return speech.words.steps.crossing({
			name,
			of: of.join('–'),
			over: over?.join('–'),
			from: ray[0],
			through: ray[1],
			length: distance(start, work.kind === 'point' ? work.point : start)
		});
	}
};
