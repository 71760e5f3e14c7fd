import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { garmentFileSchema } from '#shared/garment.ts';
import { methodFileSchema } from '#shared/method.ts';
import { LANGUAGES } from '#shared/speech/language.ts';
import { readNoun } from '#shared/speech/noun.ts';
import { numbers } from './translation.ts';

const LESSONS = fileURLToPath(new URL('../../lessons/', import.meta.url));

/** What is said, by where it stands: `method.steps.O`. English is undefined where the name itself says it. */
type Said = Readonly<Record<string, string | undefined>>;

const flat = (value: unknown, place: string): [string, string][] =>
	typeof value === 'object' && value !== null
		? Object.entries(value).flatMap(([key, each]) => flat(each, `${place}.${key}`))
		: [[place, String(value)]];

interface Named {
	readonly name: string;
}

const by = <T>(all: readonly T[], name: (each: T) => string, words: (each: T) => unknown): object =>
	Object.fromEntries(all.map((each) => [name(each), words(each)]));

const named = <T extends Named>(all: readonly T[], words: (each: T) => unknown): object =>
	by(all, ({ name }) => name, words);

const read = (folder: string, file: string): unknown => {
	const whole = path.join(LESSONS, folder, file);
	return existsSync(whole) ? parse(readFileSync(whole, 'utf8')) : undefined;
};

const methodSaid = (folder: string): unknown => {
	const content = read(folder, 'method.yaml');
	if (content === undefined) return {};
	const { name, called, steps, allowances, refusals, warnings } = methodFileSchema.parse(content);
	return {
		name,
		...(called === undefined ? {} : { called }),
		steps: named(steps, ({ label }) => label),
		allowances: by(
			Object.entries(allowances),
			([key]) => key,
			([, { label }]) => label
		),
		choices: Object.fromEntries(
			Object.entries(allowances).flatMap(([key, each]) =>
				'choices' in each
					? [
							[
								key,
								by(
									Object.entries(each.choices),
									([name]) => name,
									([, { label }]) => label
								)
							]
						]
					: []
			)
		),
		refusals: named(refusals, ({ because }) => because),
		warnings: named(warnings, ({ because }) => because)
	};
};

const given = (label: string | undefined, key: string): object =>
	label === undefined ? {} : { [key]: label };

const garmentSaid = (folder: string): unknown => {
	const content = read(folder, 'garment.yaml');
	if (content === undefined) return {};
	const {
		name,
		about,
		pieces,
		seams,
		smooth,
		numbers: counted,
		wear,
		girths,
		order
	} = garmentFileSchema.parse(content);
	return {
		name,
		about,
		pieces: by(
			pieces,
			({ key }) => key,
			(piece) => ({
				name: piece.name,
				edges: named(piece.edges, () => ''),
				marks: {
					...by(
						piece.marks,
						({ line }) => line,
						({ label }) => label
					),
					...named(piece.levels, ({ label }) => label)
				},
				drills: by(
					piece.drills,
					(each) => ('point' in each ? each.point : each.end),
					({ label }) => label
				),
				darts: piece.darts.map((dart) => dart.name),
				text: piece.text
			})
		),
		seams: named(seams, ({ label, runs }) => ({
			label,
			runs: { ...given(runs.start, 'start'), ...given(runs.end, 'end') }
		})),
		smooth: smooth.map(({ label }) => label),
		numbers: named(counted, ({ label, because }) => ({ label, ...given(because, 'because') })),
		wear: named(wear, ({ label, low, high }) => ({
			label,
			...given(low, 'low'),
			...given(high, 'high')
		})),
		girths: named(girths, ({ label, rows }) => ({ label, rows: named(rows, (row) => row.label) })),
		order
	};
};

const english = (folder: string): Said =>
	Object.fromEntries(flat({ method: methodSaid(folder), garment: garmentSaid(folder) }, ''));

const translated = (folder: string, language: string): Said =>
	Object.fromEntries(flat(read(folder, `${language}.yaml`) ?? {}, ''));

/** Nouns, that sentences put their articles before. */
const NOUN = /^\.method\.(?:called|steps|allowances)/;

const problems = (wanted: Said, seen: Said): readonly string[] => [
	...Object.keys(wanted)
		.filter((place) => !seen[place])
		.map((place) => `${place} is missing`),
	...Object.keys(seen)
		.filter((place) => !(place in wanted))
		.map((place) => `${place} is in no file`),
	...Object.entries(wanted).flatMap(([place, told = '']) => {
		const said = seen[place];
		if (said === undefined) return [];
		if (said === told) return [`${place} is not translated`];
		if (numbers(told).join(' ') !== numbers(said).join(' '))
			return [`${place}: numbers differ: ${told} | ${said}`];
		const isNoun = NOUN.test(place) && readNoun(told, 'en').article !== undefined;
		if ((isNoun || place.includes('.edges.')) && readNoun(said, 'es').article === undefined)
			return [`${place}: "${said}" has no article`];
		return [];
	})
];

const holding = (...files: readonly string[]): readonly string[] =>
	readdirSync(LESSONS)
		.filter((folder) => files.some((file) => existsSync(path.join(LESSONS, folder, file))))
		.sort();

describe.each(LANGUAGES.filter((language) => language !== 'en'))('methods and garments in %s', (language) => {
	it('every folder with a method or a garment says it, and no other does', () => {
		expect(holding(`${language}.yaml`)).toEqual(holding('method.yaml', 'garment.yaml'));
	});

	it.each(holding(`${language}.yaml`))('%s says all that the English says, and no more', (folder) => {
		expect(problems(english(folder), translated(folder, language))).toEqual([]);
	});
});

describe('words that stray are seen', () => {
	const wanted = {
		'.method.name': 'The block',
		'.method.steps.A': 'the corner',
		'.garment.order.0': 'Cut 2 cm.'
	};
	const said = {
		'.method.name': 'Patrón base',
		'.method.steps.A': 'la esquina',
		'.garment.order.0': 'Corta 2 cm.'
	};

	it('nothing is wrong before', () => {
		expect(problems(wanted, said)).toEqual([]);
	});

	it.each([
		['.method.steps.A', undefined, '.method.steps.A is missing'],
		['.method.steps.B', 'el punto', '.method.steps.B is in no file'],
		['.method.steps.A', 'esquina', '.method.steps.A: "esquina" has no article'],
		['.method.name', 'The block', '.method.name is not translated'],
		['.garment.order.0', 'Corta 3 cm.', '.garment.order.0: numbers differ: Cut 2 cm. | Corta 3 cm.']
	])('%s said as %s', (place, put, problem) => {
		expect(problems(wanted, { ...said, [place]: put })).toContain(problem);
	});
});
