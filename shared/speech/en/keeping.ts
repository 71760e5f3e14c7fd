import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the } from './grammar.ts';

/** What is kept in the browser, by name, and what is told of it where it cannot be kept or read back. */
export const keeping = (v: Voice) => ({
	keepsNothing:
		'This browser does not keep your work: its store is full or forbidden. You can go on from lesson to lesson, ' +
		'but what you draft now is lost when the page is closed or loaded again.',
	/** What is kept in the browser, by name. */
	settings: 'Your settings',
	bodies: 'Your own measurements',
	draftOf: ({ method, body }: { method: string; body: string | undefined }) =>
		`Your draft of ${method}${body === undefined ? '' : ` for ${body}`}`,
	choicesFor: ({ garment, body }: { garment: string; body: string }) =>
		`Your choices for ${garment}, for ${body}`,
	practised: 'What you practised',
	taped: ({ draft }: { draft: string }) => `What your tape read of ${draft}`,
	probes: 'What has stayed of the parts that you finished',
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
});
