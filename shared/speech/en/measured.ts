import type { Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the } from './grammar.ts';

/** What is said of a place that was measured, and lies too near the edge of what is allowed for its own error. */
export const measured = (v: Voice) => ({
	cannotTell: ({ step }: { step: Noun }) => `It cannot be told whether ${the(step)} is right.`,
	/** The error of what it was worked from counts with its own. */
	again: ({ error }: { error: Mm }) =>
		`The measuring leaves ${v.small(error) ?? 'a hair'} open, too much to tell. Measure it again: it costs nothing.`,
	asMeasured: ({ nearness }: { nearness: string }) => `As it was measured: ${nearness}`,
	toMeasure: 'to be measured again',
	someToMeasure: ({ count }: { count: number }) =>
		v.plural(count, {
			one: '1 step is to be measured again',
			other: `${v.number(count)} steps are to be measured again`
		})
});
