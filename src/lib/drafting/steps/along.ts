import { mm } from '#shared/units.ts';
import { pathLength, pointAtLength } from '#geometry/path.ts';
import { directionTo, moved } from '#geometry/point.ts';
import { lengthOf, type Scope } from '../formula/value.ts';
import { formulaArithmetic, formulaWords } from '../formula/words.ts';
import { capitalised } from '../words.ts';
import { courseNeeds, coursePath, courseWords, directionNear } from './course.ts';
import { impossible, madePoint, type StepOf, type StepRules, type Work } from './step-rules.ts';

type On = StepOf<'along'>['on'];

type LineWords = (name: string) => string;
const startWords = (on: On, lineWords: LineWords): string =>
	'line' in on ? `the ${on.from} of ${lineWords(on.line)}` : on.from;
const wayWords = (on: On, lineWords: LineWords): string => {
	if ('line' in on) return `along ${lineWords(on.line)}`;
	return 'as' in on ? `the same way as ${courseWords(on.as, lineWords)}` : `straight toward ${on.toward}`;
};

const towardPoint = (
	{ name, by }: StepOf<'along'>,
	on: Extract<On, { toward: string }>,
	scope: Scope
): Work => {
	const start = scope.point(on.from);
	const direction = directionTo(start, scope.point(on.toward));
	return direction
		? madePoint(moved(start, direction, lengthOf(by, scope)))
		: impossible(`${name} has no direction: ${on.from} and ${on.toward} are the same place`);
};

const sameWay = ({ name, by }: StepOf<'along'>, on: Extract<On, { as: unknown }>, scope: Scope): Work => {
	const start = scope.point(on.from);
	const direction = directionNear(coursePath(on.as, scope), start);
	return direction
		? madePoint(moved(start, direction, lengthOf(by, scope)))
		: impossible(`${name} has no direction: its line has no length`);
};

/**
 * A point laid off along a line: straight from one point toward another, along a drawn line from one
 * of its ends, or from a point the way that another line runs.
 */
export const along: StepRules<'along'> = {
	makes: 'point',
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
		return point ? madePoint(point) : impossible(`${name} would lie beyond the end of ${on.line}`);
	},
	explain: ({ name, on, by }, scope, speech) => {
		const arithmetic = formulaArithmetic(by, scope, speech);
		const words = formulaWords(by, scope, { ...speech, allowances: 'named' });
		const [start, way] = [startWords(on, speech.lineWords), wayWords(on, speech.lineWords)];
		return {
			where: `Start at ${start} and go ${way}.`,
			rule: `From ${start} to ${name}, ${way}: ${words}.`,
			worked: `${capitalised(arithmetic)}, ${way} from ${start}.`,
			arithmetic
		};
	}
};
