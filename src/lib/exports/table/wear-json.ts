import { cureWords, wearWords } from '#garment/wear-words.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Cure } from '#garment/cure.ts';
import type { WearReport } from '#garment/wear.ts';
import { rounded } from './json-numbers.ts';

/** A wear check with what would put it right, where that was looked for. */
export interface CuredReport {
	readonly report: WearReport;
	readonly cure?: Cure | undefined;
}

const orNull = (value: number | undefined): number | null => (value === undefined ? null : rounded(value));

const cureJson = (cure: Cure, report: WearReport, speech: Speech): object => ({
	kind: cure.kind,
	changes:
		cure.kind === 'none'
			? []
			: cure.changes.map(({ allowance: { key }, from, to }) => ({
					allowance: key,
					from: rounded(from),
					to: rounded(to)
				})),
	words: cureWords(cure, report, speech)
});

/** Wear checks as JSON holds them: millimetres, degrees or a plain number; what is not known is null. */
export const wearJson = (checks: readonly CuredReport[], speech: Speech): readonly object[] =>
	checks.map(({ report, cure }) => ({
		name: report.name,
		label: report.label,
		kind: report.kind,
		value: orNull(report.value),
		least: orNull(report.least),
		most: orNull(report.most),
		state: report.state,
		needs: report.needs,
		cure: cure ? cureJson(cure, report, speech) : null,
		words: wearWords(report, speech)
	}));
