import { frontMatter, hashOf, sectionsOf, TRANSLATED, wholeHash, type Section } from './sections.ts';

/** Attributes that are read by people, and so are translated; all others must be the same. */
const PROSE = ['caption'];

const matches = (text: string, pattern: RegExp): readonly string[] =>
	[...text.matchAll(pattern)].map(([whole, inner]) => inner ?? whole);

/** Components with what they are given, but for prose. */
const components = (text: string): readonly string[] =>
	matches(text, /<[^>]*>/g).map((tag) => tag.replace(new RegExp(` (?:${PROSE.join('|')})="[^"]*"`, 'g'), ''));

/** The numbers that a text writes in digits, sorted, with decimal points. */
export const numbers = (text: string): readonly string[] =>
	matches(text, /\d+(?:[.,]\d+)?/g)
		.map((each) => each.replace(',', '.'))
		.sort();

const targets = (text: string): readonly string[] =>
	matches(text, /\]\(([^)]*)\)/g).map((each) => each.replace(/^\/[a-z]{2}\//, '/'));

/** What both languages must have alike, and how each is counted. */
const ALIKE: readonly [what: string, read: (text: string) => readonly string[]][] = [
	['components', components],
	['numbers', numbers],
	['points', (text) => matches(text, /\*\*([A-Z]\d*)\*\*/g).toSorted()],
	['links', targets]
];

/** Points that a text names without bold letters, as captions do: anywhere, or where no sentence begins, since there A may be a word. */
const named = (text: string) => ({
	anywhere: matches(text, /(?<![\p{L}\d])[A-Z]\d*(?![\p{L}\d])/gu),
	within: matches(text, /(?<=[\p{L}\d,;:–] |–)[A-Z]\d*(?![\p{L}\d])/gu)
});

const unnamed = (source: string, translation: string): readonly string[] => {
	const [here, there] = [named(source), named(translation)];
	return [
		...here.within.filter((each) => !there.anywhere.includes(each)).map((each) => `${each} is not named`),
		...there.within
			.filter((each) => !here.anywhere.includes(each))
			.map((each) => `${each} is not in the English`)
	];
};

const unlike = (source: Section, translation: Section): readonly string[] => [
	...ALIKE.flatMap(([what, read]) => {
		const [wanted, seen] = [read(source.text).join(' '), read(translation.text).join(' ')];
		return wanted === seen ? [] : [`${what} differ: "${wanted}" in English, "${seen}" here`];
	}),
	...new Set(unnamed(source.text, translation.text))
];

const frontProblems = (source: string, translation: string): readonly string[] => {
	const [wanted, seen] = [frontMatter(source), frontMatter(translation)];
	const own = [...TRANSLATED, 'of', 'own'] as readonly string[];
	const keys = [...new Set([...Object.keys(wanted), ...Object.keys(seen)])].filter(
		(key) => !own.includes(key)
	);
	return [
		...TRANSLATED.filter((key) => wanted[key] === seen[key]).map((key) => `${key} is not translated`),
		...keys.filter((key) => wanted[key] !== seen[key]).map((key) => `${key} must be the same as in English`)
	];
};

/** How a translation is built otherwise than its source, each with the section by its name in the source. */
export const structureProblems = (source: string, translation: string): readonly string[] => {
	const [wanted, seen] = [sectionsOf(source), sectionsOf(translation)];
	const problems = [...frontProblems(source, translation)];
	for (const [i, section] of wanted.entries()) {
		const beside = seen[i];
		if (beside?.place !== section.place) {
			const found = beside ? `found ${beside.place}` : 'the text ends before it';
			return [...problems, `section "${section.name}" is missing: ${found}`];
		}
		problems.push(...unlike(section, beside).map((each) => `section "${section.name}": ${each}`));
	}
	const spare = seen[wanted.length];
	return spare ? [...problems, `section "${spare.name}" is not in the English`] : problems;
};

/** What a translation keeps of its source: the hash of each section, and its own. */
const stampFor = (source: string, translation: string): { of: Record<string, string>; own: string } => ({
	of: Object.fromEntries(sectionsOf(source).map(({ name, text }) => [name, hashOf(text)])),
	own: wholeHash(translation)
});

/** Where a translation has not been read beside its source since either was changed. */
export const staleProblems = (source: string, translation: string): readonly string[] => {
	const { of, own } = frontMatter(translation);
	if (of === undefined || own === undefined) return ['it has never been stamped'];
	const [kept, now] = [of as Record<string, string>, stampFor(source, translation)];
	return [
		...Object.entries(now.of)
			.filter(([name, hash]) => kept[name] !== hash)
			.map(([name]) => `section "${name}" is stale: the English has changed since it was translated`),
		...Object.keys(kept)
			.filter((name) => !(name in now.of))
			.map((name) => `section "${name}" was stamped and is no longer in the English`),
		...(own === now.own ? [] : ['its own words have changed since it was stamped'])
	];
};

/** A translation with its stamp put into its front matter, or put anew. */
export const stamped = (source: string, translation: string): string => {
	const { of, own } = stampFor(source, translation);
	const each = Object.entries(of).map(([name, hash]) => `${name}: ${hash}`);
	const bare = translation.replace(/^(of|own): .*\n/gm, '');
	return bare.replace(/\n---\n/, `\nof: { ${each.join(', ')} }\nown: ${own}\n---\n`);
};
