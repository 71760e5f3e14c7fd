import { createHash } from 'node:crypto';
import { parse } from 'yaml';

/** A part of a lesson that a translator reads again when it changes. */
export interface Section {
	/** `front` for the front matter, `opening`, a step's name, or its heading in small letters. */
	readonly name: string;
	/** What it must be beside it in the other language: a step is that step, a heading any heading. */
	readonly place: string;
	readonly text: string;
}

const FRONT_MATTER = /^---\n([\s\S]*?)\n---\n/;
/** A heading, or the short bold sentence that a paragraph begins with in its place. */
const HEADING = /^(?:#+ (.+)|\*\*([^*]+[.?!])\*\*)/;
const STEP = /^<Step name="(\w+)">$/;

const slug = (text: string): string =>
	text
		.toLowerCase()
		.replace(/[^\p{L}\d]+/gu, '-')
		.replace(/^-|-$/g, '');

/** The front matter as it stands, of whatever shape. */
export const frontMatter = (text: string): Readonly<Record<string, unknown>> =>
	(parse(FRONT_MATTER.exec(text)?.[1] ?? '') ?? {}) as Readonly<Record<string, unknown>>;

/** The words of the front matter that are translated; the rest of it is compared. */
export const TRANSLATED = ['title', 'part', 'summary'] as const;

const frontOf = (text: string): Section => {
	const front = frontMatter(text);
	const words = TRANSLATED.map((key) => (typeof front[key] === 'string' ? front[key] : ''));
	return { name: 'front', place: 'front', text: words.join('\n') };
};

/** A lesson in its parts: front matter, opening, each step, what stands under each heading, what follows a step. */
export const sectionsOf = (text: string): readonly Section[] => {
	const sections: { name: string; place: string; lines: string[] }[] = [];
	const begin = (name: string, place: string): void => {
		const twins = sections.filter((each) => each.name.replace(/-\d+$/, '') === name).length;
		sections.push({ name: twins > 0 ? `${name}-${twins + 1}` : name, place, lines: [] });
	};
	begin('opening', 'opening');
	let step: string | undefined;
	for (const line of text.replace(FRONT_MATTER, '').split('\n')) {
		const opened = STEP.exec(line)?.[1];
		const heading = step === undefined ? HEADING.exec(line) : null;
		if (opened !== undefined) begin((step = opened), `step ${opened}`);
		else if (heading) begin(slug(heading[1] ?? heading[2] ?? ''), 'heading');
		sections.at(-1)?.lines.push(line);
		if (line !== '</Step>' || step === undefined) continue;
		begin(`after-${step}`, `after step ${step}`);
		step = undefined;
	}
	const written = sections.map(({ lines, ...rest }) => ({ ...rest, text: lines.join('\n').trim() }));
	return [frontOf(text), ...written.filter(({ text: words }) => words !== '')];
};

/** Eight letters that change with a text's words, and not with its line breaks. No digits, which YAML might take for a number. */
export const hashOf = (text: string): string =>
	createHash('sha256')
		.update(text.replace(/\s+/g, ' ').trim())
		.digest('hex')
		.slice(0, 8)
		.replace(/\d/g, (digit) => String.fromCharCode('g'.charCodeAt(0) + Number(digit)));

/** The hash of all that is said in a text, in whatever part of it. */
export const wholeHash = (text: string): string =>
	hashOf(
		sectionsOf(text)
			.map((section) => section.text)
			.join('\n')
	);
