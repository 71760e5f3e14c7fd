import { dayIn } from '../day.ts';
import type { Voice } from '../voice.ts';

/** What the pages of a school's classes say. */
export const classroom = (v: Voice) => {
	const learners = (count: number): string =>
		v.plural(count, { one: '1 learner', other: `${count} learners` });
	return {
		heading: 'Your class',
		learnerTitle: 'I am a learner',
		learnerAbout: 'Your teacher has written the code of your class on the board.',
		code: 'Class code',
		name: 'Your name',
		passphrase: 'Passphrase',
		passphraseAbout: 'A short sentence that only you know: at least 8 letters.',
		join: 'Join for the first time',
		comeBack: 'Come back',
		teacherTitle: 'I teach',
		teacherAbout: 'A colleague invites you with a link; whoever started this server was given the first one.',
		signIn: 'Sign in first.',
		enter: 'Sign in',
		signOut: 'Sign out',
		keptTitle: 'What is kept of a learner',
		kept:
			'The name that you go by in the class, your passphrase as a number from which nobody can read it, when you ' +
			'joined, and what you hand in. No e-mail address and no age. Your measurements stay on this device unless ' +
			'you hand in work for them. Whoever comes from a learning platform: also what it calls you, to send your marks there. You can see all of it, and have it removed, whenever you like.',

		becomeTeacher: 'Become a teacher here',
		comeAgain: 'A new passphrase',
		comeAgainAbout: ({ name }: { name: string }) =>
			`This link is good once. Choose the passphrase that you, ${name}, will sign in with from now on.`,
		becomeTeacherAbout: 'This link is good once. Choose the name that you will sign in with.',

		hello: ({ name }: { name: string }) => `Hello, ${name}`,
		inClass: ({ name }: { name: string }) => `You are in ${name}.`,
		yourData: 'All that is kept, as a file',
		leave: 'Remove me and all of it',
		reallyLeave: 'Yes, remove all of it for good',

		yourClasses: 'Your classes',
		noClassesYet: 'You have no class yet. Begin one, then write its code on the board.',
		newClass: 'Name of a new class',
		begin: 'Begin the class',
		learners: ({ count }: { count: number }) => learners(count),
		invite: 'Invite another teacher',
		inviteAbout: 'Send this link to one colleague. It makes one teacher, and is good for a week.',
		toClasses: 'All your classes',
		openUntil: ({ day }: { day: string }) => `Whoever knows this code may join until ${day}.`,
		closed: 'Nobody new may join. Whoever is in the class comes back with this code.',
		closeClass: 'Close to new learners',
		openClass: 'Open with a new code',
		noLearners: 'Nobody has joined yet.',
		joined: 'Joined',
		rename: 'Rename',
		newName: 'New name',
		newPassphrase: 'New passphrase',
		passphraseIs: ({ name, passphrase }: { name: string; passphrase: string }) =>
			`The new passphrase of ${name} is ${passphrase}. It is shown this once.`,
		data: 'All data',
		remove: 'Remove',
		more: ({ name }: { name: string }) => `More for ${name}`,
		reallyRemove: ({ name }: { name: string }) => `Yes, remove ${name} and all work for good`,
		teachers: 'Teachers of this class',
		you: '(you)',
		colleague: 'A colleague’s name',
		addTeacher: 'Add to this class',
		addTeacherAbout:
			'Whoever teaches here already can teach this class too, and may then do all that you may.',
		takeFrom: 'Take the class away',
		giveUp: 'Give the class up',
		moreOf: 'About you',
		keptOfTeacher:
			'The name that you sign in with, your passphrase as a number from which nobody can read it, since when you are here, ' +
			'which classes you teach, and the links for colleagues that were not used.',
		reallyTake: ({ name }: { name: string }) => `Yes, take it from ${name}`,
		reallyGiveUp: 'Yes, give it up',
		removeClass: 'Remove this class',
		day: ({ at }: { at: number }) => dayIn(v.language, at),

		noClasses: 'There are no classes on this site.',
		outOfReach:
			'The classes cannot be reached just now. Nothing that was saved is lost; try again in a moment.',
		ourFault: ({ number }: { number: string }) =>
			`This went wrong here, and it is not your fault. Whoever looks after this site finds it under ${number}.`,
		notForRole: 'This is not for you to do.',
		notThere: 'There is no such thing here.',
		noOpenClass: 'No class that you could join has this code. Ask your teacher.',
		notTogether: 'The name, the passphrase and the code do not belong together.',
		nameTaken: 'Somebody here has this name already. Choose another, or come back with your passphrase.',
		noTeacher:
			'No teacher here has this name. Invite your colleague first, with a link from the page of your classes.',
		onlyTeacher: 'You are the only teacher of a class. Add a colleague to it, or remove it, first.',
		linkUsed: 'This link was used already, or is too old. Ask for another.',
		classFull: 'This class is full.',
		noPlatform: 'This site does not know the learning platform that you come from. Ask your teacher.',
		notFromPlatform:
			'Your learning platform did not say who you are as it must. Go back to it, and follow the link again.',
		launchOver:
			'This way in was used already, or took too long. Go back to your learning platform, and follow the link again.',
		otherBrowser:
			'Your browser did not keep what it was given on the way from your learning platform. Allow cookies for this site, go back, and ' +
			'follow the link again.',
		noLinks:
			'Your learning platform asks for something that is no link. Choose another kind of activity there.',
		platformKnown: 'This platform is here already.',
		noPlatformKeys: 'Your learning platform cannot be reached just now. Try again in a moment.',
		notDrafted:
			'This cannot be drafted from your measurements: one that it needs is missing, or two of them disagree. Look at ' +
			'them on the page of measurements.',
		changedMeanwhile: 'Something has changed since this was shown. Look again, then decide.',
		frozen:
			'Somebody has handed in for this, so it stays as it was asked. Set it once more under another name, as you would have it now.',
		noMore:
			'It cannot be begun anew now: it is over, no attempt is left, or nothing was handed in for the last one.',
		noExam: 'This is no exam: everything is handed in as it is drafted.',
		tooMany: 'Too many tries. Wait ten minutes.',
		otherSite: 'This was sent from a page of another site, and was not done.',
		/** What is wrong with a field, by its name. */
		wrongField: {
			authorize: 'An address begins with https://.',
			keys: 'An address begins with https://.',
			name: 'Give a name of at most 60 letters.',
			passphrase: 'A passphrase has 8 letters or more.',
			mark: 'A mark for a step lies between 0 and 1.',
			reason: 'Say in at most 500 letters why.',
			text: 'Write something, in at most 500 letters.',
			'task.lessons': 'Choose at least one lesson.',
			'task.practice.methods': 'Choose at least one draft to practise.',
			'task.practice.kinds': 'Choose at least one kind of exercise that the chosen drafts have.',
			'task.practice.count': 'Set from 1 to 40 exercises.',
			minutes: 'Give whole minutes, from 0 to 40320 (four weeks).',
			steps: 'Name two steps of the one lesson that you chose, as they are written on the sheet: A and H.'
		} as Readonly<Record<string, string>>,
		wrongForm: 'This form was not filled in as it should be.'
	};
};
