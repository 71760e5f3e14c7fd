import { isPointName } from '../names.ts';
import { madeLine, madePoint, NOTHING, type StepRules } from './step-rules.ts';

/** A point or line that stands where another draft has it. */
export const traced: StepRules<'traced'> = {
	makes: 'either',
	ink: 'traced',
	answer: () => NOTHING,
	read: (file) => file,
	formulas: () => [],
	needs: ({ of }) => [of],
	start: () => undefined,
	exists: ({ of }, scope) => scope.has(of),
	work: ({ name, of }, scope) => (isPointName(name) ? madePoint(scope.point(of)) : madeLine(scope.line(of))),
	explain: ({ name, label }, _scope, { speech }) => speech.words.steps.traced({ name, label })
};
