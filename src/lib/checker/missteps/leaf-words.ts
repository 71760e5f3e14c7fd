import { englishIn } from '#shared/speech/english-for-now.ts';
import { the } from '#shared/speech/en/grammar.ts';
import { measurementOf } from '#shared/measurements.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import { allowanceOf, nounOf, type Method } from '#drafting/method.ts';

/** What an allowance is called: "the bust ease". */
export const allowanceWords = (method: Method, key: string): string =>
	the(allowanceOf(method, key, englishIn('cm').words.nouns));

/** What a line is called: "the shoulder", or of another method "the back's shoulder". */
export const lineWords = (method: Method, name: string): string =>
	the(nounOf(method, name, englishIn('cm').words.nouns));

/** What one length of a rule is called. */
export const leafWords = (leaf: Formula, method: Method): string => {
	switch (leaf.kind) {
		case 'measurement':
			return measurementOf(leaf.key).words;
		case 'allowance':
			return allowanceWords(method, leaf.key);
		case 'distance':
			return `the distance ${leaf.from}–${leaf.to}`;
		case 'length':
			return `the length of ${lineWords(method, leaf.line)}`;
		default:
			return 'the length';
	}
};
