import { mm } from '#shared/units.ts';
import { explain } from '#drafting/explain.ts';
import { bodyBlocks, stepsOf, stepTitle, type SheetOptions, type WorkedMethod } from './body-words.ts';
import { wordsPdf } from './file.ts';
import { table, type TextBlock } from './text-pages.ts';

const SHARES = [0.2, 0.45, 0.35] as const;
/** How high a card is at least: room for a sketch. */
const HIGH = mm(38);

/** What the cards say, as blocks of words. */
const cardBlocks = (work: WorkedMethod, title: string): readonly TextBlock[] => {
	const { method, body, draft, speech, chosen } = work;
	const { paper } = speech.words;
	const steps = stepsOf(work);
	const rows = steps.map((step, i) => {
		const { where, rule } = explain(method, step.name, body, draft, speech, chosen);
		return [`${i + 1}. ${stepTitle(step, speech)}`, `${where} ${rule}`, ''];
	});
	return [
		{ kind: 'title', text: title },
		{ kind: 'text', text: `${paper.workedFor({ what: method.name, body: body.name })}. ${paper.cutCards}` },
		...bodyBlocks(work, steps),
		...table([paper.step, paper.rule, paper.worked], SHARES, rows, HIGH)
	];
};

/** A card for each step of a draft, to be cut apart: its rule, and room for the number and a sketch. The same input gives the same bytes. */
export const stepCardsPdf = (work: WorkedMethod, options: SheetOptions): Promise<Uint8Array> =>
	wordsPdf(cardBlocks(work, options.title), { ...options, speech: work.speech });
