import { message } from '#shared/speech/message.ts';
import { swungToLevel } from '#geometry/rays.ts';
import { lengthOf } from '../formula/value.ts';
import { formulaNoun, saidFormula } from '../formula/words.ts';
import { impossible, madePoint, PLACE, type StepRules } from './step-rules.ts';

/** A length swung about a point, as with compasses, until its end meets a level (a depth below the corner). */
export const swing: StepRules<'swing'> = {
	makes: 'point',
	answer: () => PLACE,
	ruler: ({ from, length }) => ({ formula: length, from, along: 'level' }),
	rule: ({ side, length, level }) => [side, length, level],
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
		return point ? madePoint(point) : impossible(message('drafts', 'doesNotReach', { name, from }));
	},
	explain: ({ name, from, length, level, side }, scope, telling) => {
		const said = saidFormula(length, scope, telling);
		const to = { level: formulaNoun(level, scope, telling), depth: lengthOf(level, scope) };
		return {
			...telling.speech.words.steps.swing({ name, from, side, ...to, ...said }),
			arithmetic: said.arithmetic
		};
	}
};
