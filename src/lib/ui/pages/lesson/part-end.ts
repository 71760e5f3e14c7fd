import type { Language } from '#shared/speech/language.ts';

/** What is told at the end of a part of the course, in words of the page's language. */
export interface PartEnd {
	readonly goodFor: { readonly title: string; readonly text: string };
	readonly next: string;
	readonly ways: readonly { readonly href: string; readonly words: string; readonly language: Language }[];
}
