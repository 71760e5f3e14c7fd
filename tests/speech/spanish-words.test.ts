import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { PROJECT } from '../architecture/tree-copy.ts';
import { foldersHolding, translations } from '../lessons/lesson-files.ts';
import { speechFor } from '../support/speech.ts';
import { wordsInCode } from './english-in-code.ts';

/** A piece of Spanish that somebody reads, and where it stands. */
interface Said {
	readonly where: string;
	readonly text: string;
}

const CATALOGUE = path.join(PROJECT, 'shared/speech/es');
const catalogue = (): readonly Said[] =>
	readdirSync(CATALOGUE).flatMap((name) =>
		wordsInCode(name, readFileSync(path.join(CATALOGUE, name), 'utf8')).map(({ file, line, text }) => ({
			where: `${file}:${line}`,
			text
		}))
	);

/** The lines of a lesson, without what its front matter keeps of the English, tags and what is typed. */
const lessons = (): readonly Said[] =>
	translations('es').flatMap(({ id, text }) =>
		text
			.replace(/^---\n.*?\n---\n/s, (front) => front.replace(/^(?!title|part|summary).*$/gm, ''))
			.split('\n')
			.map((line, i) => ({
				where: `lessons/${id}:${i + 1}`,
				text: line.replace(/`[^`]*`|\]\([^)]*\)/g, '').replace(/\w+=(?=")|"|<\w+|\/?>/g, '')
			}))
	);

/** Labels of methods and garments, and what is said at the end of a part, below its English. */
const labels = (): readonly Said[] =>
	['es.yaml', 'part.yaml'].flatMap((name) =>
		foldersHolding(name).flatMap((id) =>
			readFileSync(path.join(PROJECT, 'lessons', id, name), 'utf8')
				.replace(/^[^]*^es: /m, '')
				.split('\n')
				.map((text, i) => ({ where: `lessons/${id}/${name}:${i + 1}`, text }))
		)
	);

const CATALOGUE_TEXTS = catalogue();
const COURSE_TEXTS = [...lessons(), ...labels()];
const ALL = [...CATALOGUE_TEXTS, ...COURSE_TEXTS];

const found = (texts: readonly Said[], pattern: RegExp): readonly string[] =>
	texts.filter(({ text }) => pattern.test(text)).map(({ where, text }) => `${where}: ${text}`);
const count = (text: string, sign: string): number => text.split(sign).length - 1;

/** A word that does not stand here, and why; the trade has more than one name for some things, and this course one. */
const NOT_HERE: readonly (readonly [word: RegExp, because: string])[] = [
	[/(?<!\p{L})(c[oó]g[eií]|c[oó]j[aáo])\p{L}*/iu, 'is rude from Mexico to Argentina: toma, prende, recoge'],
	[/(?<!\p{L})excusad[oa]s?(?!\p{L})/iu, 'is a water closet in Mexico: dispensado'],
	[/qué tan(?!\p{L})/iu, 'is said on one side of the ocean alone'],
	[/(?<!\p{L})(usted(es)?|vosotr[oa]s|vuestr[oa]s?|os)(?!\p{L})/iu, 'the reader is tú'],
	[/prueba en retal/iu, 'a remnant is too small: prenda de prueba'],
	[/(?<!\p{L})(nalgas|trasero)(?!\p{L})/iu, 'is coarse in some places: glúteos'],
	[
		/(?<!\p{L})(busto|cadera|vientre|brazo|cuerpo)s?( es)? (más )?llen[oa]s?(?!\p{L})/iu,
		'is English: ancho, grande, saliente'
	],
	[/(?<!\p{L})(dobladillos?|bastillas?)(?!\p{L})/iu, 'is called bajo here'],
	[/(?<!\p{L})cinturillas?(?!\p{L})/iu, 'is called pretina here'],
	[/(?<!\p{L})orden de costura(?!\p{L})/iu, 'is called orden de confección here'],
	[/la vuelta del (bajo|elástico)/iu, 'a hem’s vuelta is what is turned up: contorno']
];

describe('Spanish', () => {
	it('is read from every file: the catalogue, lessons, and labels of methods and garments', () => {
		expect(CATALOGUE_TEXTS.length).toBeGreaterThan(1500);
		expect(new Set(COURSE_TEXTS.map(({ where }) => where.split(':')[0])).size).toBeGreaterThan(75);
	});

	it.each(NOT_HERE)('does not have %s, which %s', (word) => {
		expect(found(ALL, word)).toEqual([]);
	});

	it('finds what it looks for', () => {
		const texts = ['Ella coge la tela', 'Cógela', 'recoge, escoge y encoge', '2 excusados', 'Un busto lleno'];
		const seen = texts.map((text) => NOT_HERE.some(([word]) => word.test(text)));
		expect(seen).toEqual([true, true, false, true, true]);
	});

	it('opens each question and each cry that it closes, and quotes with «»', () => {
		const uneven = ALL.filter(
			({ text }) =>
				/\p{L}/u.test(text) &&
				(count(text, '¿') !== count(text, '?') || count(text, '¡') !== count(text, '!')) &&
				// A sign that is named.
				!text.includes('(!)')
		);
		expect(uneven.map(({ where, text }) => `${where}: ${text}`)).toEqual([]);
		expect(found(ALL, /[“”‘’]/u)).toEqual([]);
	});

	it('lets three dots follow a word without a space', () => {
		const lines = readdirSync(CATALOGUE).flatMap((where) =>
			readFileSync(path.join(CATALOGUE, where), 'utf8')
				.split('\n')
				.map((text) => ({ where, text }))
		);
		expect(found(lines, /\p{L} …['`]/u)).toEqual([]);
	});

	it('writes decimals with a comma in what the course says', () => {
		expect(found(COURSE_TEXTS, /(?<![\d.])\d+\.\d(?!\d*\.)/)).toEqual([]);
	});
});

describe('what is put together in Spanish agrees', () => {
	const result = { words: { name: 'x' }, sum: undefined, exact: false };

	it('an inch and a yard are feminine, a centimetre is not', () => {
		const said = (unit: 'cm' | 'in'): string => {
			const speech = speechFor('es', unit);
			return speech.words.formulas.arithmetic({ ...result, result: speech.length(mm(127)) });
		};
		expect(said('cm')).toBe('x = unos 12,7 cm');
		expect(said('in')).toBe('x = unas 5″');
		const { pattern, garments } = speechFor('es', 'in').words;
		const cloth = garments.yards({ eighths: 12 });
		const sentences = [
			`${pattern.estimateFor({ width: mm(1400), name: 'Heron' })[0]}${cloth}`,
			pattern.interfacing({ cloth, width: mm(900) })
		];
		for (const sentence of sentences) {
			expect(sentence).toContain('1 1/2 yardas');
			expect(sentence).not.toContain('unos');
		}
	});

	it('a place beyond the centre or above the corner is so far in or up, without a minus', () => {
		const { desk, steps } = speechFor('es').words;
		expect(desk.onSheet({ x: mm(130), y: mm(-7) })).toBe('13 cm hacia fuera, 0,7 cm hacia arriba');
		expect(desk.onSheet({ x: mm(-130), y: mm(7) })).toBe('13 cm hacia dentro, 0,7 cm hacia abajo');
		const { worked } = steps.meeting({ name: 'K2', down: 'M2', across: 'A', x: mm(-130), y: mm(139) });
		expect(worked).toBe('K2 queda a 13 cm hacia dentro, como M2, y a 13,9 cm hacia abajo, como A.');
	});

	it('one learner has done something, several have', () => {
		const { handing, practising } = speechFor('es').words;
		for (const { doneBy } of [handing, practising]) {
			expect(doneBy({ done: 1, begun: 1, learners: 24 })).toMatch(/^1 de 24 tiene .*, 1 ha empezado$/);
			expect(doneBy({ done: 2, begun: 0, learners: 24 })).toMatch(/^2 de 24 tienen .*, 0 han empezado$/);
			expect(doneBy({ done: 0, begun: 1, learners: 1 })).toMatch(/^0 de 1 tiene /);
		}
	});

	it('one measurement is missing, several are', () => {
		const { missing, missingColumns } = speechFor('es').words.command;
		expect(missing({ id: 'back-block', count: 1 })).toBe('falta; back-block la necesita');
		expect(missing({ id: 'back-block', count: 2 })).toBe('faltan; back-block las necesita');
		const columns = { id: 'back-block', near: undefined, needed: ['bust', 'hip'] };
		expect(missingColumns({ ...columns, count: 2 })).toMatch(/^faltan;/);
	});
});
