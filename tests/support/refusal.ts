import { BadInput, ruleWords, slipWords } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { english } from './speech.ts';

const badInputOf = (run: () => unknown): BadInput => {
	try {
		run();
	} catch (error) {
		if (error instanceof BadInput) return error;
		throw error;
	}
	throw new Error('it was accepted');
};

/** What is said of the bad input that a call throws, "place: rule"; anything else that it throws, or a call that goes well, is a failure. */
export const refusalOf = (run: () => unknown, speech: Speech = english): string =>
	slipWords(badInputOf(run), speech);

/** The same without the place: what stands below a field. */
export const ruleOf = (run: () => unknown, speech: Speech = english): string =>
	ruleWords(badInputOf(run), speech);
