import type { Body } from '#shared/body.ts';
import { placementSchema } from '#shared/placement.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { NO_DIAGNOSIS, type Diagnosis, type Misstep } from '#checker/missteps/misstep.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';

/** What probably went wrong at a placement that was wrong; nothing where it cannot be read. */
export const diagnosed = (
	method: Method,
	stepName: string,
	body: Body,
	drafted: Drafted,
	placement: unknown
): Diagnosis => {
	const parsed = placementSchema.safeParse(placement);
	return parsed.success ? diagnose(method, stepName, body, drafted, parsed.data) : NO_DIAGNOSIS;
};

/** A diagnosis without the missteps that are out of the question. */
export const among = (diagnosis: Diagnosis, possible: (misstep: Misstep) => boolean): Diagnosis => {
	if (diagnosis.kind === 'certain') return possible(diagnosis.misstep) ? diagnosis : NO_DIAGNOSIS;
	if (diagnosis.kind === 'none') return diagnosis;
	const [first, ...rest] = diagnosis.missteps.filter(possible);
	return first ? { kind: 'either', missteps: [first, ...rest] } : NO_DIAGNOSIS;
};

/** The stable note of a wrong answer: its misstep's where one is certain, else what was found wrong. */
export const noteOf = (diagnosis: Diagnosis, otherwise: string): string =>
	diagnosis.kind === 'certain' ? diagnosis.misstep.note : otherwise;
