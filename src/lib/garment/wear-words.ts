import type { SaidChange, SaidSpoilt } from '#shared/speech/en/wear.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { reasonWords } from '#drafting/evaluate.ts';
import type { Change, Cure, Spoilt } from './cure.ts';
import type { WearReport } from './wear.ts';

/** Changes as sentences take them. */
export const saidChanges = (
	changes: readonly Change[],
	{ words: { nouns } }: Speech
): readonly SaidChange[] =>
	changes.map(({ allowance, from, to }) => ({ noun: nouns.allowance(allowance), from, to }));

const saidSpoilt = (spoilt: Spoilt, speech: Speech): SaidSpoilt =>
	spoilt.kind === 'refusal' ? { kind: 'refusal', label: reasonWords(spoilt.refusal, speech) } : spoilt;

/** What a check found, in one sentence: that it fails and what that means, what has to be measured, or its number. */
export const wearWords = (report: WearReport, { words: { wear } }: Speech): string => {
	const { label, state, needs, value = NaN } = report;
	if (state === 'not-known') return `${label}: ${wear.notKnown({ needs })}`;
	return state === 'fails'
		? wear.fails({ ...report, value })
		: `${label}: ${wear.number({ ...report, value })}`;
};

/** What would put a check right, or why nothing does, in one sentence. */
export const cureWords = (cure: Cure, { label }: Pick<WearReport, 'label'>, speech: Speech): string => {
	const { wear } = speech.words;
	if (cure.kind === 'none') return wear.none;
	const changes = saidChanges(cure.changes, speech);
	if (cure.kind === 'cure') return wear.cure({ changes });
	if (cure.kind === 'too-far') return wear.tooFar({ changes, odds: cure.odds });
	return wear.odds({ label, changes, spoilt: saidSpoilt(cure.spoilt, speech) });
};
