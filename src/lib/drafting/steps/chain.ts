import { printLength } from '#shared/units.ts';
import { chained, pathLength } from '#geometry/path.ts';
import { listed } from '../words.ts';
import { impossible, madeLine, type StepRules } from './step-rules.ts';

/** Drawn lines end to end as one line; those that this body's draft does not have are passed over. */
export const chain: StepRules<'chain'> = {
	makes: 'line',
	given: true,
	read: (file) => file,
	formulas: () => [],
	needs: ({ of }) => of,
	start: () => undefined,
	exists: ({ of }, scope) => of.some((line) => scope.has(line)),
	work: ({ name, of }, scope) => {
		const path = chained(of.filter((line) => scope.has(line)).map((line) => scope.line(line)));
		return path ? madeLine(path) : impossible(`the lines of ${name} do not join`);
	},
	explain: ({ of }, scope, { unit, lineWords }) => ({
		where: `Look along ${listed(of.map(lineWords))}.`,
		rule: 'The lines run on as one.',
		worked: `They are ${listed(of.filter((line) => scope.has(line)).map((line) => printLength(pathLength(scope.line(line)), unit)))} long.`
	})
};
