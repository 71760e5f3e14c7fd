import { mm } from '#shared/units.ts';
import { pathLength, pointAtLength } from '#geometry/path.ts';
import { directionTo, moved } from '#geometry/point.ts';
import { lengthOf, type Scope } from '../formula/value.ts';
import { formulaArithmetic, formulaWords } from '../formula/words.ts';
import { capitalised } from '../words.ts';
import { impossible, madePoint, type StepOf, type StepRules, type Work } from './step-rules.ts';

type On = StepOf<'along'>['on'];

const startWords = (on: On): string => ('line' in on ? `the ${on.from} of ${on.line}` : on.from);
const wayWords = (on: On): string => ('line' in on ? `along ${on.line}` : `straight toward ${on.toward}`);

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

/** A point laid off along a line: straight from one point toward another, or along a drawn line from one of its ends. */
export const along: StepRules<'along'> = {
	makes: 'point',
	read: (file, formula) => ({ ...file, by: formula(file.by, 'by') }),
	formulas: ({ by }) => [by],
	needs: ({ on }) => ('line' in on ? [on.line] : [on.from, on.toward]),
	start: ({ on }) => ('line' in on ? undefined : on.from),
	work: (step, scope) => {
		const { on, by, name } = step;
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
		return {
			where: `Start at ${startWords(on)} and go ${wayWords(on)}.`,
			rule: `From ${startWords(on)} to ${name}, ${wayWords(on)}: ${words}.`,
			worked: `${capitalised(arithmetic)}, ${wayWords(on)} from ${startWords(on)}.`,
			arithmetic
		};
	}
};
