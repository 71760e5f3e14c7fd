import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, keptWay, sent, speechFor, stayIn } from '../../classes.server.ts';
import { COURSES } from '../../course.server.ts';
import { page, written } from '../document.server.ts';
import type { RequestHandler } from './$types';

type Said = Awaited<ReturnType<typeof speechFor>>;

/** In a frame most browsers keep nothing for another site than the one that is looked at: a form opens a page of its own. */
const apart = ({ language, words: { platform } }: Said, ticket: string, origin: string): Response =>
	page({
		language,
		origin,
		body:
			`<p>${platform.opensApart}</p><form method="post" action="/lti/open" target="_blank" rel="noopener">` +
			`<input type="hidden" name="ticket" value="${ticket}"><button>${platform.openApart}</button></form>`
	});

const choice = (name: string, value: string, label: string, type: string, checked: boolean): string =>
	`<label><input type="${type}" name="${name}" value="${value}"${checked ? ' checked' : ''}><span>${written(label)}</span></label>`;

/** What a class was set and the lessons of the course, to choose from. */
const choices = (
	{ language, words: { platform } }: Said,
	found: {
		readonly ticket: string;
		readonly several: boolean;
		readonly assignments: readonly { readonly id: string; readonly name: string }[];
	},
	origin: string
): Response => {
	const type = found.several ? 'checkbox' : 'radio';
	// Of one of several something is chosen from the start, since nothing would be no answer.
	let first = !found.several;
	const one = (value: string, label: string): string => {
		const made = choice('chosen', value, label, type, first);
		first = false;
		return made;
	};
	const set = found.assignments.map(({ id, name }) => one(`assignment.${id}`, name));
	const lessons = COURSES[language].lessons.map(({ id, meta }) => one(`lesson.${id}`, meta.title));
	return page({
		language,
		origin,
		body:
			`<h1>${platform.chooseLinks}</h1><form method="post" action="/lti/choose">` +
			`<input type="hidden" name="ticket" value="${found.ticket}">` +
			`<h2>${platform.chooseAssignments}</h2>${set.length > 0 ? set.join('') : `<p>${platform.noneToChoose}</p>`}` +
			`<h2>${platform.chooseLessons}</h2><details${set.length > 0 ? '' : ' open'}><summary>${platform.allLessons}</summary>${lessons.join('')}</details>` +
			`<button>${platform.putThere}</button></form>`
	});
};

/** A learning platform has said who somebody is, and what they come for. */
export const POST: RequestHandler = async (event) => {
	const form = await sent(event.request);
	const kept = keptWay(event, form['state'] ?? '');
	// Old browsers do not say what they want a page for: one that has kept nothing may be in a frame.
	const to = event.request.headers.get('sec-fetch-dest');
	const inFrame = to === null ? kept === undefined : to !== 'document';
	const given = { ...form, inFrame, kept, site: event.url.origin };
	const found = await asked(USE_CASES.launch, event, given);
	const said = await speechFor(event.request);
	if (found.kind === 'in') return stayIn(event, found.secret, found.to);
	if (found.kind === 'apart') return apart(said, found.ticket, found.origin);
	return choices(said, found, found.origin);
};
