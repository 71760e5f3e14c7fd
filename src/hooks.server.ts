import {
	error,
	redirect,
	type Handle,
	type HandleServerError,
	type RequestEvent,
	type ServerInit
} from '@sveltejs/kit';
import { building } from '$app/environment';
import { movedPath } from '#shared/renamed.ts';
import { languageOf } from '#shared/speech/language.ts';
import { LANGUAGE_COOKIE, LANGUAGE_KEPT_FOR, sentOnTo } from '#shared/speech/sent-on.ts';
import { serverSpeech } from '#shared/speech/server-speech.ts';
import { faultOf, writeLog } from '#server/log.ts';
import { newId } from '#server/people/ids.ts';
import { readSettings } from '#server/settings.ts';
import { closeStreams } from '#server/streams.ts';
import { openClasses } from './routes/classes.server.ts';

/** Whether someone asks for a page: not for what a page brings in. */
const isForPage = ({ request, route, isDataRequest, isSubRequest }: RequestEvent): boolean =>
	request.method === 'GET' &&
	route.id !== null &&
	!isDataRequest &&
	!isSubRequest &&
	(request.headers.get('accept') ?? '').includes('text/html');

/** Sends a request for a page on to its language. Pages that were made beforehand do not come here: the server itself does so for them. */
const sendOn = ({ url, cookies, request }: RequestEvent): void => {
	const sent = sentOnTo({
		path: url.pathname,
		search: url.search,
		chosen: cookies.get(LANGUAGE_COOKIE),
		accepted: request.headers.get('accept-language') ?? ''
	});
	// A choice of language is no secret, and a class may be served over plain http.
	if (sent?.chosen) {
		cookies.set(LANGUAGE_COOKIE, sent.chosen, { path: '/', maxAge: LANGUAGE_KEPT_FOR, secure: false });
	}
	if (sent) redirect(303, sent.to);
};

const settings = building ? undefined : readSettings(process.env);

/** Tells the server which route answers, for its log: src/cli/answering.ts. */
const tellRoute = ({ platform, route }: RequestEvent): void => {
	if (platform) platform.req.headers['x-square-across-route'] = route.id ?? 'none';
};

/** Letters of the number under which a fault stands in the log: the end of an id, which is drawn. */
const NUMBER_LETTERS = 8;

/** Writes a fault of ours to the log, and gives the number that it has there. */
const writeFault = (problem: unknown, route: string): string => {
	const number = newId(Date.now()).slice(-NUMBER_LETTERS);
	if (settings) writeLog(settings.log, { event: 'fault', number, route, ...faultOf(problem) });
	return number;
};

/** While pages are made beforehand there are no classes. */
export const init: ServerInit = async () => {
	if (building) return;
	process.once('sveltekit:shutdown', closeStreams);
	process.once('sveltekit:shutdown', await openClasses((problem) => void writeFault(problem, 'none')));
};

/** What is our fault is told by a number, and written to the log under it. */
export const handleError: HandleServerError = async ({ error: problem, event, status, message }) => {
	if (status < 500 || !settings) return { message };
	const number = writeFault(problem, event.route.id ?? 'none');
	const { words } = await serverSpeech(languageOf(event.url.pathname));
	return { message: words.classroom.ourFault({ number }) };
};

/** A learning platform sends people here with a form: who they are is signed, for a way that began here. */
const isFromPlatform = /^\/lti\/(login|launch)$/;

/** Whether a request that changes something was sent by a page of another site. A program that is no browser names none. */
const isOfOtherSite = ({ request, route, url }: RequestEvent): boolean =>
	!['GET', 'HEAD', 'OPTIONS'].includes(request.method) &&
	!isFromPlatform.test(route.id ?? '') &&
	![null, url.origin].includes(request.headers.get('origin'));

/** Adds to the policy of a page, which the framework writes when it makes the page, who may frame it: that is a setting. */
const withFrames = (response: Response): Response => {
	const policy = response.headers.get('content-security-policy');
	if (policy !== null && settings && !policy.includes('frame-ancestors'))
		response.headers.set('content-security-policy', `${policy}; ${settings.frames}`);
	return response;
};

/** What stands in src/app.html in the language of the page. */
export const handle: Handle = async ({ event, resolve }) => {
	tellRoute(event);
	const moved = movedPath(event.url.pathname);
	if (moved !== undefined) redirect(308, moved + (building ? '' : event.url.search));
	if (!building && isForPage(event)) sendOn(event);
	const language = languageOf(event.url.pathname);
	const { page, classroom } = (await serverSpeech(language)).words;
	if (isOfOtherSite(event)) error(403, classroom.otherSite);
	// What a class sees is for one person, whoever asks next on the same way.
	if (event.route.id?.includes('/class/')) event.setHeaders({ 'cache-control': 'private, no-store' });
	const response = await resolve(event, {
		transformPageChunk: ({ html }) =>
			html
				.replace('%language%', language)
				.replace('%without-script%', page.withoutScript)
				.replace('%out-of-reach%', page.outOfReach)
	});
	return withFrames(response);
};
