import { explain } from '#drafting/explain.ts';
import { bodyBlocks, stepsOf, stepTitle, type SheetOptions, type WorkedMethod } from './body-words.ts';
import { wordsPdf } from './file.ts';
import { table, type TextBlock } from './text-pages.ts';

const SHARES = [0.24, 0.4, 0.36] as const;

/** A sheet of rules, worked for one body: of a whole method, or of the steps of one lesson. */
export interface RuleSheet extends WorkedMethod {
	/** The names of the steps; every step where there are none. */
	readonly steps?: readonly string[];
}

/** What a rule sheet says, as blocks of words. Throws BadInput for a step that the method does not have. */
const ruleBlocks = (sheet: RuleSheet, title: string): readonly TextBlock[] => {
	const { method, body, draft, speech, chosen } = sheet;
	const { paper } = speech.words;
	const steps = stepsOf(sheet, sheet.steps);
	const rows = steps.map((step) => {
		const { where, rule, worked, arithmetic } = explain(method, step.name, body, draft, speech, chosen);
		return [stepTitle(step, speech), `${where} ${rule}`, arithmetic ?? worked];
	});
	return [
		{ kind: 'title', text: title },
		{ kind: 'text', text: `${paper.workedFor({ what: method.name, body: body.name })}.` },
		...bodyBlocks(sheet, steps),
		{ kind: 'heading', text: paper.rules },
		...table([paper.step, paper.rule, paper.worked], SHARES, rows)
	];
};

/**
 * The rule sheet of a method or a lesson for one body: measurements, allowances, and each step's rule with its
 * arithmetic. Throws BadInput for a step that the method does not have. The same input gives the same bytes.
 */
export const ruleSheetPdf = (sheet: RuleSheet, options: SheetOptions): Promise<Uint8Array> =>
	wordsPdf(ruleBlocks(sheet, options.title), { ...options, speech: sheet.speech });
