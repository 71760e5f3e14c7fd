import type { Speech } from '#shared/speech/speech.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { SeamReport } from '#garment/seams.ts';
import { patternWarningWords, seamWarnings } from '#garment/sewn.ts';
import { wearJson, type CuredReport } from './wear-json.ts';
import { pathJson, placeJson, rounded } from './json-numbers.ts';

/** What the garment that is made of a draft shows of it: seams that can be measured, checks with their cures. */
export interface MadeOf {
	readonly seams: readonly SeamReport[];
	readonly wear: readonly CuredReport[];
}

export const NOTHING_MADE: MadeOf = { seams: [], wear: [] };

/** A draft as one line of JSON, in millimetres, with what is shown by the garment that is made of it. */
export const draftJson = (
	draft: Draft,
	body: string,
	speech: Speech,
	{ seams, wear }: MadeOf = NOTHING_MADE
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
			seams.map(({ name, difference, within }) => [name, { difference: rounded(difference), within }])
		),
		wear: wearJson(wear, speech),
		warnings: [...draft.warnings, ...seamWarnings(seams)].map((each) => patternWarningWords(each, speech))
	});
};
