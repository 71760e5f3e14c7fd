import { radians, type Radians } from '#shared/units.ts';
import { lengthOf, numberOf } from '#drafting/formula/value.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { FRACTIONS, RARE_FRACTIONS, fractionOf, fractionWeight, isSameShare } from '../fractions.ts';
import { slip, type Misstep } from '../misstep.ts';
import { laid, lengthParts } from '../parts.ts';
import { PRIORS } from '../priors.ts';
import { othersThan, type Stand } from '../stand.ts';
import type { KindMissteps } from './kind-missteps.ts';

/** Where the moving point lies once it is turned by so much. */
type Turned = (angle: Radians) => SheetPoint;

/** Left where it was, or turned the other way. */
const wrongWays = (
	{ move, about, onto }: StepOf<'turn'>,
	angle: Radians,
	turned: Turned
): readonly Misstep[] => [
	{
		note: 'unmoved',
		prior: PRIORS.unmoved,
		place: turned(radians(0)),
		slips: [slip('notTurned', { point: move, about })]
	},
	{
		note: 'direction:opposite',
		prior: PRIORS.opposite,
		place: turned(radians(-angle)),
		slips: [slip('turnedBack', { point: move, onto })]
	}
];

/** The angle of every other dart that the method closes, where its points are drafted. */
const otherAngles = ({ method, step, scope }: Stand): readonly { name: string; angle: number }[] =>
	method.steps.flatMap((other) => {
		if (other.kind !== 'turn' || other.name === step.name || other.onto === undefined) return [];
		const names = [other.about, other.move, other.onto];
		if (!names.every((name) => scope.has(name))) return [];
		const angle = turnAngle(scope.point(other.about), scope.point(other.move), scope.point(other.onto));
		return [{ name: other.name, angle: angle * numberOf(other.share, scope) }];
	});

/** The angle of another dart: instead of this one's, or added to it. */
const otherDarts = (stand: Stand, angle: Radians, turned: Turned): readonly Misstep[] =>
	otherAngles(stand).flatMap(({ name, angle: other }) => {
		const way = Math.sign(angle) * Math.abs(other);
		return [
			{
				note: `turn:${name}-for-${stand.step.name}`,
				prior: PRIORS.otherDart,
				place: turned(radians(way)),
				slips: [slip('turnedFor', { other: name })]
			},
			{
				note: `turn:${name}-and-${stand.step.name}`,
				prior: PRIORS.otherDart / 2,
				place: turned(radians(angle + way)),
				slips: [slip('turnedForBoth', { other: name })]
			}
		];
	});

/** Whether a share is the half or the double of the right one: a dart is closed by eye, and nobody sees a sixth of one. */
const isFolded = (wrong: number, right: number): boolean =>
	[1 / 2, 2].some((ratio) => isSameShare(wrong / right, ratio));

/** A dart closed: by another share, or to the other leg's own end. */
const wronglyClosed = (
	step: StepOf<'turn'>,
	onto: string,
	stand: Stand,
	turned: Turned
): readonly Misstep[] => {
	const [about, from, goal] = [step.about, step.move, onto].map((name) => stand.scope.point(name));
	if (!about || !from || !goal) return [];
	const right = fractionOf(numberOf(step.share, stand.scope));
	const shares = stand.placed ? [...FRACTIONS, ...RARE_FRACTIONS] : FRACTIONS;
	const whole = turnAngle(about, from, goal);
	return [
		...shares
			.filter((wrong) => isFolded(wrong.share, right.share))
			.map((wrong) => ({
				note: `fraction:${wrong.name}-for-${right.name}`,
				prior: PRIORS.fraction * fractionWeight(wrong, right),
				place: turned(radians(whole * wrong.share)),
				slips: [slip('turnedShare', { wrong: wrong.name, right: right.name, onto })]
			})),
		{
			note: 'straight-onto',
			prior: PRIORS.straightOnto,
			place: goal,
			slips: [slip('straightOnto', { point: step.move, onto, about: step.about })]
		}
	];
};

/** Turned about another point, or until it lies on the way to another: looked for only where a mark is to be explained. */
const otherTurns = (step: StepOf<'turn'>, stand: Stand, turned: Turned): readonly Misstep[] => {
	const { onto } = step;
	if (!stand.placed || onto === undefined) return [];
	const [about, from, goal] = [step.about, step.move, onto].map((name) => stand.scope.point(name));
	if (!about || !from || !goal) return [];
	const others = othersThan(stand, step.about, step.move, onto);
	return others.flatMap(({ name, place, share }) => [
		{
			note: `about:${name}-for-${step.about}`,
			prior: PRIORS.otherCentre * share,
			place: movedBy(turning(place, turnAngle(place, from, goal)), from),
			slips: [slip('turnedAbout', { wrong: name, right: step.about })]
		},
		{
			note: `onto:${name}-for-${onto}`,
			prior: PRIORS.otherGoal * share,
			place: turned(turnAngle(about, from, place)),
			slips: [slip('turnedOnto', { wrong: name, right: onto })]
		}
	]);
};

/** A slash opened by a wrongly worked width. */
const wronglyOpened = (
	step: StepOf<'turn'>,
	stand: Stand,
	turned: Turned,
	right: Radians
): readonly Misstep[] => {
	if (!step.opening) return [];
	const radius = distance(stand.scope.point(step.about), stand.scope.point(step.move));
	const width = lengthOf(step.opening, stand.scope);
	return laid(stand, lengthParts(step.opening, stand), (by) => {
		const half = by / 2 / radius;
		return Math.abs(half) > 1 || width === 0
			? undefined
			: turned(radians(2 * Math.asin(half) * Math.sign(right) * Math.sign(width)));
	});
};

/** A part turned about a point: not at all, the other way, by another angle, or moved as though it stretched. */
export const turnMissteps: KindMissteps<'turn'> = (step, stand) => {
	const [about, from] = [stand.scope.point(step.about), stand.scope.point(step.move)];
	const turned: Turned = (angle) => movedBy(turning(about, angle), from);
	const angle = turnAngle(about, from, stand.right);
	return [
		...wrongWays(step, angle, turned),
		...(step.onto === undefined
			? wronglyOpened(step, stand, turned, angle)
			: wronglyClosed(step, step.onto, stand, turned)),
		...otherDarts(stand, angle, turned),
		...otherTurns(step, stand, turned)
	];
};
