import { LOCALES } from '../language.ts';
import type { Voice } from '../voice.ts';

/** What is said of assignments: how they are set, handed in and marked. */
export const handing = (v: Voice) => {
	const time = (at: number): string =>
		new Intl.DateTimeFormat(LOCALES[v.language], { dateStyle: 'medium', timeStyle: 'short' }).format(at);
	const steps = (count: number): string => v.plural(count, { one: '1 step', other: `${count} steps` });
	return {
		assignments: 'Set for the class',
		none: 'Nothing is set yet.',
		set: 'Set something',
		setIt: 'Set it for the class',
		called: 'What it is called',
		lessons: 'Lessons',
		lessonsAbout: 'Learners draft the steps of these lessons on the usual desk, and every mark is handed in.',
		chosen: ({ count }: { count: number }) => v.plural(count, { one: '1 chosen', other: `${count} chosen` }),
		onlySteps: 'Only some steps of the one lesson chosen',
		from: 'From step',
		to: 'to step',
		forWhom: 'Drafted for',
		oneBody: 'one invented body, the same for all',
		eachBody: 'an invented body of each learner’s own, so that nobody can copy numbers',
		ownBody: 'each learner’s own body; their measurements are handed in only if they agree',
		followThrough: 'What is right only from an earlier slip',
		share: { full: 'counts in full', half: 'counts half', none: 'does not count' },
		attempts: 'Tries at a step (empty: as many as they like)',
		wrongCost: 'What a wrong try takes, in hundredths of a step',
		hintCost: 'What each rung of help takes, in hundredths of a step',
		opens: 'Opens (empty: at once)',
		closes: 'Closes (empty: stays open)',
		more: 'Marking and times',
		opensAt: ({ at }: { at: number }) => `opens ${time(at)}`,
		closesAt: ({ at }: { at: number }) => `until ${time(at)}`,
		closedAt: ({ at }: { at: number }) => `closed ${time(at)}`,
		stays: 'stays open',
		preview: 'See it as a learner',
		previewed: 'This is how a learner sees it. Nothing is handed in.',
		take: 'Take it away',
		reallyTake: 'Yes, take it away with all that was handed in',

		yourWork: 'Your work',
		nothingSet: 'Your teacher has set nothing yet.',
		start: 'Begin',
		goOn: 'Go on',
		mark: ({ mark, outOf }: { mark: number; outOf: number }) => `${v.number(mark)} of ${v.number(outOf)}`,
		markSoFar: ({ mark, outOf }: { mark: number; outOf: number }) =>
			`Marked so far: ${v.number(mark)} of ${v.number(outOf)}`,
		toWork: 'All your work',
		chooseLesson: 'Choose a lesson to draft in.',
		steps: ({ count }: { count: number }) => steps(count),
		draftedFor: ({ name }: { name: string }) => `You draft for ${name}, an invented body.`,
		draftedForOwn: 'You draft for your own measurements.',
		consent: 'This is drafted for your own body',
		consentAbout:
			'To mark it, the class server needs the measurements that you draft with. They go to your teacher’s server and ' +
			'nowhere else; your teacher sees your draft. You find them among all that is kept of you, and they go when you remove it.',
		consentGive: 'Hand in these measurements and begin',
		whichBody: 'Your measurements',
		noOwnBody:
			'No measurements of yours are on this device yet. Take them first, on the page of measurements.',
		toMeasurements: 'Measurements',

		saved: 'Saved',
		waiting: ({ count }: { count: number }) => `Waiting (${count})`,
		receipt: ({ number, at }: { number: number; at: number }) => `receipt ${number}, ${time(at)}`,
		noReceipt: 'nothing handed in yet',
		away: 'The server does not answer. Go on drafting: it is sent by itself as soon as it can be.',
		signInAgain: 'You are no longer signed in. Sign in at another page of this site; then it is sent.',
		notKept: 'This browser keeps nothing: leave the page open until everything is saved.',
		putAside: ({ count }: { count: number }) =>
			v.plural(count, {
				one: '1 mark could not be taken by the server. It is kept here; tell your teacher.',
				other: `${count} marks could not be taken by the server. They are kept here; tell your teacher.`
			}),
		ended: 'It is closed: what you do now is kept and does not count.',

		learner: 'Learner',
		markHeading: 'Mark',
		receipts: 'Handed in',
		late: ({ count }: { count: number }) => `${count} late`,
		nothing: 'nothing yet'
	};
};
