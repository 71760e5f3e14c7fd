import type { Override } from '#shared/remark.ts';
import type { Speech } from '#shared/speech/speech.ts';

/** What counts of one step of what was handed in. */
export interface Counted {
	readonly step: string;
	/** The judge's mark. */
	readonly mark: number;
	readonly tries: number;
	readonly help: number;
}

/** What a step or an exercise counts, as a table shows it: with a star where a teacher gave the mark, and a dash where there is none. */
export const markWords = (
	counted: Counted | undefined,
	overrides: readonly Override[],
	speech: Speech
): string => {
	const given = overrides.findLast(({ back }) => back === null);
	const mark = given ?? counted;
	return mark ? `${speech.number(mark.mark)}${given ? ' *' : ''}` : '–';
};
