import type { Diagnosis, Misstep } from '#checker/missteps/misstep.ts';

/** What a diagnosis tells, the likeliest first: none, one where it is certain, up to three where it is not. */
export const toldOf = (diagnosis: Diagnosis): readonly Misstep[] => {
	if (diagnosis.kind === 'certain') return [diagnosis.misstep];
	return diagnosis.kind === 'either' ? diagnosis.missteps : [];
};

/** The notes of a diagnosis, the likeliest first. */
export const notesOf = (diagnosis: Diagnosis): readonly string[] => toldOf(diagnosis).map(({ note }) => note);
