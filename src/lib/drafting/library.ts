import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { Method } from './method.ts';
import type { Language } from '#shared/speech/language.ts';
import { readTwins } from './read-twins.ts';
import { readMethod, type FindMethod, type Told } from './read-method.ts';

/** A method file as parsed, not yet checked, and the place that errors about it name. */
export interface ParsedMethodFile {
	readonly place: string;
	readonly content: unknown;
	/** The section `method` of its words in the language that is read. */
	readonly words?: Told['words'];
}

/** The id that a parsed method file gives itself; empty where it gives none. */
export const methodFileId = ({ content }: ParsedMethodFile): string =>
	content && typeof content === 'object' && 'id' in content ? String(content.id) : '';

/**
 * Finds methods by id among parsed files, each read once with the methods that it uses. Methods that
 * use each other in a circle are a BadInput that shows the circle. Names are read for one language.
 */
export const methodLibrary = (files: readonly ParsedMethodFile[], language: Language = 'en'): FindMethod => {
	const read = new Map<string, Method>();
	const find = (id: string, trail: readonly string[]): Method | undefined => {
		const known = read.get(id);
		const file = files.find((each) => methodFileId(each) === id);
		if (known || !file) return known;
		if (trail.includes(id)) {
			const names = [...trail.slice(trail.indexOf(id)), id];
			throw new BadInput(`${file.place}: uses`, message('reading', 'methodsInCircle', { names }));
		}
		const alone = readMethod(file.content, file.place, (other) => find(other, [...trail, id]), {
			language,
			words: file.words
		});
		const method = { ...alone, twins: readTwins(alone, file.content, files, language) };
		read.set(id, method);
		return method;
	};
	return (id) => find(id, []);
};
