import { describe, expect, it } from 'vitest';
import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { refusalOf } from '../support/refusal.ts';
import { course } from '#course/course.ts';
import { goesOnWith, neighbours } from '#course/neighbours.ts';

const META = 'title: A\npart: B\nminutes: 2\nsummary: C';
const lesson = (front: string, body = ''): string => `---\n${front}\n---\n\n${body}\n`;

describe('the course of the lessons', () => {
	const [english, spanish] = [lessonCourse('en'), lessonCourse('es')];

	it('has the same lessons, methods and garments in every language', () => {
		expect(english.lessons.length).toBeGreaterThan(30);
		expect(spanish.lessons.map(({ id, steps }) => ({ id, steps }))).toEqual(
			english.lessons.map(({ id, steps }) => ({ id, steps }))
		);
		expect(spanish.methods.map(({ id }) => id)).toEqual(english.methods.map(({ id }) => id));
		expect(spanish.garments.map(({ id }) => id)).toEqual(english.garments.map(({ id }) => id));
	});

	it('is called by the names of its language', () => {
		expect(english.method('back-block')?.name).toBe('The back block');
		expect(spanish.method('back-block')?.name).toBe('Patrón base de espalda');
		const title = ({ lessons }: typeof english): string | undefined =>
			lessons.find(({ id }) => id === '40-back-levels')?.meta.title;
		expect(title(spanish)).toBe('Los niveles');
		expect(title(english)).not.toBe(title(spanish));
	});

	it('has no method or garment of another name', () => {
		expect(english.method('back-blok')).toBeUndefined();
		expect(english.garment('back-block')).toBeUndefined();
	});
});

describe('which lesson leads to which', () => {
	const aside = lesson(`${META}\naside: true`);
	const files = {
		'lessons/1/en.md': lesson(META),
		'lessons/2/en.md': aside,
		'lessons/3/en.md': aside,
		'lessons/4/en.md': lesson(META),
		'lessons/5/en.md': lesson(META)
	};
	const { lessons } = course(files, 'en');

	it.each([
		['1', undefined, '4'],
		['2', '1', '3'],
		['3', '2', '4'],
		['4', '1', '5'],
		['5', '4', undefined]
	])('where 2 and 3 stand beside the course: %s comes after %s and before %s', (id, before, after) => {
		const of = lessons.find((each) => each.id === id);
		if (!of) throw new Error(`there is no lesson ${id}`);
		const { previous, next } = neighbours(lessons, of);
		expect([previous?.id, next?.id]).toEqual([before, after]);
		// From beside the course one goes on in it.
		expect(goesOnWith(lessons, of)?.id).toBe(id === '2' ? '4' : after);
	});
});

describe('what a part was good for', () => {
	const files = (part: string) => ({ 'lessons/1/en.md': lesson(META), 'lessons/1/part.yaml': part });

	it('stands beside its last lesson, in every language', () => {
		const both = files('en: Sleeves.\nes: Mangas.\n');
		expect(course(both, 'en').lessons[0]?.goodFor).toBe('Sleeves.');
		expect(course(both, 'es').lessons[0]?.goodFor).toBe('Mangas.');
		expect(course({ 'lessons/1/en.md': lesson(META) }, 'en').lessons[0]?.goodFor).toBeUndefined();
	});

	it('is refused where a language is missing', () => {
		expect(() => course(files('en: Sleeves.\n'), 'en').lessons).toThrow('lessons/1/part.yaml');
	});
});

describe('a course of a few files', () => {
	const files = {
		'lessons/2/en.md': lesson(META, '<Step name="B">\n\n</Step>'),
		'lessons/1/en.md': lesson(META, '<Step name="A">\n\n</Step>'),
		'lessons/1/es.md': lesson(
			`${META.replace('A', 'Uno')}\nof: { front: x }\nown: y`,
			'<Step name="A">\n\n</Step>'
		)
	};

	it('shows a lesson in English where it is not translated, and says so', () => {
		const lessons = course(files, 'es').lessons.map(({ id, meta, language, steps }) => ({
			id,
			title: meta.title,
			language,
			steps
		}));
		expect(lessons).toEqual([
			{ id: '1', title: 'Uno', language: 'es', steps: ['A'] },
			{ id: '2', title: 'A', language: 'en', steps: ['B'] }
		]);
	});

	it('sends no page what only translators need', () => {
		expect(Object.keys(course(files, 'es').lessons[0]?.meta ?? {}).sort()).toEqual([
			'minutes',
			'part',
			'summary',
			'title'
		]);
	});

	it('names the file of a lesson that cannot be read', () => {
		const broken = { 'lessons/1/en.md': lesson('title: A\n\tpart: B') };
		expect(refusalOf(() => course(broken, 'en').lessons)).toBe(
			'lessons/1/en.md:3:1: a tab stands where spaces must'
		);
		expect(refusalOf(() => course({ 'lessons/1/en.md': '# no front matter' }, 'en').lessons)).toContain(
			'lessons/1/en.md: front matter: '
		);
	});
});
