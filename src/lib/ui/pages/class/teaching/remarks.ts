import type { Speech } from '#shared/speech/speech.ts';

/** What counts of one step of what was handed in. */
export interface Counted {
	readonly step: string;
	/** The judge's mark. */
	readonly mark: number;
	readonly tries: number;
	readonly help: number;
}

/** A mark that a teacher gave in its place. */
export interface Given {
	readonly id: string;
	readonly method: string;
	readonly step: string;
	readonly mark: number;
	readonly reason: string;
	readonly by: string | null;
	readonly at: number;
	/** When it was taken back; null while it holds. */
	readonly back: number | null;
}

/** What a teacher wrote at a step. */
export interface Written {
	readonly id: string;
	readonly method: string;
	readonly step: string;
	readonly text: string;
	readonly by: string | null;
	readonly at: number;
}

/** What a step or an exercise counts, as a table shows it: with a star where a teacher gave the mark, and a dash where there is none. */
export const markWords = (
	counted: Counted | undefined,
	overrides: readonly Given[],
	speech: Speech
): string => {
	const given = overrides.findLast(({ back }) => back === null);
	const mark = given ?? counted;
	return mark ? `${speech.number(mark.mark)}${given ? ' *' : ''}` : '–';
};
