import type { Voice } from '../voice.ts';

/** What is said of learning platforms, and to whoever comes from one. */
export const platform = (v: Voice) => ({
	opensApart: 'This opens in a tab of its own.',
	openApart: 'Open Square Across',
	platforms: 'Learning platforms',
	platformsAbout:
		'Whoever follows a link of a learning platform (LTI 1.3) comes into the class of its course, without a passphrase of their own; ' +
		'its teachers become teachers here. Enter there:',
	loginAt: 'Login address',
	launchAt: 'Redirect and target address',
	keysAt: 'Keyset address of this site',
	chooseAt: 'Deep linking address',
	platformGives: 'And here, what the platform says of itself:',
	issuer: 'Issuer (platform ID)',
	client: 'Client ID',
	deployment: 'Deployment ID',
	authorize: 'Authentication request address',
	keys: 'Public keyset address',
	token: 'Access token address, for marks (may be left empty)',
	addPlatform: 'Add the platform',
	removePlatform: 'Remove',

	chooseLinks: 'What is linked to?',
	chooseAssignments: 'Set for this class',
	noneToChoose: 'Nothing is set yet. Open the class, set something there, and choose it here afterwards.',
	chooseLessons: 'Lessons to read and try, without a mark',
	allLessons: 'All lessons',
	putThere: 'Put it into the course',
	goBack: 'Back to the learning platform',

	comment: ({ mark, outOf, mistakes }: { mark: number; outOf: number; mistakes: number }) =>
		`${v.number(mark)} of ${v.number(outOf)}, ${v.plural(mistakes, { one: '1 mistake', other: `${v.number(mistakes)} mistakes` })}`,
	sendings: 'Marks for the learning platform',
	arrived: ({ count }: { count: number }) =>
		v.plural(count, {
			one: '1 mark has arrived there.',
			other: `${v.number(count)} marks have arrived there.`
		}),
	allArrived: 'Nothing is waiting.',
	waits: 'waiting',
	notTaken: 'not taken',
	sendAgain: 'Send again',
	/** What came of the last try, by its outcome; `status` is the number of the platform's answer. */
	outcome: {
		answered: ({ status }: { status: number | null }) =>
			`The platform did not take it (answer ${status ?? '?'}).`,
		noAnswer: () => 'The platform did not answer.',
		noToken: () =>
			'The platform gives no leave to send marks: look at the access token address and the keyset address.',
		notAllowed: () => 'The platform does not allow marks to be sent: its keeper can switch that on.',
		noColumn: () => 'The platform has no column for this assignment.'
	} as Readonly<Record<string, (values: { readonly status: number | null }) => string>>
});
