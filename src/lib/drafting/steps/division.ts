import { mm } from '#shared/units.ts';
import { between, distance } from '#geometry/point.ts';
import { numberOf } from '../formula/value.ts';
import { madePoint, offsetTo, PLACE, type StepRules } from './step-rules.ts';

/** A point that divides the straight way between two others; at half it is their middle. */
export const division: StepRules<'division'> = {
	makes: 'point',
	answer: () => PLACE,
	rule: ({ at }) => [at],
	read: (file, formula) => ({ ...file, at: formula(file.at, 'at', 'share') }),
	formulas: ({ at }) => [at],
	needs: ({ from, to }) => [from, to],
	start: ({ from }) => from,
	work: ({ from, to, at }, scope) =>
		madePoint(between(scope.point(from), scope.point(to), numberOf(at, scope))),
	explain: ({ name, from, to, at }, scope, { speech }) => {
		const [start, end, share] = [scope.point(from), scope.point(to), numberOf(at, scope)];
		const whole = distance(start, end);
		const offset = offsetTo(start, between(start, end, share));
		return speech.words.steps.division({ name, from, to, share, whole, part: mm(whole * share), offset });
	}
};
