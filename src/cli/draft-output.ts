import { the } from '#shared/speech/en/grammar.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { cm, table } from './table.ts';

/** A draft as a table for reading, in centimetres. */
export const draftTable = (method: Method, draft: Draft, body: string): string => {
	const labels = new Map(method.steps.map((step) => [step.name, the(step.label)]));
	const label = (name: string): string => labels.get(name) ?? '';
	const points = Object.entries(draft.points).map(([name, { x, y }]) => [name, cm(x), cm(y), label(name)]);
	const lines = Object.entries(draft.lines).map(([name, { length }]) => [name, cm(length), label(name)]);
	return [
		`${method.name} for ${body}, in cm from the corner\n`,
		table([['point', 'across', 'down', ''], ...points]),
		table([['line', 'length', ''], ...lines])
	].join('\n');
};
