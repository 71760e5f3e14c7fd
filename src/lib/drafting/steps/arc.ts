import { message } from '#shared/speech/message.ts';
import { radians, type Radians } from '#shared/units.ts';
import { arcPath } from '#geometry/arc.ts';
import { alongness, directionTo, distance, squareTo } from '#geometry/point.ts';
import { numberOf, type Scope } from '../formula/value.ts';
import { COMPASS } from './compass.ts';
import { impossible, madeLine, NOTHING, type StepOf, type StepRules } from './step-rules.ts';

/** No pattern goes round more often; each turn is drawn in sixteen pieces. */
const MOST_TURNS = 100;

/** The angle of the arc: a share of the full turn, on the side toward which it sets off. */
const angleOf = ({ about, from, toward, turn }: StepOf<'arc'>, scope: Scope): Radians | undefined => {
	const out = directionTo(scope.point(about), scope.point(from));
	if (!out) return undefined;
	const ahead = alongness(squareTo(out), COMPASS[toward]) >= 0 ? 1 : -1;
	return radians(2 * Math.PI * numberOf(turn, scope) * ahead);
};

/** Part of a circle about a point, as with a pin and a string. */
export const arc: StepRules<'arc'> = {
	makes: 'line',
	answer: () => NOTHING,
	rule: ({ turn }) => [turn],
	read: (file, formula) => ({ ...file, turn: formula(file.turn, 'turn', 'share') }),
	formulas: ({ turn }) => [turn],
	needs: ({ about, from }) => [about, from],
	start: ({ about }) => about,
	work: (step, scope) => {
		const angle = angleOf(step, scope);
		if (angle === undefined)
			return impossible(
				message('drafts', 'noRadius', { name: step.name, about: step.about, from: step.from })
			);
		return !(Math.abs(angle) <= MOST_TURNS * 2 * Math.PI)
			? impossible(message('drafts', 'notFinite', { name: step.name }))
			: madeLine(arcPath(scope.point(step.about), scope.point(step.from), angle));
	},
	explain: (step, scope, { speech }) => {
		const { about, from } = step;
		const radius = distance(scope.point(about), scope.point(from));
		return speech.words.steps.arc({ about, from, radius, angle: angleOf(step, scope) ?? radians(0) });
	}
};
