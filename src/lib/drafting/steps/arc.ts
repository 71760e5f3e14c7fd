import { printLength, radians, type Radians } from '#shared/units.ts';
import { arcPath } from '#geometry/arc.ts';
import { alongness, directionTo, distance, squareTo } from '#geometry/point.ts';
import { numberOf, type Scope } from '../formula/value.ts';
import { COMPASS } from './compass.ts';
import { impossible, madeLine, type StepOf, type StepRules } from './step-rules.ts';

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
	given: true,
	read: (file, formula) => ({ ...file, turn: formula(file.turn, 'turn', 'share') }),
	formulas: ({ turn }) => [turn],
	needs: ({ about, from }) => [about, from],
	start: ({ about }) => about,
	work: (step, scope) => {
		const angle = angleOf(step, scope);
		return angle === undefined
			? impossible(`${step.name} has no radius: ${step.about} and ${step.from} are the same place`)
			: madeLine(arcPath(scope.point(step.about), scope.point(step.from), angle));
	},
	explain: (step, scope, { unit }) => {
		const radius = printLength(distance(scope.point(step.about), scope.point(step.from)), unit);
		const angle = Math.abs(((angleOf(step, scope) ?? 0) * 180) / Math.PI).toFixed(1);
		return {
			where: `Pin a string at ${step.about} and swing it from ${step.from}.`,
			rule: `Everywhere as far from ${step.about} as ${step.from} is.`,
			worked: `The string is ${radius} long and swings through ${angle}°.`
		};
	}
};
