import { withChecking } from '#shared/speech/checking-words.ts';
import { languageOf } from '#shared/speech/language.ts';
import { schoolWords } from '#shared/speech/school-words.ts';
import type { Component } from 'svelte';
import type { PageLoad } from './$types';

const TEXTS = import.meta.glob<Component>('/lessons/*/*.md', { import: 'default' });

/** One page says what no other does; where a lesson is drafted for an assignment, its text and the lesson's own page come with it. */
export const load: PageLoad = async ({ data, url }) => {
	const catalogue = await schoolWords(languageOf(url.pathname));
	const none = {
		...{ Lesson: undefined, Desk: undefined, Paper: undefined },
		...{ DraftPage: undefined, BoardPage: undefined, RemarkingPage: undefined },
		...{ PractisePage: undefined, AnswersPage: undefined }
	};
	if (data.shows === 'draft' || data.shows === 'board' || data.shows === 'remarking')
		return { ...data, catalogue, ...none, ...(await import('./teaching.ts')) };
	if (data.shows === 'practise' || data.shows === 'answers')
		return { ...data, catalogue, ...none, ...(await import('./practising.ts')) };
	if (data.shows === 'work' && data.paper) {
		const { default: Paper } = await import('#ui/pages/paper/PaperPage.svelte');
		return { ...data, catalogue: await withChecking(catalogue), ...none, Paper };
	}
	const desk = data.shows === 'work' ? data.desk : undefined;
	const text = desk && TEXTS[`/lessons/${desk.id}/${desk.language}.md`];
	if (!text) return { ...data, catalogue, ...none };
	const { Desk } = await import('./desk.ts');
	return { ...data, catalogue, ...none, Lesson: await text(), Desk };
};
