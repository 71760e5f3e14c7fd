import type { Diagnosis } from '#checker/missteps/misstep.ts';

/** The notes of a diagnosis, the likeliest first: none, one where it is certain, several for "either ... or ...". */
export const notesOf = (diagnosis: Diagnosis): readonly string[] => {
	if (diagnosis.kind === 'certain') return [diagnosis.misstep.note];
	return diagnosis.kind === 'either' ? diagnosis.missteps.map(({ note }) => note) : [];
};
