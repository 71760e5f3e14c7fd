import type { Speech } from '#shared/speech/speech.ts';
import { warningWords, type Draft } from '#drafting/evaluate.ts';
import { wearJson, type CuredReport } from './wear-json.ts';
import { pathJson, placeJson, rounded } from './json-numbers.ts';

/** A draft as one line of JSON, in millimetres, with the checks of what is made of it. */
export const draftJson = (
	draft: Draft,
	body: string,
	speech: Speech,
	wear: readonly CuredReport[] = []
): string => {
	const points = Object.entries(draft.points).map(([name, point]) => [name, placeJson(point)] as const);
	const lines = Object.entries(draft.lines).map(
		([name, { path, length }]) => [name, { length: rounded(length), path: pathJson(path) }] as const
	);
	return JSON.stringify({
		method: draft.method,
		body,
		unit: 'mm',
		points: Object.fromEntries(points),
		lines: Object.fromEntries(lines),
		comparisons: Object.fromEntries(
			draft.comparisons.map(({ name, difference, within }) => [
				name,
				{ difference: rounded(difference), within }
			])
		),
		wear: wearJson(wear, speech),
		warnings: draft.warnings.map((each) => warningWords(each, speech))
	});
};
