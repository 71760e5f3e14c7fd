import { redirect, type Handle, type RequestEvent } from '@sveltejs/kit';
import { building } from '$app/environment';
import { movedPath } from '#shared/renamed.ts';
import { allWords } from '#shared/speech/catalogue.ts';
import { languageOf } from '#shared/speech/language.ts';
import { speechOf } from '#shared/speech/speech.ts';
import { LANGUAGE_COOKIE, LANGUAGE_KEPT_FOR, sentOnTo } from '#shared/speech/sent-on.ts';

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

/** What stands in src/app.html in the language of the page. */
export const handle: Handle = async ({ event, resolve }) => {
	const moved = movedPath(event.url.pathname);
	if (moved !== undefined) redirect(308, moved + (building ? '' : event.url.search));
	if (!building && isForPage(event)) sendOn(event);
	const language = languageOf(event.url.pathname);
	const { page } = speechOf(await allWords(language), 'cm').words;
	return resolve(event, {
		transformPageChunk: ({ html }) =>
			html
				.replace('%language%', language)
				.replace('%without-script%', page.withoutScript)
				.replace('%out-of-reach%', page.outOfReach)
	});
};
