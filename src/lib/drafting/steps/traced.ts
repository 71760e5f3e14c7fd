import { the } from '#shared/speech/en/grammar.ts';
import { isPointName } from '../names.ts';
import { madeLine, madePoint, type StepRules } from './step-rules.ts';

/** A point or line that stands where another draft has it. */
export const traced: StepRules<'traced'> = {
	makes: 'either',
	given: true,
	read: (file) => file,
	formulas: () => [],
	needs: () => [],
	start: () => undefined,
	exists: ({ of }, scope) => scope.has(of),
	work: ({ name, of }, scope) => (isPointName(name) ? madePoint(scope.point(of)) : madeLine(scope.line(of))),
	explain: ({ name, label }) => ({
		where: `${name} is traced off the draft before.`,
		rule: `${the(label)} stands where that draft has it.`,
		worked: 'Nothing has to be measured.'
	})
};
