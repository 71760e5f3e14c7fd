import type { Misdone } from '#shared/speech/misdone.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Diagnosis, Misstep, Slip } from './misstep.ts';

type Say = (...values: readonly unknown[]) => Misdone;

/** What was done, and the rule that it is held against. A slip's values are those of its own words, which `slip` sees to. */
export const misdoneIn = ({ key, values }: Slip, { words }: Speech): Misdone =>
	(words.missteps.slips[key] as Say)(...values);

/** A misstep told to whoever made it: "You took half of the bust; the rule is a quarter." */
export const misstepWords = ({ slips }: Pick<Misstep, 'slips'>, speech: Speech): string =>
	slips.map((each) => speech.words.missteps.yours(misdoneIn(each, speech))).join(' ');

/** A misstep of somebody else: "They took half of the bust", and the rule that it is held against where that may be told. */
export const theirMisstepWords = (
	{ slips }: Pick<Misstep, 'slips'>,
	speech: Speech,
	withRule: boolean
): string =>
	slips
		.map((each) => {
			const { did, rule } = misdoneIn(each, speech);
			return speech.words.missteps.theirs(withRule && rule !== undefined ? { did, rule } : { did });
		})
		.join(' ');

/**
 * A diagnosis in the learner's words: one sentence, "It would lie there if you ..." where only its place speaks for it, "Perhaps you ..."
 * where one thing is likely and not certain, "Either you ... or you ..." for several, nothing for none.
 */
export const diagnosisWords = (diagnosis: Diagnosis, speech: Speech): string => {
	if (diagnosis.kind === 'none') return '';
	const { either, perhaps, wouldLie } = speech.words.missteps;
	const onlyPlace = diagnosis.seen === 'place';
	const all = ({ slips }: Misstep) => slips.map((each) => misdoneIn(each, speech));
	if (diagnosis.kind === 'certain')
		return onlyPlace ? wouldLie([all(diagnosis.misstep)]) : misstepWords(diagnosis.misstep, speech);
	const [first, second] = diagnosis.missteps;
	if (!second) return perhaps(all(first));
	return onlyPlace ? wouldLie(diagnosis.missteps.map(all)) : either(diagnosis.missteps.map(all));
};
