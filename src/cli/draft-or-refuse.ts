import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { checkComplete, reasons } from './refusals.ts';

/** The draft of a body. Throws BadInput at `place` where it cannot be drafted, with every reason. */
export const draftOrRefuse = (method: Method, body: Body, place: string, speech: Speech): Draft => {
	checkComplete(method, body, place);
	const evaluation = evaluate(method, body);
	if (evaluation.kind === 'refused') throw new BadInput(place, reasons(evaluation.refusals, body, speech));
	return evaluation.draft;
};
