import type { Unit } from '#shared/units.ts';
import { mm } from '#shared/units.ts';
import { UNSPOKEN } from '#shared/tolerances.ts';
import type { Finding } from '#shared/verdict.ts';
import { smallWords, wayWords } from '#checker/words.ts';

/** The differences of one step for a table: how far off and which way, or how far a line strays and how much longer it is. */
export const differenceWords = (findings: readonly Finding[], unit: Unit): string => {
	const parts = findings.flatMap((finding) => {
		if (finding.aspect === 'place')
			return finding.offBy < UNSPOKEN ? [] : [wayWords(finding.across, finding.down, unit)];
		if (finding.aspect === 'course')
			return finding.away < UNSPOKEN ? [] : [`strays ${smallWords(finding.away, unit)}`];
		if (finding.aspect !== 'length' || Math.abs(finding.by) < UNSPOKEN) return [];
		return [`${smallWords(mm(Math.abs(finding.by)), unit)} ${finding.by > 0 ? 'longer' : 'shorter'}`];
	});
	return parts.join(', ') || 'no difference to speak of';
};
