import { BadInput } from '#shared/bad-input.ts';
import type { EventKey } from '#shared/hand-in.ts';
import { Refused } from '#server/refused.ts';
import type { StorePlace } from '#server/settings.ts';
import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { firstTeacherPath } from '#server/people/invitations.ts';
import { callerOf } from '#server/people/sessions.ts';
import { openStore } from '#server/store/store.ts';
import { carryOut, type UseCase } from '#server/use-case.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import type { World } from '#server/world.ts';

/** A school in a store of its own, whose time stands still until it is moved on. */
export interface School {
	readonly world: World;
	/** Moves the time on, in milliseconds. */
	later(by: number): void;
	/** Asks a use case, as whoever a browser's secret belongs to; nobody where it is undefined. */
	ask<I, O>(use: UseCase<I, O>, secret: string | undefined, input: unknown, address?: string): Promise<O>;
	/** Makes a teacher, and gives their secret. The first comes by the server's own link. */
	teacher(name: string): Promise<string>;
	/** Makes a class of a teacher, and gives its id and its code. */
	newClass(teacher: string, name: string): Promise<{ readonly class: string; readonly code: string }>;
	/** Makes a learner in a class, and gives their secret and id. */
	learner(code: string, name: string): Promise<{ readonly secret: string; readonly id: string }>;
	/** Sets a class the whole first back, for an invented body, and gives the assignment's id; some of it may be said otherwise. */
	newAssignment(teacher: string, inClass: string, task?: Readonly<Record<string, unknown>>): Promise<string>;
	close(): Promise<void>;
}

/** The passphrase of everybody in it. */
export const PASSPHRASE = 'three blue buttons';

/** What comes of asking: `done`, or why not. */
export const told = async (asked: Promise<unknown>): Promise<string> => {
	try {
		await asked;
		return 'done';
	} catch (problem) {
		if (problem instanceof Refused) return problem.refusal;
		if (problem instanceof BadInput) return `bad ${problem.place}`;
		throw problem;
	}
};

/** Opens a school in an empty place. */
export const newSchool = async (place: StorePlace): Promise<School> => {
	const store = await openStore(place);
	let time = Date.UTC(2026, 10, 28);
	const world: World = {
		store,
		now: () => time,
		cost: { N: 16, r: 1, p: 1 },
		course: lessonCourse(),
		engine: 'tested'
	};
	let first: string | undefined;
	const ask: School['ask'] = async (use, secret, input, address = '192.0.2.1') => {
		const caller = secret === undefined ? undefined : await callerOf(world, secret);
		return carryOut(use, world, { caller, address }, input);
	};
	const linkIn = (path: string): string => path.split('link=')[1] ?? '';
	return {
		world,
		later: (by) => {
			time += by;
		},
		ask,
		teacher: async (name) => {
			const path =
				first === undefined
					? await firstTeacherPath(world)
					: (await ask(USE_CASES.inviteTeacher, first, {})).path;
			const { secret } = await ask(USE_CASES.becomeTeacher, undefined, {
				link: linkIn(path ?? ''),
				name,
				passphrase: PASSPHRASE
			});
			first ??= secret;
			return secret;
		},
		newClass: async (teacher, name) => {
			const made = await ask(USE_CASES.startClass, teacher, { name });
			const { code } = await ask(USE_CASES.readClass, teacher, made);
			return { ...made, code };
		},
		learner: async (code, name) => {
			const { secret } = await ask(USE_CASES.join, undefined, { code, name, passphrase: PASSPHRASE });
			const caller = await callerOf(world, secret);
			return { secret, id: caller?.id ?? '' };
		},
		newAssignment: async (teacher, inClass, task = {}) => {
			const usual = { lessons: ['40-back-levels'], body: { kind: 'one', id: 'heron' }, policy: {} };
			const asked = { class: inClass, name: 'The back', task: { ...usual, ...task } };
			return (await ask(USE_CASES.setAssignment, teacher, asked)).assignment;
		},
		close: () => store.close()
	};
};

/** A mark that was put down and checked, as a browser hands it in. */
export const handedEvent = (
	assignment: string,
	sequence: number,
	done: Readonly<Record<string, unknown>> = {},
	tab = '1'
): { readonly key: EventKey; readonly done: unknown } => ({
	key: { device: 'd'.repeat(16), tab: tab.padStart(16, '0'), sequence },
	done: {
		assignment,
		method: 'back-block',
		step: 'A',
		entry: {
			placement: { kind: 'point', at: [0, 222] },
			checked: true,
			kept: false,
			help: 0,
			shown: false
		},
		...done
	}
});

/** A learner begins an assignment, and their teacher gives a step a mark and writes a comment: gives the ids of both. */
export const remarked = async (
	{ ask }: Pick<School, 'ask'>,
	teacher: string,
	{ secret, id: learner }: { readonly secret: string; readonly id: string },
	assignment: string
): Promise<{ readonly override: string; readonly comment: string }> => {
	await ask(USE_CASES.openAssignment, secret, { assignment });
	const step = { assignment, learner, method: 'back-block', step: 'A' };
	await ask(USE_CASES.overrideMark, teacher, { ...step, mark: 0.5, reason: 'Half of it was shown.' });
	await ask(USE_CASES.addComment, teacher, { ...step, text: 'Measure from O.' });
	const { overrides, comments } = await ask(USE_CASES.readWork, teacher, { assignment, learner });
	return { override: overrides[0]?.id ?? '', comment: comments[0]?.id ?? '' };
};
