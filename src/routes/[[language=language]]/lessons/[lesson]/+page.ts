import type { Component } from 'svelte';
import { languageOf } from '#shared/speech/language.ts';
import type { PageLoad } from './$types';

const TEXTS = import.meta.glob<Component>('/lessons/*/*.md', { import: 'default' });

/** The text in the language of the address; in English where it is not written in that yet. */
export const load: PageLoad = async ({ data, url }) => {
	const wanted = languageOf(url.pathname);
	const language = `/lessons/${data.id}/${wanted}.md` in TEXTS ? wanted : 'en';
	const text = TEXTS[`/lessons/${data.id}/${language}.md`];
	if (!text) throw new Error(`the lesson ${data.id} has no text`);
	return { ...data, language, Lesson: await text() };
};
