import { error, redirect, type Handle, type RequestEvent, type ServerInit } from '@sveltejs/kit';
import { building } from '$app/environment';
import { movedPath } from '#shared/renamed.ts';
import { languageOf } from '#shared/speech/language.ts';
import { speechOf } from '#shared/speech/speech.ts';
import { LANGUAGE_COOKIE, LANGUAGE_KEPT_FOR, sentOnTo } from '#shared/speech/sent-on.ts';
import { serverWords } from '#shared/speech/school-words.ts';
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

/** While pages are made beforehand there are no classes. */
export const init: ServerInit = async () => {
	if (!building) await openClasses();
};

/** Whether a request that changes something was sent by a page of another site. A program that is no browser names none. */
const isOfOtherSite = ({ request, url }: RequestEvent): boolean =>
	!['GET', 'HEAD', 'OPTIONS'].includes(request.method) &&
	![null, url.origin].includes(request.headers.get('origin'));

/** What stands in src/app.html in the language of the page. */
export const handle: Handle = async ({ event, resolve }) => {
	const moved = movedPath(event.url.pathname);
	if (moved !== undefined) redirect(308, moved + (building ? '' : event.url.search));
	if (!building && isForPage(event)) sendOn(event);
	const language = languageOf(event.url.pathname);
	const { page, classroom } = speechOf(await serverWords(language), 'cm').words;
	if (isOfOtherSite(event)) error(403, classroom.otherSite);
	// What a class sees is for one person, whoever asks next on the same way.
	if (event.route.id?.includes('/class/')) event.setHeaders({ 'cache-control': 'private, no-store' });
	return resolve(event, {
		transformPageChunk: ({ html }) =>
			html
				.replace('%language%', language)
				.replace('%without-script%', page.withoutScript)
				.replace('%out-of-reach%', page.outOfReach)
	});
};
