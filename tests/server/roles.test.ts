import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Refused } from '#server/refused.ts';
import type { UseCase } from '#server/use-case.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { PROJECT } from '../architecture/tree-copy.ts';
import { handedEvent, newSchool, PASSPHRASE, remarked, type School } from './school.ts';
import { onBoth } from './stores.ts';

/** What each is told. `own` is of the class that the input names: its teacher, the learner that is named, another learner of it. */
interface Row {
	readonly nobody: string;
	readonly teacher: string;
	readonly learner: string;
	readonly classmate: string;
	readonly otherTeacher: string;
	readonly otherLearner: string;
	/** Where the learner has to have begun, and their teacher to have said something of it. */
	readonly begun?: true;
	/** What is asked with. */
	readonly input: (named: Named) => unknown;
}
interface Named {
	readonly class: string;
	readonly code: string;
	readonly learner: string;
	readonly teacher: string;
	readonly assignment: string;
	/** What the teacher said of what the learner handed in. */
	readonly override: string;
	readonly comment: string;
	/** Another at each call. */
	readonly fresh: string;
}

const everybody = (answer: string) => ({
	nobody: answer,
	teacher: answer,
	learner: answer,
	classmate: answer,
	otherTeacher: answer,
	otherLearner: answer
});
const anyTeacher = {
	...everybody('notForRole'),
	nobody: 'signIn',
	teacher: 'done',
	otherTeacher: 'done'
};
const classTeacher = { ...anyTeacher, otherTeacher: 'notThere' };
/** What learners do for themselves: what is no assignment of theirs they are told in what came of it. */
const anyLearner = {
	...everybody('done'),
	nobody: 'signIn',
	teacher: 'notForRole',
	otherTeacher: 'notForRole'
};
const self = { ...classTeacher, learner: 'done', classmate: 'notThere', otherLearner: 'notThere' };

const said = { ...classTeacher, begun: true as const };
/** A step of the learner's work. */
const stepOf = ({ assignment, learner }: Named) => ({ assignment, learner, method: 'back-block', step: 'A' });

const ROWS: Readonly<Record<keyof typeof USE_CASES, Row>> = {
	becomeTeacher: {
		...everybody('linkUsed'),
		input: ({ fresh }) => ({ link: 'x', name: fresh, passphrase: PASSPHRASE })
	},
	signIn: { ...everybody('done'), input: () => ({ name: 'Ms Alder', passphrase: PASSPHRASE }) },
	comeBack: { ...everybody('done'), input: ({ code }) => ({ code, name: 'Ada', passphrase: PASSPHRASE }) },
	join: { ...everybody('done'), input: ({ code, fresh }) => ({ code, name: fresh, passphrase: PASSPHRASE }) },
	signOut: { ...everybody('done'), nobody: 'signIn', input: () => ({}) },
	startClass: { ...anyTeacher, input: ({ fresh }) => ({ name: fresh }) },
	ownClasses: { ...anyTeacher, input: () => ({}) },
	inviteTeacher: { ...anyTeacher, input: () => ({}) },
	readClass: { ...classTeacher, input: ({ class: own }) => ({ class: own }) },
	setJoining: { ...classTeacher, input: ({ class: own }) => ({ class: own, open: true }) },
	removeClass: { ...classTeacher, input: ({ class: own }) => ({ class: own }) },
	renameLearner: { ...classTeacher, input: ({ learner, fresh }) => ({ learner, name: fresh }) },
	resetPassphrase: { ...classTeacher, input: ({ learner }) => ({ learner }) },
	readTeachers: { ...classTeacher, input: ({ class: own }) => ({ class: own }) },
	addTeacher: { ...classTeacher, input: ({ class: own }) => ({ class: own, name: 'Mr Birch' }) },
	// Each class of this test has one teacher, who may not give it up.
	takeClassFrom: {
		...classTeacher,
		teacher: 'onlyTeacher',
		input: ({ class: own, teacher }) => ({ class: own, teacher })
	},
	exportTeacher: { ...anyTeacher, input: () => ({}) },
	removeTeacher: {
		...anyTeacher,
		teacher: 'onlyTeacher',
		otherTeacher: 'onlyTeacher',
		input: () => ({})
	},
	addPlatform: {
		...anyTeacher,
		input: ({ fresh }) => ({
			issuer: fresh,
			client: 'c',
			deployment: '1',
			authorize: 'https://platform.example/auth',
			keys: 'https://platform.example/keys'
		})
	},
	allPlatforms: { ...anyTeacher, input: () => ({}) },
	removePlatform: {
		...anyTeacher,
		teacher: 'notThere',
		otherTeacher: 'notThere',
		input: () => ({ platform: 'x' })
	},
	beginLaunch: {
		...everybody('noPlatform'),
		input: () => ({ iss: 'x', login_hint: 'y', answer: 'https://site.example/lti/launch' })
	},
	launch: {
		...everybody('launchOver'),
		input: () => ({ state: 'x', id_token: 'y', inFrame: true, site: 'https://site.example' })
	},
	ownKeys: { ...everybody('done'), input: () => ({}) },
	classSendings: { ...classTeacher, input: ({ class: own }) => ({ class: own }) },
	sendMarkAgain: {
		...classTeacher,
		teacher: 'notThere',
		input: ({ class: own }) => ({ class: own, sending: 'x' })
	},
	sendChoice: {
		...everybody('launchOver'),
		input: () => ({ ticket: 'x', chosen: [], site: 'https://site.example', titles: {} })
	},
	openLaunch: { ...everybody('launchOver'), input: () => ({ ticket: 'x' }) },
	removeLearner: { ...self, input: ({ learner }) => ({ learner }) },
	exportLearner: { ...self, input: ({ learner }) => ({ learner }) },
	ownPage: { ...anyLearner, input: () => ({}) },
	setAssignment: {
		...classTeacher,
		input: ({ class: own, fresh }) => ({
			class: own,
			name: fresh,
			task: { lessons: ['40-back-levels'], body: { kind: 'each' }, policy: {} }
		})
	},
	removeAssignment: { ...classTeacher, input: ({ assignment }) => ({ assignment }) },
	classAssignments: { ...classTeacher, input: ({ class: own }) => ({ class: own }) },
	readAssignment: { ...classTeacher, input: ({ assignment }) => ({ assignment }) },
	classMissteps: { ...classTeacher, input: ({ assignment }) => ({ assignment }) },
	readBoard: { ...classTeacher, input: ({ assignment }) => ({ assignment }) },
	classNow: { ...classTeacher, input: ({ assignment }) => ({ assignment }) },
	previewRemarking: { ...classTeacher, input: ({ assignment }) => ({ assignment }) },
	applyRemarking: {
		...classTeacher,
		teacher: 'changedMeanwhile',
		input: ({ assignment }) => ({ assignment, shown: 'x' })
	},
	readWork: { ...said, input: ({ assignment, learner }) => ({ assignment, learner }) },
	overrideMark: {
		...said,
		input: (named) => ({ ...stepOf(named), mark: 1, reason: 'Drawn by another rule that I showed.' })
	},
	addComment: { ...said, input: (named) => ({ ...stepOf(named), text: 'Look at it once more.' }) },
	takeMarkBack: { ...said, input: ({ override }) => ({ override }) },
	removeComment: { ...said, input: ({ comment }) => ({ comment }) },
	openAssignment: { ...anyLearner, otherLearner: 'notThere', input: ({ assignment }) => ({ assignment }) },
	previewAssignment: { ...classTeacher, input: ({ assignment }) => ({ assignment }) },
	ownAssignments: { ...anyLearner, input: () => ({}) },
	changeAssignment: {
		...classTeacher,
		input: ({ assignment, fresh }) => ({
			assignment,
			name: fresh,
			task: { lessons: ['40-back-levels'], body: { kind: 'each' }, policy: {} }
		})
	},
	lessonPlan: { ...classTeacher, input: ({ class: own }) => ({ class: own }) },
	classSheets: { ...classTeacher, input: ({ assignment }) => ({ assignment }) },
	giveTime: {
		...classTeacher,
		input: ({ assignment, learner }) => ({ assignment, learner, minutes: 10 })
	},
	// The assignment of this test is for practice.
	endExam: {
		...anyLearner,
		learner: 'noExam',
		classmate: 'noExam',
		otherLearner: 'notThere',
		input: ({ assignment }) => ({ assignment })
	},
	// Of what each learner has before: nothing was handed in for it.
	beginAnew: {
		...anyLearner,
		...{ learner: 'noMore', classmate: 'noMore', otherLearner: 'notThere' },
		input: ({ assignment }) => ({ assignment, after: 1 })
	},
	comeAgain: { ...everybody('linkUsed'), input: () => ({ link: 'x', passphrase: PASSPHRASE }) },
	// Each says whose it is: what somebody else at the same browser did is not theirs.
	handIn: {
		...anyLearner,
		classmate: 'signIn',
		otherLearner: 'signIn',
		input: ({ learner, assignment }) => ({ learner, events: [handedEvent(assignment, 1)] })
	}
};

onBoth('every use case, tried by everybody and by nobody', (newStorePlace) => {
	let school: School;
	let teachers: { readonly own: string; readonly other: string };
	let otherLearner: string;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		teachers = { own: await school.teacher('Ms Alder'), other: await school.teacher('Mr Birch') };
		otherLearner = (await school.learner((await school.newClass(teachers.other, 'Birch')).code, 'Ada'))
			.secret;
	});
	afterAll(() => school.close());

	it.each(Object.keys(ROWS) as (keyof typeof ROWS)[])('%s', async (name) => {
		const { input, begun = false, ...answers } = ROWS[name];
		const found: Record<string, string> = {};
		for (const who of Object.keys(answers)) {
			// Each has a class of its own, since the use case may remove it or sign somebody out.
			const { class: own, code } = await school.newClass(teachers.own, 'Alder');
			const [learner, classmate] = [await school.learner(code, 'Ada'), await school.learner(code, 'Bea')];
			const secrets: Readonly<Record<string, string | undefined>> = {
				teacher: teachers.own,
				otherTeacher: teachers.other,
				learner: learner.secret,
				classmate: classmate.secret,
				otherLearner
			};
			const use = USE_CASES[name] as unknown as UseCase<unknown, unknown>;
			const [first] = await school.ask(USE_CASES.readTeachers, teachers.own, { class: own });
			const teacher = first?.id ?? '';
			const assignment = await school.newAssignment(teachers.own, own);
			const remarks = begun
				? await remarked(school, teachers.own, learner, assignment)
				: { override: '', comment: '' };
			const more = { learner: learner.id, assignment, ...remarks, fresh: `${name} ${who}` };
			const given = input({ class: own, code, teacher, ...more });
			try {
				await school.ask(use, secrets[who], given);
				found[who] = 'done';
			} catch (problem) {
				if (!(problem instanceof Refused)) throw problem;
				found[who] = problem.refusal;
			}
			if (name === 'signOut' && who !== 'nobody') await signInAgain(who);
			school.later(11 * 60_000);
		}
		expect(found).toEqual(answers);
	});

	const signInAgain = async (who: string): Promise<void> => {
		const back = async (name: string) =>
			(await school.ask(USE_CASES.signIn, undefined, { name, passphrase: PASSPHRASE })).secret;
		if (who === 'teacher') teachers = { ...teachers, own: await back('Ms Alder') };
		if (who === 'otherTeacher') teachers = { ...teachers, other: await back('Mr Birch') };
		if (who === 'otherLearner')
			otherLearner = (await school.learner((await school.newClass(teachers.other, 'Birch')).code, 'Ada'))
				.secret;
	};
});

describe('routes', () => {
	it('ask use cases and nothing else: none looks into the store', async () => {
		const folder = path.join(PROJECT, 'src/routes');
		const files = await readdir(folder, { recursive: true });
		const servers = files.filter(
			(file) => /(^|[\\/])(class|lti)[\\/]/.test(file) && /server\.ts$/.test(file)
		);
		expect(servers.length).toBe(14);
		const used = new Set<string>();
		for (const file of servers) {
			const text = await readFile(path.join(folder, file), 'utf8');
			expect(text, file).not.toMatch(/#server\/(?!use-cases\/all\.ts')/);
			for (const [, name = ''] of text.matchAll(/USE_CASES\.(\w+)/g)) used.add(name);
		}
		expect([...used].sort()).toEqual(Object.keys(USE_CASES).sort());
	});
});
