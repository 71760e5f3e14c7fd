import { redirect, type Handle, type RequestEvent } from '@sveltejs/kit';
import { building } from '$app/environment';
import { movedPath } from '#shared/renamed.ts';
import { addressIn, askedFor, isLanguage, languageOf, type Language } from '#shared/speech/language.ts';

/** Under which name the choice of a language is kept in the browser, and for how many seconds: a year. */
const COOKIE = 'language';
const KEPT_FOR = 365 * 24 * 60 * 60;

/** Whether someone asks for a page: not for what a page brings in. */
const isForPage = ({ request, route, isDataRequest, isSubRequest }: RequestEvent): boolean =>
	request.method === 'GET' &&
	route.id !== null &&
	!isDataRequest &&
	!isSubRequest &&
	(request.headers.get('accept') ?? '').includes('text/html');

/**
 * Where a request for a page is sent on to, if anywhere. `?language=es` chooses a language, which is kept; an
 * address without a language goes to the one that was chosen, or else to the one that the browser asks for.
 */
const sentOnTo = ({ url, cookies, request }: RequestEvent): string | undefined => {
	const wanted = url.searchParams.get('language') ?? undefined;
	const others = new URLSearchParams(url.searchParams);
	others.delete('language');
	const inLanguage = (language: Language): string =>
		addressIn(language, url.pathname) + (others.size > 0 ? `?${others.toString()}` : '');
	if (isLanguage(wanted)) {
		// A choice of language is no secret, and a class may be served over plain http.
		cookies.set(COOKIE, wanted, { path: '/', maxAge: KEPT_FOR, secure: false });
		return inLanguage(wanted);
	}
	const chosen = cookies.get(COOKIE);
	const language = isLanguage(chosen) ? chosen : askedFor(request.headers.get('accept-language') ?? '');
	const to = inLanguage(language ?? languageOf(url.pathname));
	return languageOf(url.pathname) === 'en' && to !== inLanguage('en') ? to : undefined;
};

export const handle: Handle = async ({ event, resolve }) => {
	const moved = movedPath(event.url.pathname);
	if (moved !== undefined) redirect(308, moved + (building ? '' : event.url.search));
	const isPage = !building && isForPage(event);
	const to = isPage ? sentOnTo(event) : undefined;
	if (to !== undefined) redirect(303, to);
	const response = await resolve(event, {
		transformPageChunk: ({ html }) => html.replace('%language%', languageOf(event.url.pathname))
	});
	if (isPage) response.headers.append('vary', 'Accept-Language, Cookie');
	return response;
};
