import type { Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';

/** What is printed on sheets of markers, and what those are called. */
export const markers = (v: Voice) => ({
	title: 'Markers for a photograph',
	card: ({ number }: { number: number }) => `Card ${v.number(number)}`,
	cutOut:
		'Cut the four cards out along the lines. Lay one at each corner of the drawing, flat and beside every line.',
	cutOutBetween:
		'Four more cards: lay one half way along each side of the drawing. With them it is seen whether the paper bulges.',
	drawWithin: 'Draw between the markers, or lay a paper piece there. All of them must be seen.',
	check: ({ length }: { length: Mm }) =>
		`Print at 100 % (actual size). This line should measure ${v.length(length)}: if it does not, type what it measures.`
});
