import { message } from '#shared/speech/message.ts';
import { radians, type Radians } from '#shared/units.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { alongness, directionTo, distance, squareTo, type SheetPoint } from '#geometry/point.ts';
import { lengthOf, numberOf, type Scope } from '../formula/value.ts';
import { saidFormula } from '../formula/words.ts';
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

/**
 * A part of the draft turned about a point, as a card turns about a pin: so a dart is closed and opens
 * elsewhere, and a slash is opened about its hinge. Common practice in dressmaking, no single source.
 */
export const turn: StepRules<'turn'> = {
	makes: 'point',
	answer: ({ move, about, onto }) => ({ put: 'way', from: move, on: { about }, turns: { onto } }),
	motion: ({ about, move, name }) => ({ kind: 'turn', about, from: move, to: name }),
	leaves: ({ move }) => move,
	rule: ({ opening, share }) => [opening ?? 'close', share],
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
			? impossible(message('drafts', 'cannotTurn', { name: step.name, move: step.move, about: step.about }))
			: madePoint(movedBy(turning(about, angle), from));
	},
	explain: (step, scope, telling) => {
		const { name, move, about, onto, opening } = step;
		const [centre, from] = [scope.point(about), scope.point(move)];
		const said = opening && saidFormula(opening, scope, telling);
		return {
			...telling.speech.words.steps.turn({
				name,
				move,
				about,
				until: onto === undefined ? { opening: said?.by ?? { name: '' } } : { onto },
				radius: distance(centre, from),
				angle: angleOf(step, centre, from, scope) ?? radians(0)
			}),
			...(said && { arithmetic: said.arithmetic })
		};
	}
};
