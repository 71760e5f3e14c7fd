import { message } from '#shared/speech/message.ts';
import { mm, radians, type Mm } from '#shared/units.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { pathLength } from '#geometry/path.ts';
import { rootBetween } from '#geometry/root.ts';
import { alongness, directionTo, distance, moved, squareTo, type SheetPoint } from '#geometry/point.ts';
import { lengthOf, type Scope } from '../formula/value.ts';
import { saidFormula } from '../formula/words.ts';
import { COMPASS } from './compass.ts';
import { curveNeeds, curveSegments } from './course.ts';
import { impossible, madePoint, offsetTo, type StepOf, type StepRules } from './step-rules.ts';

/** Where the point is when it has gone so far: straight on, or round its centre. */
export const wayOf = ({ from, go, about }: StepOf<'until'>, scope: Scope): ((gone: Mm) => SheetPoint) => {
	const start = scope.point(from);
	if (about === undefined) return (gone) => moved(start, COMPASS[go], gone);
	const centre = scope.point(about);
	const out = directionTo(centre, start);
	const radius = distance(centre, start);
	if (!out) return () => start;
	const ahead = alongness(squareTo(out), COMPASS[go]) >= 0 ? 1 : -1;
	return (gone) => movedBy(turning(centre, radians((ahead * gone) / radius)), start);
};

/** The length of the curve with the point tried at a place. */
export const lengthWith = (step: StepOf<'until'>, place: SheetPoint, scope: Scope): Mm =>
	pathLength(
		curveSegments(step, {
			...scope,
			point: (name) => (name === step.name ? place : scope.point(name))
		})
	);

/**
 * How far the point goes until its curve has a wanted length; undefined where no place in its range makes it so long. What was
 * measured on the way is kept for the next length that is asked.
 */
const goneFor = (step: StepOf<'until'>, scope: Scope): ((wanted: Mm) => Mm | undefined) => {
	const place = wayOf(step, scope);
	const lengths = new Map<number, Mm>();
	const lengthAt = (gone: number): Mm => {
		const known = lengths.get(gone) ?? lengthWith(step, place(mm(gone)), scope);
		lengths.set(gone, known);
		return known;
	};
	const [least, most] = step.within;
	return (wanted) => {
		const found = rootBetween((gone) => lengthAt(gone) - wanted, least, most, SAME_PLACE);
		return found === undefined ? undefined : mm(found);
	};
};

/** How far the point goes by its own rule. */
const goneIn = (step: StepOf<'until'>, scope: Scope): Mm | undefined =>
	goneFor(step, scope)(lengthOf(step.length, scope));

/** Where the point would lie with a curve of another length, asked of several. Throws NotDrafted as the step itself. */
export const placesByLength = (
	step: StepOf<'until'>,
	scope: Scope
): ((wanted: Mm) => SheetPoint | undefined) => {
	const [gone, place] = [goneFor(step, scope), wayOf(step, scope)];
	return (wanted) => {
		const far = gone(wanted);
		return far === undefined ? undefined : place(far);
	};
};

/** A point that goes on from another until the curve drawn through it is as long as it must be. */
export const until: StepRules<'until'> = {
	makes: 'point',
	answer: ({ from, go, about, rule, through, length }) => ({
		put: 'way',
		from,
		on: about === undefined ? { go } : { about },
		grows: { rule, through, length }
	}),
	rule: ({ length }) => [length],
	read: ({ length, within: [least, most], ...file }, formula) => ({
		...file,
		length: formula(length, 'length'),
		within: [formula.quantity(least, 'within'), formula.quantity(most, 'within')]
	}),
	formulas: ({ length }) => [length],
	needs: (step) => [
		step.from,
		...(step.about === undefined ? [] : [step.about]),
		...curveNeeds(step).filter((name) => name !== step.name)
	],
	start: ({ from }) => from,
	work: (step, scope) => {
		const gone = goneIn(step, scope);
		return gone === undefined
			? impossible(message('drafts', 'noPlace', { name: step.name }))
			: madePoint(wayOf(step, scope)(gone));
	},
	explain: (step, scope, telling) => {
		const { name, from, go, about, length } = step;
		const start = scope.point(from);
		const place = wayOf(step, scope)(goneIn(step, scope) ?? mm(0));
		const said = saidFormula(length, scope, telling);
		const way = about === undefined ? go : { about };
		const [far, offset] = [distance(start, place), offsetTo(start, place)];
		return {
			...telling.speech.words.steps.until({ name, from, way, far, offset, ...said }),
			arithmetic: said.arithmetic
		};
	}
};
