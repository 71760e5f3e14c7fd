import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, sent, speechFor, stayIn } from '../../classes.server.ts';
import type { RequestHandler } from './$types';

/**
 * A learning platform has said who somebody is. In a frame most browsers keep nothing for another site than the one that is looked
 * at, so there a link opens a page of its own.
 */
export const POST: RequestHandler = async (event) => {
	const inFrame = event.request.headers.get('sec-fetch-dest') === 'iframe';
	const { secret, origin } = await asked(USE_CASES.launch, event, {
		...(await sent(event.request)),
		inFrame
	});
	if (!inFrame) return stayIn(event, secret);
	const { language, words } = await speechFor(event.request);
	const { opensApart, openApart } = words.classroom;
	return new Response(
		`<!doctype html><html lang="${language}"><meta charset="utf-8"><title>Square Across</title>` +
			`<body style="font: 1rem/1.6 system-ui, sans-serif; padding: 1rem"><p>${opensApart}</p>` +
			`<p><a href="/lti/open?ticket=${secret}" target="_blank" rel="noopener">${openApart}</a></p>`,
		{
			headers: {
				'content-type': 'text/html; charset=utf-8',
				'cache-control': 'no-store',
				// The platform that has just been proved to be one may show this page, and no other.
				'content-security-policy': `default-src 'none'; style-src 'unsafe-inline'; object-src 'none'; base-uri 'none'; frame-ancestors ${origin}`
			}
		}
	);
};
