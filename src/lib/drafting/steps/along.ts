import { message } from '#shared/speech/message.ts';
import { mm } from '#shared/units.ts';
import { pathLength, pointAtLength } from '#geometry/path.ts';
import { directionTo, moved } from '#geometry/point.ts';
import { lengthOf, type Scope } from '../formula/value.ts';
import { saidFormula } from '../formula/words.ts';
import { courseNeeds, courseNoun, coursePath, directionNear } from './course.ts';
import { impossible, madePoint, PLACE, type StepOf, type StepRules, type Work } from './step-rules.ts';

type On = StepOf<'along'>['on'];

const towardPoint = (
	{ name, by }: StepOf<'along'>,
	on: Extract<On, { toward: string }>,
	scope: Scope
): Work => {
	const start = scope.point(on.from);
	const direction = directionTo(start, scope.point(on.toward));
	return direction
		? madePoint(moved(start, direction, lengthOf(by, scope)))
		: impossible(message('drafts', 'samePlace', { name, from: on.from, toward: on.toward }));
};

const sameWay = ({ name, by }: StepOf<'along'>, on: Extract<On, { as: unknown }>, scope: Scope): Work => {
	const start = scope.point(on.from);
	const direction = directionNear(coursePath(on.as, scope), start);
	return direction
		? madePoint(moved(start, direction, lengthOf(by, scope)))
		: impossible(message('drafts', 'noWay', { name }));
};

/**
 * A point laid off along a line: straight from one point toward another, along a drawn line from one
 * of its ends, or from a point the way that another line runs.
 */
export const along: StepRules<'along'> = {
	makes: 'point',
	answer: () => PLACE,
	ruler: ({ on, by }) => {
		if ('line' in on) return undefined;
		return { formula: by, from: on.from, ...('toward' in on && { along: { toward: on.toward } }) };
	},
	number: { of: ({ by }) => by, put: (step, by) => ({ ...step, by }) },
	rule: ({ on, by }) => ['line' in on ? `line-${on.from}` : 'as' in on ? 'same-way' : 'toward', by],
	read: (file, formula) => ({ ...file, by: formula(file.by, 'by') }),
	formulas: ({ by }) => [by],
	needs: ({ on }) => {
		if ('line' in on) return [on.line];
		return [on.from, ...('as' in on ? courseNeeds(on.as) : [on.toward])];
	},
	start: ({ on }) => ('line' in on ? undefined : on.from),
	work: (step, scope) => {
		const { on, by, name } = step;
		if ('as' in on) return sameWay(step, on, scope);
		if (!('line' in on)) return towardPoint(step, on, scope);
		const path = scope.line(on.line);
		const length = lengthOf(by, scope);
		const fromStart = on.from === 'start' ? length : mm(pathLength(path) - length);
		const point = pointAtLength(path, fromStart);
		return point ? madePoint(point) : impossible(message('drafts', 'beyondEnd', { name, line: on.line }));
	},
	explain: ({ name, on, by }, scope, telling) => {
		const said = saidFormula(by, scope, telling);
		const way =
			'line' in on
				? { line: telling.line(on.line), end: on.from }
				: 'as' in on
					? { from: on.from, as: courseNoun(on.as, telling) }
					: on;
		return { ...telling.speech.words.steps.along({ name, on: way, ...said }), arithmetic: said.arithmetic };
	}
};
