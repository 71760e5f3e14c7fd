import { message } from '#shared/speech/message.ts';
import { mm, type Mm } from '#shared/units.ts';
import { pathLength } from '#geometry/path.ts';
import { pathSection } from '#geometry/section.ts';
import type { Formula } from '../formula/formula.ts';
import { lengthOf, type Scope } from '../formula/value.ts';
import { impossible, madeLine, NOTHING, type StepOf, type StepRules } from './step-rules.ts';

const off = (formula: Formula | undefined, scope: Scope): Mm => (formula ? lengthOf(formula, scope) : mm(0));

const ends = ({ lessStart, lessEnd }: StepOf<'section'>, whole: Mm, scope: Scope): readonly [Mm, Mm] => [
	off(lessStart, scope),
	mm(whole - off(lessEnd, scope))
];

/** A part of a drawn line, exactly on it: without so much at its start, or at its end. */
export const section: StepRules<'section'> = {
	makes: 'line',
	answer: () => NOTHING,
	partOf: ({ of }) => of,
	read: ({ lessStart, lessEnd, ...file }, formula) => ({
		...file,
		...(lessStart === undefined ? {} : { lessStart: formula(lessStart, 'lessStart') }),
		...(lessEnd === undefined ? {} : { lessEnd: formula(lessEnd, 'lessEnd') })
	}),
	formulas: ({ lessStart, lessEnd }) => [lessStart, lessEnd].filter((each) => each !== undefined),
	needs: ({ of }) => [of],
	start: () => undefined,
	work: (step, scope) => {
		const whole = scope.line(step.of);
		const [from, to] = ends(step, pathLength(whole), scope);
		const part = pathSection(whole, from, to);
		return part
			? madeLine(part)
			: impossible(message('drafts', 'nothingLeft', { of: step.of, name: step.name }));
	},
	explain: (step, scope, telling) => {
		const [from, to] = ends(step, pathLength(scope.line(step.of)), scope);
		return telling.speech.words.steps.section({ of: telling.line(step.of), from, to });
	}
};
