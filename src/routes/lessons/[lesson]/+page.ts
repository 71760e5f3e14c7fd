import type { Component } from 'svelte';
import type { PageLoad } from './$types';

const TEXTS = import.meta.glob<Component>('/lessons/*/en.md', { import: 'default' });

export const load: PageLoad = async ({ data }) => {
	const text = TEXTS[`/lessons/${data.id}/en.md`];
	if (!text) throw new Error(`the lesson ${data.id} has no text`);
	return { ...data, Lesson: await text() };
};
