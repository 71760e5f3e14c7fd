import type { Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the, The } from './grammar.ts';

/** The page on which a draft on paper is checked, whichever way it is measured. */
export const onPaper = (v: Voice) => ({
	page: ({ draft }: { draft: string }) => `Check a paper draft: ${draft}`,
	heading: 'Check a paper draft',
	about:
		'You drafted on paper. Measure where your points lie: each is compared with its computed place, ' +
		'and what went wrong is explained, as on the screen.',
	draft: 'Draft',
	body: 'Drafted for',
	way: 'How it is measured',
	ways: { tape: 'By tape', photograph: 'By photograph' },
	waiting: 'One moment …',
	notCome: 'This part of the page did not come. Look at the connection, then load the page again.',
	found: 'What was found',
	near: 'How near a point must come',
	picture: 'The computed draft with your points over it',
	computed: 'computed',
	yours: 'yours, with the circle in which it lies',
	tally: ({ right, open, wrong }: { right: number; open: number; wrong: number }) =>
		v.list([
			v.plural(right, { one: '1 point is right', other: `${v.number(right)} points are right` }),
			...(open > 0
				? [
						v.plural(open, {
							one: '1 is too near the limit to tell',
							other: `${v.number(open)} are too near the limit to tell`
						})
					]
				: []),
			...(wrong > 0
				? [v.plural(wrong, { one: '1 is not right', other: `${v.number(wrong)} are not right` })]
				: [])
		]) + '.',
	allowed: ({ within }: { within: Mm }) =>
		`A point may lie ${v.small(within) ?? ''} from its place. What is measured has an error of its own: where that leaves open which it is, nothing is said to be right or wrong.`,
	point: 'Point',
	against: 'Against the computed place',
	error: 'Its own error',
	within: ({ error }: { error: Mm }) => `± ${v.small(error) ?? 'a hair'}`,
	all: ({ count }: { count: number }) => `All ${v.number(count)} points, one by one`,
	right: ({ steps }: { steps: readonly Noun[] }) =>
		steps.length === 1 && steps[0] ? `${The(steps[0])} is right.` : `Right: ${v.list(steps.map(the))}.`,
	toSheet: 'Put them onto the sheet',
	aboutSheet:
		'Your points become your own marks in this draft, and you go on from them on the screen. What is wrong, or cannot be told, stays as it is until you change it.',
	replaces: ({ count }: { count: number }) =>
		v.plural(count, {
			one: '1 step of this draft stands on your sheet already; where a measured point has its name, it is replaced.',
			other: `${v.number(count)} steps of this draft stand on your sheet already; where a measured point has their name, they are replaced.`
		}),
	handsIn:
		'This draft is set by your class: your points are handed in with it, and nothing else of your paper.',
	putDown: ({ count }: { count: number }) =>
		v.plural(count, {
			one: '1 point stands on your sheet.',
			other: `${v.number(count)} points stand on your sheet.`
		}),
	goOn: 'Go on from them on the screen'
});
