import { BadInput, slipWords } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { complain } from './output.ts';

/** Exit code for a command, file or value that a person can put right, and for a body that cannot be drafted. */
export const BAD_USE = 2;

/** A command: its words, and the speech that all of it is said in. Throws BadInput for what a person can put right. */
export type Command = (words: readonly string[], speech: Speech) => Promise<void>;

/** Runs a command and gives its exit code: 0 done, 2 for what a person can put right, told in one line. */
export const exitCodeOf = async (speech: Speech, run: () => Promise<void>): Promise<number> => {
	try {
		await run();
		return 0;
	} catch (problem) {
		if (!(problem instanceof BadInput)) throw problem;
		complain(slipWords(problem, speech));
		return BAD_USE;
	}
};
