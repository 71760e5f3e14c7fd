import { onOneLine } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { CuredReport } from '#exports/table/wear-json.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { cm, nounWords, table } from './table.ts';
import { wearTable } from './wear.ts';

/** A draft as a table for reading, in centimetres. */
export const draftTable = (
	method: Method,
	draft: Draft,
	body: string,
	speech: Speech,
	wear: readonly CuredReport[]
): string => {
	const { command } = speech.words;
	const labels = new Map(method.steps.map((step) => [step.name, nounWords(step.label)]));
	const label = (name: string): string => labels.get(name) ?? '';
	const points = Object.entries(draft.points).map(([name, { x, y }]) => [
		name,
		cm(x, speech),
		cm(y, speech),
		label(name)
	]);
	const lines = Object.entries(draft.lines).map(([name, { length }]) => [
		name,
		cm(length, speech),
		label(name)
	]);
	return [
		`${command.draftTitle({ name: method.name, body: onOneLine(body) })}\n`,
		table([[...command.pointHeadings, ''], ...points]),
		table([[...command.lineHeadings, ''], ...lines]),
		...(wear.length > 0 ? [`${speech.words.wear.wear}\n${wearTable(wear, speech)}`] : [])
	].join('\n');
};
