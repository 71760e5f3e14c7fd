import { chosenWords } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import { measuredWords } from '#shared/measured-words.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { GivenLength } from '#drafting/explain.ts';
import type { Method } from '#drafting/method.ts';

/** A number under its name. */
export interface NamedNumber {
	readonly words: string;
	readonly value: string;
}

/** Which numbers are shown. */
interface Wanted {
	readonly measurements: readonly MeasurementKey[];
	readonly allowances: readonly string[];
	readonly givens: readonly GivenLength[];
}

/** A body's measurements, its allowances or the usual ones, and lengths taken from the draft, each under its name. */
export const namedNumbers = (
	method: Method,
	body: Body,
	speech: Speech,
	{ measurements, allowances, givens }: Wanted
): readonly NamedNumber[] => {
	const { nouns } = speech.words;
	const named = (noun: Noun, value: string): NamedNumber => ({ words: nouns.title(noun), value });
	return [
		...measurements.map((key) => named(nouns.measurement(key), measuredWords(key, body, speech))),
		...method.allowances
			.filter(({ key }) => allowances.includes(key))
			.map((each) => ({
				words: nouns.title(nouns.allowance(each)),
				value: chosenWords(each, body.allowances[each.key] ?? each.default, speech)
			})),
		...givens.map(({ noun, length }) => named(noun, speech.length(length)))
	];
};
