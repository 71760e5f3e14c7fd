import type { Speech } from '#shared/speech/speech.ts';
import { UNSPOKEN } from '#shared/tolerances.ts';
import type { Finding } from '#shared/verdict.ts';

/** The differences of one step for a table: how far off and which way, or how far a line strays and how much longer it is. */
export const differenceWords = (
	findings: readonly Finding[],
	{ words: { verdicts: say } }: Speech
): string => {
	const parts = findings.flatMap((finding) => {
		if (finding.aspect === 'place') return finding.offBy < UNSPOKEN ? [] : [say.way(finding)];
		if (finding.aspect === 'course') return finding.away < UNSPOKEN ? [] : [say.strays(finding)];
		if (finding.aspect !== 'length' || Math.abs(finding.by) < UNSPOKEN) return [];
		return [say.differs(finding)];
	});
	return parts.join(', ') || say.noDifference;
};
