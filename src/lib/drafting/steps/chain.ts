import { message } from '#shared/speech/message.ts';
import { chained, pathLength } from '#geometry/path.ts';
import { impossible, madeLine, NOTHING, type StepRules } from './step-rules.ts';

/** Drawn lines end to end as one line; those that this body's draft does not have are passed over. */
export const chain: StepRules<'chain'> = {
	makes: 'line',
	answer: () => NOTHING,
	read: (file) => file,
	formulas: () => [],
	needs: ({ of }) => of,
	start: () => undefined,
	exists: ({ of }, scope) => of.some((line) => scope.has(line)),
	work: ({ name, of }, scope) => {
		const path = chained(of.filter((line) => scope.has(line)).map((line) => scope.line(line)));
		return path ? madeLine(path) : impossible(message('drafts', 'notJoined', { name }));
	},
	explain: ({ of }, scope, { speech, line }) =>
		speech.words.steps.chain({
			of: of.map(line),
			lengths: of.filter((each) => scope.has(each)).map((each) => pathLength(scope.line(each)))
		})
};
