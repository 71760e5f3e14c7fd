import { Refused } from '../refused.ts';
import { isTaken } from '../store/store.ts';

/** Writes a person under a name that nobody else of their class, or no other teacher, may have. Throws Refused where somebody has it. */
export const orTaken = async <T>(writing: Promise<T>): Promise<T> => {
	try {
		return await writing;
	} catch (problem) {
		if (isTaken(problem)) throw new Refused('nameTaken');
		throw problem;
	}
};
