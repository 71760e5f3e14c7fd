import type { Body } from '#shared/body.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { CuredReport } from '#exports/table/wear-json.ts';
import { cureOf } from '#garment/cure.ts';
import type { Garment } from '#garment/garment.ts';
import type { Choices } from '#garment/sewn.ts';
import type { WearReport } from '#garment/wear.ts';
import { cureWords, wearWords } from '#garment/wear-words.ts';

/** Wear checks, each that fails with what would put it right. */
export const withCures = (
	reports: readonly WearReport[],
	garment: Garment,
	body: Body,
	choices: Choices
): readonly CuredReport[] =>
	reports.map((report) => {
		// A draft may be had with fewer measurements than its garment.
		const asked = report.state === 'fails' && garment.measurements.every((key) => body.measurements[key]);
		return asked ? { report, cure: cureOf(garment, body, choices, report.name) } : { report };
	});

const SIGNS = { holds: '✓', fails: '✗', 'not-known': '?' } as const;

/** Wear checks for reading, a line each; what would put one right stands below it. */
export const wearTable = (checks: readonly CuredReport[], speech: Speech): string =>
	checks
		.map(({ report, cure }) => {
			const found = `${SIGNS[report.state]} ${wearWords(report, speech)}\n`;
			return cure ? `${found}  ${cureWords(cure, report, speech)}\n` : found;
		})
		.join('');
