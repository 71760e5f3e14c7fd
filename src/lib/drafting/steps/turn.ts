import { printLength, radians, type Radians } from '#shared/units.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { alongness, directionTo, distance, squareTo, type SheetPoint } from '#geometry/point.ts';
import { lengthOf, numberOf, type Scope } from '../formula/value.ts';
import { formulaArithmetic, formulaWords } from '../formula/words.ts';
import { COMPASS } from './compass.ts';
import { turnAngle } from './motion.ts';
import { impossible, madePoint, type StepOf, type StepRules } from './step-rules.ts';

/** The angle that opens a slash by a width, measured straight across at the place that moves; undefined where it is too wide. */
const openingAngle = (
	step: StepOf<'turn'>,
	about: SheetPoint,
	from: SheetPoint,
	scope: Scope
): Radians | undefined => {
	const outward = directionTo(about, from);
	if (!step.opening || !outward) return undefined;
	const half = lengthOf(step.opening, scope) / 2 / distance(about, from);
	if (Math.abs(half) > 1) return undefined;
	const ahead = alongness(squareTo(outward), COMPASS[step.toward ?? 'across']) >= 0 ? 1 : -1;
	return radians(2 * Math.asin(half) * ahead);
};

const angleOf = (
	step: StepOf<'turn'>,
	about: SheetPoint,
	from: SheetPoint,
	scope: Scope
): Radians | undefined =>
	step.onto === undefined
		? openingAngle(step, about, from, scope)
		: radians(turnAngle(about, from, scope.point(step.onto)) * numberOf(step.share, scope));

const degrees = (angle: Radians): string => `${Math.abs((angle * 180) / Math.PI).toFixed(1)}°`;

/**
 * A part of the draft turned about a point, as a card turns about a pin: so a dart is closed and opens
 * elsewhere, and a slash is opened about its hinge. Common practice in dressmaking, no single source.
 */
export const turn: StepRules<'turn'> = {
	makes: 'point',
	read: ({ share, opening, ...file }, formula) => ({
		...file,
		share: formula(share, 'share', 'share'),
		...(opening === undefined ? {} : { opening: formula(opening, 'opening') })
	}),
	formulas: ({ share, opening }) => [share, ...(opening ? [opening] : [])],
	needs: ({ move, about, onto }) => [move, about, ...(onto === undefined ? [] : [onto])],
	start: ({ about }) => about,
	work: (step, scope) => {
		const [about, from] = [scope.point(step.about), scope.point(step.move)];
		const angle = angleOf(step, about, from, scope);
		return angle === undefined
			? impossible(`${step.name} cannot be reached by turning ${step.move} about ${step.about}`)
			: madePoint(movedBy(turning(about, angle), from));
	},
	explain: (step, scope, speech) => {
		const { name, move, about, onto, opening } = step;
		const [centre, from] = [scope.point(about), scope.point(move)];
		const angle = angleOf(step, centre, from, scope) ?? radians(0);
		const radius = printLength(distance(centre, from), speech.unit);
		const goal =
			onto === undefined
				? `it has opened by ${opening ? formulaWords(opening, scope, { ...speech, allowances: 'named' }) : ''}`
				: `it lies on the line from ${about} through ${onto}`;
		return {
			where: `Put a pin in ${about} and turn the part that holds ${move}.`,
			rule: `${name} is where ${move} comes to lie when it turns about ${about} until ${goal}. It stays as far from ${about} as it was.`,
			worked: `${about} to ${move} is ${radius} and stays so; the part turns by ${degrees(angle)}.`,
			...(opening ? { arithmetic: formulaArithmetic(opening, scope, speech) } : {})
		};
	}
};
