import type { Given } from '#shared/hand-in.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import { theirMisstepWords } from '#checker/missteps/words.ts';
import type { Exercise } from '#practice/exercises/exercise.ts';

/** What went wrong in words, as it was offered at a point of a finished draft; undefined where none was chosen. */
const choiceWords = (
	asked: Exercise,
	point: string,
	choice: string | undefined,
	speech: Speech
): string | undefined => {
	if (asked.kind !== 'find-wrong') return undefined;
	const suspect = asked.suspects.find(({ step }) => step === point);
	const chosen = suspect?.choices.find(({ note }) => note === choice);
	return chosen && theirMisstepWords(chosen, speech, false);
};

/** What a learner answered, in words, as their teacher reads it. */
export const answerWords = (asked: Exercise, given: Given, speech: Speech): string => {
	const words = speech.words.practising;
	switch (given.kind) {
		case 'find-start':
			return words.saidPoint(given.answer);
		case 'next-point': {
			const { answer } = given;
			if (answer.kind !== 'point') return '';
			const [across, down] = answer.at;
			return words.saidPlace({ across: mm(across), down: mm(down) });
		}
		case 'find-wrong': {
			const { point, choice } = given.answer;
			return words.saidWrong({ point, did: choiceWords(asked, point, choice, speech) });
		}
		case 'work-number':
			return words.saidNumber(given.answer);
		case 'true-seams': {
			const { longer, by, unit, moved } = given.answer;
			return words.saidSeams({ first: longer === 'first', by, unit, moved: moved !== undefined });
		}
	}
};
