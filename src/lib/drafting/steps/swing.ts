import { printLength } from '#shared/units.ts';
import { swungToLevel } from '#geometry/rays.ts';
import { lengthOf } from '../formula/value.ts';
import { formulaArithmetic, formulaWords } from '../formula/words.ts';
import { impossible, madePoint, type StepRules } from './step-rules.ts';

/** A length swung about a point, as with compasses, until its end meets a level (a depth below the corner). */
export const swing: StepRules<'swing'> = {
	makes: 'point',
	read: (file, formula) => ({
		...file,
		length: formula(file.length, 'length'),
		level: formula(file.level, 'level')
	}),
	formulas: ({ length, level }) => [length, level],
	needs: ({ from }) => [from],
	start: ({ from }) => from,
	work: ({ name, from, length, level, side }, scope) => {
		const point = swungToLevel(scope.point(from), lengthOf(length, scope), lengthOf(level, scope), side);
		return point
			? madePoint(point)
			: impossible(`the length swung from ${from} does not reach the level of ${name}`);
	},
	explain: ({ name, from, length, level, side }, scope, speech) => {
		const named = { ...speech, allowances: 'named' } as const;
		const depth = printLength(lengthOf(level, scope), speech.unit);
		const arithmetic = formulaArithmetic(length, scope, speech);
		return {
			where: `Swing a length about ${from}, ${side}, until its end lies on the level ${depth} down.`,
			rule: `${from} to ${name} is ${formulaWords(length, scope, named)}, and ${name} lies ${formulaWords(level, scope, named)} below the corner.`,
			worked: `Swing ${arithmetic} from ${from} to the level ${depth} below the corner.`,
			arithmetic
		};
	}
};
