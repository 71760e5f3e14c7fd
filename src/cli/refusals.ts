import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { notTaken, isMeasurementKey } from '#shared/measurements.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { refusalWords, type Refusal } from '#drafting/evaluate.ts';
import type { Wanted } from './body-table.ts';

/** Throws BadInput at `place` where the body lacks a measurement that a method or a garment needs. */
export const checkComplete = (
	{ id, measurements }: Pick<Wanted, 'id' | 'measurements'>,
	body: Body,
	place: string
): void => {
	const missing = notTaken(measurements, body);
	if (missing.length > 0)
		throw new BadInput(
			`${place}: ${missing.join(', ')}`,
			message('command', 'missing', { id, count: missing.length })
		);
};

/** Each failing rule in a sentence that names both measurements and their values, as the body's file writes them. */
export const reasons = (refusals: readonly Refusal[], body: Body, said: Speech): Message => {
	const speech = said.inUnit(body.unit);
	const valued = (key: string): Noun => {
		const length = isMeasurementKey(key) ? body.measurements[key] : undefined;
		return { name: length === undefined ? key : `${key} (${speech.length(length)})` };
	};
	return message('command', 'refused', {
		reasons: refusals.map((refusal) => refusalWords(refusal, speech, valued))
	});
};
