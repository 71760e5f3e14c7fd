import type { Voice } from '../voice.ts';

/** What there is to look at beside the steps: the closed outline, the finished draft, the points and their distances, the end of a part, the draft on the first page. */
export const looking = (v: Voice) => {
	return {
		closed: ({ draft }: { draft: string }) => `${draft}: the outline is closed.`,
		bothHalves: 'Here you see both halves, opened at the centre line.',
		inOne: 'Here you see it whole.',
		toSheet: 'Back to the sheet',

		/** At the end of a part of the course. */
		goodFor: 'What this part was good for',
		next: 'What comes next',
		nextPart: ({ part, lesson }: { part: string; lesson: string }) => `${part}, beginning with: ${lesson}`,
		patternOf: ({ garment }: { garment: string }) => `The pattern page: ${garment}`,
		practise: 'Practise these rules on new bodies',

		/** The list of points, and the distance between any two. */
		pointsAre: 'Points on the sheet, counted from the corner',
		point: 'Point',
		across: 'Across',
		down: 'Down',
		linesAre: 'Lines on the sheet',
		line: 'Line',
		long: 'Length',
		fromPoint: 'From',
		toPoint: 'to',
		samePoint: 'Choose two different points.',
		closeList: 'Close the list',

		/** The draft on the first page. */
		livingTitle: 'Move a number, and the draft follows',
		livingAbout: 'Back and front block. Every point is worked out anew.',

		/** In bold how many steps are left, and what follows. */
		left: ({ left, all }: { left: number; all: number }): readonly [string, string] => [
			`${left} of ${all} steps are still to be drafted.`,
			' Here is where:'
		],
		leftIn: ({ left }: { left: number }) =>
			v.plural(left, { one: `${left} step left`, other: `${left} steps left` }),
		everyRight: ['Every step is right.', ' The draft is finished.'] as readonly [string, string],
		tally: ({
			mistakes,
			consequences
		}: {
			mistakes: number;
			consequences: number;
		}): readonly [string, string] => [
			`${v.plural(mistakes, { one: `${mistakes} mistake`, other: `${mistakes} mistakes` })}, ` +
				`${v.plural(consequences, { one: `${consequences} consequence`, other: `${consequences} consequences` })}.`,
			' A consequence is right from your own earlier mark, and costs nothing.'
		],
		/** No difference is worth showing. */
		near: 'No mark strays further than a sharp pencil would.',
		furthest: 'Where your pencil strayed furthest, in the order of drafting:',
		printDraft: 'Print the draft at true scale',
		differences: 'Differences',
		allSteps: ({ count }: { count: number }) => `All ${count} steps, one by one`,
		step: 'Step',
		verdict: 'Verdict',
		yourMark: 'Your mark, against the computed one',
		standing: {
			unfinished: 'not drafted',
			right: 'right',
			wrong: 'wrong',
			'not-valid': 'cannot be used',
			'cannot-tell': 'cannot tell',
			excused: 'excused',
			'our-fault': 'our fault',
			unchecked: 'not checked',
			kept: 'wrong, kept'
		},
		inLesson: ({ standing, step, lesson }: { standing: string; step: string; lesson: string }) =>
			`${standing}: ${step}, in the lesson ${lesson}`,
		fromOwn: ', from your own earlier mark',
		shown: ', drafted for you',
		/** Leads to the page on which paper drafts are checked. */
		checkPaper: 'Drafted on paper? Check it here',
		/** Leads to the pages of classes. */
		classes: 'A school’s classes: join yours, or teach'
	};
};
