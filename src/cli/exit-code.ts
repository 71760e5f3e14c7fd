import { BadInput, slipWords } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { complain } from './output.ts';

/** Exit code for a command, file or value that a person can put right, and for a body that cannot be drafted. */
export const BAD_USE = 2;

/** Runs a command and gives its exit code: 0 done, 2 for what a person can put right, told in one line. */
export const exitCodeOf = async (run: () => Promise<void>): Promise<number> => {
	try {
		await run();
		return 0;
	} catch (problem) {
		if (!(problem instanceof BadInput)) throw problem;
		complain(slipWords(problem, englishIn('cm')));
		return BAD_USE;
	}
};
