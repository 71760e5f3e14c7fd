import type { Voice } from '../voice.ts';
import { within } from './grammar.ts';

/** How much of something is drafted. */
export interface Done {
	readonly done: number;
	readonly all: number;
}

/** What stands round every page: the frame, the contents, notices, titles. */
export const site = (v: Voice) => {
	const steps = ({ done, all }: Done): string => `${done === all ? '✓ ' : ''}${done} of ${all} steps`;
	return {
		title: ({ page }: { page: string }) => `${page} · Square Across`,

		skip: 'Skip to the content',
		main: 'Main',
		lessons: 'Lessons',
		practice: 'Practice',
		patterns: 'Patterns',
		measurements: 'Measurements',
		draftingFor: 'Drafting for',
		invented: ({ name }: { name: string }) => `${name} (invented)`,
		unit: 'Unit',
		inches: 'inches',

		homeTitle: 'Square Across: draft a pattern from your own measurements',
		homeAbout: 'Lessons in drafting garment patterns, step by step, from your own measurements.',
		opening: 'Draft a pattern from your own measurements',
		promise:
			'You place each point on dotted paper. Square Across works the same step from your numbers, tells you how ' +
			'near you came and which way you missed, and explains the rule. At the end you print the draft at true ' +
			'scale.',
		begin: ({ lesson }: { lesson: string }) => `Begin with: ${lesson}`,
		goOn: ({ lesson }: { lesson: string }) => `Go on with: ${lesson}`,
		noAccount: 'No account. What you measure stays on this device.',
		allDrafted: ({ name }: { name: string }) => `Every step is drafted for ${name}.`,
		whatNext: 'What you can do next:',
		seePatterns: 'See the patterns',
		draftAnother: 'Draft for another body',
		draftOwn: 'Draft for your own measurements',
		print: ({ draft }: { draft: string }) => `Print ${within(draft)}`,
		printOne: 'Print a draft',
		partLength: ({ lessons, steps: count, minutes }: { lessons: number; steps: Done; minutes: number }) =>
			`${v.plural(lessons, { one: `${lessons} lesson`, other: `${lessons} lessons` })} · ` +
			(count.all > 0 ? steps(count) : `${minutes} min`),
		steps,
		notNeeded: 'not needed for this body',
		minutes: ({ minutes }: { minutes: number }) => `${minutes} min`,
		imprint:
			'The class at Alder Row, the bodies named after birds and their numbers are invented. Drafting rules are ' +
			'common practice in dressmaking.',
		notices: 'Software of others in this app, with its licences',

		noSuchPage: 'This page does not exist',
		wentWrong: 'Something went wrong here',
		tryAgain: 'Try again',
		allLessons: 'All lessons',

		/** What own measurements are called that were given no name. */
		unnamed: 'My measurements'
	};
};
