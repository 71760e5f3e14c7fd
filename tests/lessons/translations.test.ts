import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '#shared/speech/language.ts';
import { garments } from '../garment/garment-files.ts';
import { embeddable, lessonFiles, lessonMethods, translations } from './lesson-files.ts';
import { problemsIn, type Known } from './lesson-rules.ts';
import { frontMatter, sectionsOf } from './sections.ts';
import { staleProblems, stamped, structureProblems } from './translation.ts';

const KNOWN: Known = {
	components: embeddable(),
	methods: lessonMethods(),
	garments: new Map(garments().map((garment) => [garment.id, garment]))
};

/** A lesson may wait for its translation, but not go back to having none. */
const LEAST_TRANSLATED = { es: 40 };

describe.each(LANGUAGES.filter((language) => language !== 'en'))('the lessons in %s', (language) => {
	const all = translations(language);

	it('are no fewer than they were', () => {
		const waiting = lessonFiles().length - all.length;
		if (waiting > 0) console.log(`${waiting} of ${lessonFiles().length} lessons have no ${language}.md yet`);
		expect(all.length).toBeGreaterThanOrEqual(LEAST_TRANSLATED[language]);
	});

	it.each(all)('$id is sound', (lesson) => {
		expect(problemsIn(lesson, KNOWN)).toEqual([]);
	});

	it.each(all)('$id is built as the English is, and was read beside it as it stands', ({ source, text }) => {
		expect([...structureProblems(source.text, text), ...staleProblems(source.text, text)]).toEqual([]);
	});

	it('a part of the course has one name', () => {
		const names = new Map<unknown, unknown>();
		for (const { id, source, text } of all) {
			const [part, name] = [frontMatter(source.text)['part'], frontMatter(text)['part']];
			expect(names.get(part) ?? name, id).toBe(name);
			names.set(part, name);
		}
	});
});

const ENGLISH = `---
title: A planted lesson
part: Practice
method: first-marks
minutes: 2
summary: Stands here to be spoilt.
---

Words come first.

<Step name="A">

Go down 12.5 cm from **O**. That is **A**.

</Step>

<Figure upto="A" caption="A lies below O." />

**The slip.** Look at [the page](/patterns/x).
`;

const SPANISH = `---
title: Una lección plantada
part: Práctica
method: first-marks
minutes: 2
summary: Está aquí para que la estropeen.
---

Primero, unas palabras.

<Step name="A">

Baja 12,5 cm desde **O**. Ese punto es **A**.

</Step>

<Figure upto="A" caption="Debajo de O está A." />

**El error.** Mira [la página](/es/patterns/x).
`;

const change = (text: string, what: string, put: string): string => {
	if (!text.includes(what)) throw new Error(`nothing was changed: ${what}`);
	return text.replace(what, put);
};

describe('a translation that strays is seen', () => {
	it('a lesson has its sections', () => {
		expect(sectionsOf(ENGLISH).map(({ name }) => name)).toEqual([
			'front',
			'opening',
			'A',
			'after-A',
			'the-slip'
		]);
	});

	it('one that follows the English has nothing wrong, and is stamped once and for all', () => {
		expect(structureProblems(ENGLISH, SPANISH)).toEqual([]);
		expect(staleProblems(ENGLISH, SPANISH)).toEqual(['it has never been stamped']);
		const once = stamped(ENGLISH, SPANISH);
		expect(staleProblems(ENGLISH, once)).toEqual([]);
		expect(stamped(ENGLISH, once)).toBe(once);
	});

	it.each([
		['12,5 cm', '12 cm', 'section "A": numbers differ: "12.5" in English, "12" here'],
		['desde **O**', 'desde **P**', 'section "A": points differ: "A O" in English, "A P" here'],
		[
			'upto="A"',
			'upto="B"',
			'section "after-A": components differ: "<Figure upto="A" />" in English, "<Figure upto="B" />" here'
		],
		['de O está A', 'de P está A', 'section "after-A": P is not in the English'],
		['de O está A', 'está', 'section "after-A": O is not named'],
		[
			'/es/patterns/x',
			'/es/patterns/y',
			'section "the-slip": links differ: "/patterns/x" in English, "/patterns/y" here'
		],
		['<Step name="A">', '<Step name="B">', 'section "A" is missing: found step B'],
		['**El error.** Mira', 'Mira', 'section "the-slip" is missing: the text ends before it'],
		['Mira [', '\n\n**Otra cosa.** Mira [', 'section "otra-cosa" is not in the English'],
		['minutes: 2', 'minutes: 3', 'minutes must be the same as in English'],
		['method: first-marks\n', '', 'method must be the same as in English'],
		['title: Una lección plantada', 'title: A planted lesson', 'title is not translated']
	])('%j put as %j', (what, put, problem) => {
		expect(structureProblems(ENGLISH, change(SPANISH, what, put))).toContain(problem);
	});

	it.each([
		['Go down', 'Walk down', 'section "A" is stale: the English has changed since it was translated'],
		['Stands here', 'Is here', 'section "front" is stale: the English has changed since it was translated'],
		['**The slip.**', '**The fault.**', 'section "the-slip" was stamped and is no longer in the English']
	])('the English %j changed into %j', (what, put, problem) => {
		expect(staleProblems(change(ENGLISH, what, put), stamped(ENGLISH, SPANISH))).toContain(problem);
	});

	it('a line break is no change, another word of the translation is one', () => {
		const once = stamped(ENGLISH, SPANISH);
		expect(staleProblems(change(ENGLISH, 'Words come', 'Words\ncome'), once)).toEqual([]);
		expect(staleProblems(ENGLISH, change(once, 'Baja', 'Desciende'))).toEqual([
			'its own words have changed since it was stamped'
		]);
	});
});
