import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the, within } from './grammar.ts';

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
		allLessons: 'All lessons',

		keepsNothing:
			'This browser does not keep your work: its store is full or forbidden. You can go on from lesson to lesson, ' +
			'but what you draft now is lost when the page is closed or loaded again.',
		/** What is kept in the browser, by name. */
		settings: 'Your settings',
		bodies: 'Your own measurements',
		/** What own measurements are called that were given no name. */
		unnamed: 'My measurements',
		draftOf: ({ method, body }: { method: string; body: string | undefined }) =>
			`Your draft of ${method}${body === undefined ? '' : ` for ${body}`}`,
		choicesFor: ({ garment, body }: { garment: string; body: string }) =>
			`Your choices for ${garment}, for ${body}`,
		practised: 'What you practised',
		practiceSet: 'Your practice set',
		partsOf: ({ what, parts }: { what: string; parts: readonly string[] }) => `${what}: ${v.list(parts)}`,
		called: ({ label }: { label: Noun }) => the(label),
		bodyNumber: ({ number }: { number: number }) => `number ${number}`,
		/** Why it could not be read: the place in it, and what reading it gave. */
		breaksRule: ({ place, rule }: { place: string; rule: string }) => `${place || 'the whole'}: ${rule}`,
		unreadable: ({ told }: { told: string }) => told,

		/** Follows what could not be read, in bold. */
		notReadBack: ({ reason }: { reason: string }) => ` could not be read back (${reason}).`,
		/** Before and after the name that it is kept under. */
		staysAs: [
			'The browser’s store has no room to set it aside, so it stays where it is, as ',
			', and nothing new is kept in its place. Save it as a file, then remove it from this browser.'
		] as readonly [string, string],
		setAsideAs: ['Nothing was thrown away: it was set aside in this browser as ', '.'] as readonly [
			string,
			string
		],
		/** The one measurement that was renamed. */
		renamed:
			'In your saved measurements, back width is called shoulder width now. It is the same measurement, from shoulder point to shoulder point, and its number is unchanged.',
		restIsHere: 'Everything else of it is here.',
		saveAsFile: 'Save it as a file',
		remove: 'Remove it',
		close: 'Close'
	};
};
