import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, speechFor } from '../../classes.server.ts';
import { COURSES } from '../../course.server.ts';
import { page, written } from '../document.server.ts';
import type { RequestHandler } from './$types';

/** What a teacher has chosen goes back to their learning platform: a form of its own, which a script sends on. */
export const POST: RequestHandler = async (event) => {
	const form = await event.request.formData();
	const { language, words } = await speechFor(event.request);
	const titles = Object.fromEntries(COURSES[language].lessons.map(({ id, meta }) => [id, meta.title]));
	const { to, answer, origin } = await asked(USE_CASES.sendChoice, event, {
		ticket: form.get('ticket'),
		chosen: form.getAll('chosen'),
		site: event.url.origin,
		titles
	});
	return page({
		language,
		origin,
		// A platform may send its form on, to another of its addresses.
		formTo: `${new URL(to).origin} https:`,
		script: '/lti-return.js',
		body:
			`<form method="post" action="${written(to)}"><input type="hidden" name="JWT" value="${answer}">` +
			`<button>${words.platform.goBack}</button></form>`
	});
};
