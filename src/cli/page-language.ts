import type { IncomingMessage, ServerResponse } from 'node:http';
import { LANGUAGE_COOKIE, LANGUAGE_KEPT_FOR, sentOnTo } from '#shared/speech/sent-on.ts';

/** The language that a browser keeps in its cookies. */
const KEPT = new RegExp(`(?:^|;\\s*)${LANGUAGE_COOKIE}=(\\w+)`);

/** What a page brings in, and whatever has an ending as a file has. */
const NO_PAGE = /^\/_app\/|\.[^/]*$/;

/**
 * Sends a request for a page on to the language that was chosen, or that the browser asks for; false where the page
 * stands in its own. The pages were made beforehand, so nobody behind this looks at who asks.
 */
export const sendToLanguage = (request: IncomingMessage, response: ServerResponse): boolean => {
	const [path = '/', ...search] = (request.url ?? '/').split('?');
	const { accept = '', cookie = '', 'accept-language': accepted = '' } = request.headers;
	if (request.method !== 'GET' || NO_PAGE.test(path) || !accept.includes('text/html')) return false;
	const sent = sentOnTo({ path, search: search.join('?'), chosen: KEPT.exec(cookie)?.[1], accepted });
	if (!sent) return false;
	if (sent.chosen) {
		response.setHeader(
			'set-cookie',
			`${LANGUAGE_COOKIE}=${sent.chosen}; Path=/; Max-Age=${String(LANGUAGE_KEPT_FOR)}; HttpOnly; SameSite=Lax`
		);
	}
	response.writeHead(303, { location: sent.to }).end();
	return true;
};
