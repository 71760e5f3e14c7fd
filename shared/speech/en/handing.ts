import type { Mm } from '../../units.ts';
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
		garment: 'A whole garment',
		garmentNone: 'no, the lessons chosen above',
		level: 'How near a mark must come',
		levels: {
			strict: ({ within }: { within: Mm }) => `strictly: a point within ${v.small(within)}`,
			normal: ({ within }: { within: Mm }) => `as usual: a point within ${v.small(within)}`,
			beginner: ({ within }: { within: Mm }) => `for beginners: a point within ${v.small(within)}`
		},
		mode: 'How it is done',
		modes: {
			practice: 'as practice: each mark is checked at once',
			exam: 'as an exam: what is right is told when the learner hands in, or when it closes'
		},
		hints: 'Help may be asked for (never in an exam)',
		change: 'Change it',
		changeIt: 'Change it for the class',
		frozen: 'Somebody has handed in for this: what was asked stays as it was.',
		extra: 'More time for one learner',
		extraAbout: ({ minutes }: { minutes: number }) =>
			minutes === 0 ? '' : `${v.number(minutes)} minutes more`,
		extraMinutes: 'Minutes after the end',
		giveTime: 'Give the time',
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
		orOnPaper: 'Drafted on paper? Measure it, and hand your points in:',
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

		exam: 'This is an exam. Each mark is kept as you put it; what is right is told when you hand in, or when it closes.',
		examOver: 'It is handed in. Each step shows what was right.',
		examStep: 'Draft this step from its rule, with the numbers above.',
		endExam: 'Hand in',
		reallyEnd: 'Yes, hand it in: nothing after that counts',
		endLater: 'You can hand in as soon as everything is saved.',
		handedInAt: ({ at }: { at: number }) => `handed in ${time(at)}`,
		noHelp: 'No help is given here.',
		keep: 'Keep it',
		kept: 'Kept.',
		allKept: 'all steps of this lesson are kept',

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

		plan: 'Plan of the lessons',
		planOf: ({ name }: { name: string }) => `Plan of the lessons: ${name}`,
		did: 'What the class has done',
		didNothing: 'The class has been set nothing yet: the course begins below.',
		lesson: 'Lesson',
		doneBy: ({ done, begun, learners }: { done: number; begun: number; learners: number }) =>
			`${done} of ${learners} have every step right, ${begun} have begun`,
		comesNext: 'What comes next',
		allDone: 'The class has had every lesson of the course.',
		minutes: ({ minutes }: { minutes: number }) =>
			v.plural(minutes, { one: '1 minute', other: `${minutes} minutes` }),
		bring: 'What to bring',
		bringPaper: 'dotted or squared paper as large as the draft, or a worksheet of the class',
		bringTools: 'a pencil, a rubber, a long ruler, a set square and the tape',
		bringNumbers: ({ names }: { names: readonly string[] }) => `these measurements, taken: ${v.list(names)}`,
		bringText: 'nothing but this page: the lesson is read and looked at',
		toPrint: 'To print for the class',
		sheetsFor: ({ name }: { name: string }) => `Sheets: ${name}`,
		sheetsOf: ({ name }: { name: string }) => `Sheets of the class: ${name}`,
		sheetsAbout:
			'One file with the sheets of every learner, each with the numbers of the body that they draft for.',
		sheetKinds: {
			worksheet: 'worksheets: the steps, and the grid to draft on',
			rules: 'rule sheets: each rule worked out',
			cards: 'step cards, to be cut apart'
		},
		whichSheets: 'Which sheets',
		saveSheets: 'Save the sheets as one PDF',
		withoutBody: ({ names }: { names: readonly string[] }) =>
			`Nobody can know the measurements of ${v.list(names)} before they agree to hand them in: they are left out.`,
		forLearner: ({ learner, body }: { learner: string; body: string }) => `${learner} (${body})`,

		learner: 'Learner',
		markHeading: 'Mark',
		receipts: 'Handed in',
		late: ({ count }: { count: number }) => `${count} late`,
		nothing: 'nothing yet'
	};
};
