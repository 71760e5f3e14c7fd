import { formerKeys, measurementNow } from '#shared/measurements.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { complain } from './output.ts';

/** What was told already: a table of a thousand rows is told of its heading once. */
const told = new Set<string>();

/** Tells on the error stream, once, that a measurement is read by the name that it had. */
export const tellFormer = (input: unknown, place: string, { words }: Speech): void => {
	if (typeof input !== 'object' || input === null) return;
	for (const key of formerKeys(input)) {
		if (told.has(key)) continue;
		told.add(key);
		complain(`${place}: ${words.command.formerName({ key, now: measurementNow(key) })}`);
	}
};
