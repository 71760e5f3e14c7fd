import type { Component } from 'svelte';
import type { PageLoad } from './$types';

const TEXTS = import.meta.glob<Component>('/lessons/*/*.md', { import: 'default' });

/** The text of a lesson, in the language that the server found it in. */
export const load: PageLoad = async ({ data }) => {
	const text = TEXTS[`/lessons/${data.id}/${data.language}.md`];
	if (!text) throw new Error(`the lesson ${data.id} has no text`);
	const end = data.partEnd && import('#ui/pages/lesson/PartEnd.svelte');
	return { ...data, Lesson: await text(), PartEnd: (await end)?.default };
};
