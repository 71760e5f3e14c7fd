import { chosenWords, isChoice, type AllowanceValues } from '#shared/allowances.ts';
import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { measuredWords } from '#shared/measured-words.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { scopeOf, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isPointName } from '#drafting/names.ts';
import { isDrafted, stepKeys } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import type { FileOptions } from './file.ts';
import { table, type TextBlock } from './text-pages.ts';

/** What a sheet's file is made with; its words are those of the work. */
export type SheetOptions = Omit<FileOptions, 'speech'>;

/** A method worked for a body, as a sheet tells of it. */
export interface WorkedMethod {
	readonly method: Method;
	readonly body: Body;
	/** The method's draft for this body. */
	readonly draft: Draft;
	/** In which it is told. */
	readonly speech: Speech;
	/** Allowances chosen for the draft, over the body's own. */
	readonly chosen?: AllowanceValues;
}

/**
 * The steps that this body's draft has, in turn: all, or those of a lesson by their names. Throws BadInput for a name
 * that the method does not have.
 */
export const stepsOf = (
	{ method, body, draft, chosen }: WorkedMethod,
	names?: readonly string[]
): readonly Step[] => {
	const unknown = names?.find((name) => method.steps.every((step) => step.name !== name));
	if (unknown !== undefined)
		throw new BadInput('steps', message('paper', 'noStep', { method: method.name, step: unknown }));
	const scope = scopeOf(method, body, draft, chosen);
	return method.steps.filter((step) => (names?.includes(step.name) ?? true) && isDrafted(step, scope));
};

/** What a step is called on paper: a point by its letter and what it is, a line by what it is. */
export const stepTitle = ({ name, label }: Step, { words: { paper } }: Speech): string => {
	return isPointName(name)
		? paper.pointTitle({ point: name, noun: label })
		: paper.lineTitle({ noun: label });
};

const SHARES = [0.7, 0.3] as const;

/** The measurements and the allowances that some steps name, as two tables; one that nothing names is left out. */
export const bodyBlocks = (
	{ method, body, draft, speech, chosen }: WorkedMethod,
	steps: readonly Step[]
): readonly TextBlock[] => {
	const { paper } = speech.words;
	const scope = scopeOf(method, body, draft, chosen);
	const keysOf = (kind: 'measurement' | 'allowance'): ReadonlySet<string> =>
		new Set(steps.flatMap((step) => stepKeys(step, kind)));
	const measured = keysOf('measurement');
	const allowed = keysOf('allowance');
	const measurements = MEASUREMENT_KEYS.filter((key) => measured.has(key)).map((key) => {
		const { title, what } = speech.words.nouns.measurements[key];
		return [`${title}: ${what}`, measuredWords(key, body, speech)];
	});
	const allowances = method.allowances
		.filter(({ key }) => allowed.has(key))
		.map((each) => [
			paper.allowanceTitle({ noun: speech.words.nouns.allowance(each) }),
			chosenWords(each, isChoice(each) ? scope.share(each.key) : scope.allowance(each.key), speech)
		]);
	return [
		...(measurements.length > 0 ? table([paper.measurement, body.name], SHARES, measurements) : []),
		...(allowances.length > 0 ? table([paper.allowance, paper.chosen], SHARES, allowances) : [])
	];
};
