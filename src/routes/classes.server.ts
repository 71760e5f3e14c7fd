import { error, fail, json, redirect, type ActionFailure, type RequestEvent } from '@sveltejs/kit';
import { BadInput } from '#shared/bad-input.ts';
import { addressIn, askedFor, languageOf, type Language } from '#shared/speech/language.ts';
import { serverSpeech } from '#shared/speech/server-speech.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { COST } from '#server/people/passphrases.ts';
import { callerOf, STAYS } from '#server/people/sessions.ts';
import { startSending } from '#server/gradebook/sender.ts';
import { Refused } from '#server/refused.ts';
import { readSettings } from '#server/settings.ts';
import { versionOf } from '#server/store/migrate.ts';
import { isOutOfReach, openStore } from '#server/store/store.ts';
import { eventStream, isClosing } from '#server/streams.ts';
import { carryOut, type UseCase } from '#server/use-case.ts';
import type { Caller, World } from '#server/world.ts';
import { COURSES } from './course.server.ts';

/** What routes of a school's classes have in common: they ask a use case, and say what came of it. */

/** Under which name a browser keeps who is signed in. */
const SESSION = 'square-across-session';

/** A hash of all that judges, put in by vite.config.ts. */
declare const ENGINE: string;

const open = async (): Promise<World | undefined> => {
	const { place } = readSettings(process.env);
	return (
		place && { store: await openStore(place), now: Date.now, cost: COST, course: COURSES.en, engine: ENGINE }
	);
};
let opened: Promise<World | undefined> | undefined;

/**
 * Opens the store, when the server starts, and begins what is done in it without being asked; gives what ends that. Throws BadInput
 * where it cannot be opened.
 *
 * @param told is told what went wrong where nobody asked
 */
export const openClasses = async (told: (problem: unknown) => void): Promise<() => void> => {
	opened = open();
	const world = await opened;
	return world ? startSending(world, told) : () => undefined;
};

/** Whether the store answers, where there is one, and nobody has told the server to stop. */
export const isReady = async (): Promise<boolean> => {
	const world = await opened;
	if (isClosing()) return false;
	if (!world) return true;
	try {
		await versionOf(world.store.db);
		return true;
	} catch {
		return false;
	}
};

type Event = Pick<RequestEvent, 'cookies' | 'url' | 'getClientAddress'>;

/** The speech of an address. */
export const speechAt = (url: URL): Promise<Speech> => serverSpeech(languageOf(url.pathname));

/** What somebody who asked for something is told that was not done, with its status; undefined where it is a fault of ours. */
const toldOf = async (
	problem: unknown,
	url: URL
): Promise<{ readonly status: number; readonly told: string } | undefined> => {
	const speech = await speechAt(url);
	const { classroom } = speech.words;
	if (problem instanceof Refused) return { status: problem.status, told: speech.tell(problem.slip) };
	if (problem instanceof BadInput)
		return { status: 400, told: classroom.wrongField[problem.place] ?? classroom.wrongForm };
	return isOutOfReach(problem) ? { status: 503, told: classroom.outOfReach } : undefined;
};

const worldAt = async (url: URL): Promise<World> => {
	const world = await opened;
	if (!world) return error(404, (await speechAt(url)).words.classroom.noClasses);
	return world;
};

/** Whoever is signed in, by what their browser keeps. */
const signedIn = async (world: World, { cookies }: Event): Promise<Caller | undefined> => {
	const secret = cookies.get(SESSION);
	return secret === undefined ? undefined : callerOf(world, secret);
};

const did = async <I, O>(use: UseCase<I, O>, event: Event, input: unknown): Promise<O> => {
	const world = await worldAt(event.url);
	const caller = await signedIn(world, event);
	return carryOut(use, world, { caller, address: event.getClientAddress() }, input);
};

/** Ends a request that could not be answered, with what is told of that. */
const ended = async (problem: unknown, url: URL): Promise<never> => {
	const told = await toldOf(problem, url);
	throw told ? error(told.status, told.told) : problem;
};

/** Who is signed in, for a page that shows another thing to each; undefined for nobody. */
export const callerAt = async (
	event: Event
): Promise<{ readonly role: 'teacher' | 'learner'; readonly id: string } | undefined> => {
	const world = await worldAt(event.url);
	try {
		return await signedIn(world, event);
	} catch (problem) {
		return ended(problem, event.url);
	}
};

/** Asks a use case for what a page shows. What is refused ends the request: whoever is not signed in is sent to do so. */
export const asked = async <I, O>(use: UseCase<I, O>, event: Event, input: unknown): Promise<O> => {
	try {
		return await did(use, event, input);
	} catch (problem) {
		if (problem instanceof Refused && problem.refusal === 'signIn')
			redirect(303, addressIn(languageOf(event.url.pathname), '/class'));
		return ended(problem, event.url);
	}
};

/** A program's answer: what came of what it asked, or what is told of that, with its status. */
export const answered = async <I, O>(
	use: UseCase<I, O>,
	event: Event,
	input: unknown,
	statusOf: (found: O) => number = () => 200
): Promise<Response> => {
	try {
		const found = await did(use, event, input);
		return json(found, { status: statusOf(found) });
	} catch (problem) {
		const told = await toldOf(problem, event.url);
		if (!told) throw problem;
		return json({ told: told.told }, { status: told.status });
	}
};

/** How often a stream looks for what is new, in milliseconds: a class is looked at, and not steered. */
const LOOKS_EVERY = 2_000;

/**
 * A stream of what a use case gives, sent whenever it is another: the store is asked again and again, so that it is told what came in
 * by another server too. A program that asks for no stream is answered once.
 *
 * @param changing what of it is compared
 */
export const streamed = async <I, O>(
	use: UseCase<I, O>,
	event: Event & Pick<RequestEvent, 'request'>,
	input: unknown,
	changing: (found: O) => unknown
): Promise<Response> => {
	const first = await answered(use, event, input);
	if (!first.ok || !event.request.headers.get('accept')?.includes('text/event-stream')) return first;
	return eventStream((send) => {
		let [before, ended]: [string, boolean] = ['', false];
		let timer: ReturnType<typeof setTimeout>;
		const look = async (): Promise<void> => {
			try {
				const found = await did(use, event, input);
				const now = JSON.stringify(changing(found));
				if (now !== before) send('now', found);
				before = now;
			} catch (problem) {
				// Whoever may not look any more is told so when they ask again.
				const told = await toldOf(problem, event.url);
				send('trouble', { status: told?.status ?? 500 });
			}
			if (!ended) timer = setTimeout(() => void look(), LOOKS_EVERY);
		};
		void look();
		return () => {
			ended = true;
			clearTimeout(timer);
		};
	});
};

/** What a form sent: its texts by name. */
export const sent = async (request: Request): Promise<Readonly<Record<string, string>>> =>
	Object.fromEntries(
		[...(await request.formData())].flatMap(([name, value]) =>
			typeof value === 'string' ? [[name, value]] : []
		)
	);

/** What a form is told that was refused. */
export type Told = ActionFailure<{
	readonly told: string;
	/** What was typed and need not be typed again. */
	readonly typed: { readonly code: string | undefined; readonly name: string | undefined };
}>;

/**
 * Does what a form asks for; what is refused is told beside the form.
 *
 * @param read makes the input of what the form sent, where it is another
 */
export const done = async <I, O>(
	use: UseCase<I, O>,
	event: RequestEvent,
	read: (form: Readonly<Record<string, string>>) => unknown = (form) => form
): Promise<{ readonly done: O } | Told> => {
	const form = await sent(event.request);
	try {
		return { done: await did(use, event, read(form)) };
	} catch (problem) {
		const told = await toldOf(problem, event.url);
		if (!told) throw problem;
		const { code, name } = form;
		return fail(told.status, { told: told.told, typed: { code, name } });
	}
};

/** The same for whoever comes in: their browser keeps the secret, and goes to the class. */
export const entered = async <I>(
	use: UseCase<I, { readonly secret: string }>,
	event: RequestEvent
): Promise<Told> => {
	const result = await done(use, event);
	if (!('done' in result)) return result;
	keepSecret(event, result.done.secret);
	return toClass(event);
};

/** A browser keeps who is signed in. */
const keepSecret = ({ cookies, url }: Event, secret: string): void =>
	cookies.set(SESSION, secret, {
		path: '/',
		httpOnly: true,
		sameSite: 'lax',
		// A class may be served over plain http in its own house.
		secure: url.protocol === 'https:',
		maxAge: STAYS / 1000
	});

/** The same for whoever comes from a learning platform, where no form is filled in. */
export const stayIn = (event: Event, secret: string, to: string): never => {
	keepSecret(event, secret);
	redirect(303, to);
};

/** Under which name a browser keeps a way from a platform: several may be gone at once. */
const wayName = (state: string): string => `square-across-way-${state.slice(0, LETTERS_OF_WAY)}`;
const LETTERS_OF_WAY = 16;
/** How long a browser keeps it, in seconds. */
const WAY_STAYS = 600;

/**
 * A browser that sets out from a platform keeps the state that is to come back, so that nobody is brought in on somebody else's way.
 * The platform sends its answer from its own site, and maybe in a frame of it; browsers take such a cookie over https alone.
 */
export const keepWay = ({ cookies }: Event, state: string): void =>
	cookies.set(wayName(state), state, {
		path: '/lti',
		httpOnly: true,
		secure: true,
		sameSite: 'none',
		partitioned: true,
		maxAge: WAY_STAYS
	});

/** The state that the browser has kept of this way, which is over now; undefined where it has kept none. */
export const keptWay = ({ cookies }: Event, state: string): string | undefined => {
	if (!/^[\w-]+$/.test(state)) return undefined;
	const kept = cookies.get(wayName(state));
	if (kept !== undefined)
		cookies.delete(wayName(state), { path: '/lti', secure: true, sameSite: 'none', partitioned: true });
	return kept;
};

/** What is said to a browser at an address that has no language. */
export const speechFor = async ({
	headers
}: Request): Promise<{ readonly language: Language; readonly words: Speech['words'] }> => {
	const language = askedFor(headers.get('accept-language') ?? '') ?? 'en';
	return { language, words: (await serverSpeech(language)).words };
};

/** Goes to the page of whoever is signed in. */
export const toClass = ({ url }: Pick<RequestEvent, 'url'>): never =>
	redirect(303, addressIn(languageOf(url.pathname), '/class'));

/** Forgets who is signed in, in their browser. */
export const forgotten = ({ cookies }: Event): void => cookies.delete(SESSION, { path: '/' });
