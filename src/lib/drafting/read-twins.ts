import { BadInput } from '#shared/bad-input.ts';
import { methodFileSchema, methodWordsSchema, type MethodFile } from '#shared/method.ts';
import type { Language } from '#shared/speech/language.ts';
import { readNoun } from '#shared/speech/noun.ts';
import type { Formula } from './formula/formula.ts';
import { allowanceNames, parseFormula, type KnownNames } from './formula/parse.ts';
import type { Method, Twin } from './method.ts';
import { stepMakes } from './steps/kinds.ts';

/** A method file as parsed, with its words in the language that is read, where there are any. */
interface Parsed {
	readonly content: unknown;
	readonly words?: { readonly content: unknown } | undefined;
}

/** Whether a method file says that it uses another; looked at before its shape is, as most do not. */
const leansOn = (content: unknown, id: string): boolean =>
	Object.values((content as { uses?: Readonly<Record<string, unknown>> } | null)?.uses ?? {}).includes(id);

/** A formula of another draft, where it can be worked on this one. */
const readable = (text: string, known: KnownNames): Formula | undefined => {
	try {
		return parseFormula(text, 'by', known);
	} catch (error) {
		if (error instanceof BadInput) return undefined;
		throw error;
	}
};

const rulesOf = ({ steps }: MethodFile): Readonly<Record<string, string>> =>
	Object.fromEntries(steps.flatMap((step) => ('by' in step && step.by ? [[step.name, step.by]] : [])));

/**
 * What the drafts that lean on a method do at the steps that it has as well, where they do otherwise: the front's rule for a depth, which
 * is followed in the back by mistake. Only what can be worked from this draft's own points. `own` is the method's file.
 */
export const readTwins = (
	{ id, steps, allowances }: Method,
	own: unknown,
	files: readonly Parsed[],
	language: Language
): readonly Twin[] => {
	const leaning = files.filter(({ content }) => leansOn(content, id));
	const written = leaning.length === 0 ? undefined : methodFileSchema.safeParse(own).data;
	if (!written) return [];
	const rules = rulesOf(written);
	const made = (kind: 'point' | 'line'): readonly string[] =>
		steps.filter((step) => stepMakes(step) === kind).map(({ name }) => name);
	const known = { ...allowanceNames(allowances), points: made('point'), lines: made('line') };
	return leaning.flatMap(({ content, words }): readonly Twin[] => {
		const { data } = methodFileSchema.safeParse(content);
		if (!data) return [];
		const others = Object.entries(rulesOf(data)).flatMap(([step, text]) => {
			const formula = step in rules && rules[step] !== text ? readable(text, known) : undefined;
			return formula ? [{ step, formula }] : [];
		});
		const told = methodWordsSchema.safeParse(words?.content).data;
		const called = readNoun(told?.called ?? data.called ?? data.name, language);
		return others.length === 0 ? [] : [{ id: data.id, called, rules: others }];
	});
};
