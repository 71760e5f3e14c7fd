import { BadInput } from '#shared/bad-input.ts';
import { message, type Message } from '#shared/speech/message.ts';
import type { InputFile } from './input-file.ts';

/** Where the string that begins at `start` ends: at its closing quote. */
const endOfString = (text: string, start: number): number => {
	let i = start + 1;
	while (i < text.length && text[i] !== '"') i += text[i] === '\\' ? 2 : 1;
	return i;
};

/** An object or a list that is open at a place of the text: its keys so far, and the last of them. */
interface Open {
	readonly keys: Set<string>;
	last: string;
}

/**
 * The first key of valid JSON that stands twice in one object, of which only the last would count, or that is lost in reading; by
 * all the keys that lead to it. It does not go down by calling itself, so that nothing is too deep for it.
 */
const firstSlip = (text: string): readonly [keys: readonly string[], slip: Message] | undefined => {
	const open: Open[] = [];
	const colon = /\s*:/y;
	for (let i = 0; i < text.length; i++) {
		const [sign, inside] = [text[i], open.at(-1)];
		if (sign === '{' || sign === '[') open.push({ keys: new Set(), last: '' });
		if (sign === '}' || sign === ']') open.pop();
		if (sign !== '"') continue;
		const end = endOfString(text, i);
		colon.lastIndex = end + 1;
		if (inside && colon.test(text)) {
			const key = JSON.parse(text.slice(i, end + 1)) as string;
			const [isTwice, isLost] = [inside.keys.has(key), key === '__proto__'];
			inside.keys.add((inside.last = key));
			if (isTwice || isLost)
				return [
					open.map(({ last }) => last).filter(Boolean),
					message('command', isTwice ? 'keyTwice' : 'keyLost')
				];
		}
		i = end;
	}
	return undefined;
};

/** A text as JSON. Throws BadInput at `place` where it is none. */
export const parsedJson = (text: string, place: string): unknown => {
	try {
		return JSON.parse(text);
	} catch (problem) {
		if (!(problem instanceof SyntaxError)) throw problem;
		throw new BadInput(place, message('command', 'notJson', { problem: problem.message }));
	}
};

/** Throws BadInput, at `place` and the keys that lead there, where a key of valid JSON stands twice or would be lost. */
export const checkKeys = (text: string, place: string): void => {
	const slip = firstSlip(text);
	if (slip) throw new BadInput([place, slip[0].join('.')].join(': '), slip[1]);
};

/** A file's content as JSON. Throws BadInput where it is none, and where a key stands twice. */
export const readJson = ({ text, place }: InputFile): unknown => {
	const value = parsedJson(text, place);
	checkKeys(text, place);
	return value;
};
