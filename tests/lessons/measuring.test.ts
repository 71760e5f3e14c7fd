import { describe, expect, it } from 'vitest';
import { FURTHER_KEYS, MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { measuringLesson } from '#ui/controls/measuring-lesson.ts';
import { frontMatter } from './sections.ts';
import { lessonFiles } from './lesson-files.ts';

const TEXTS = new Map(lessonFiles().map(({ id, text }) => [id, text]));
const lessonOf = (key: (typeof MEASUREMENT_KEYS)[number]): string => {
	const [, id = ''] = /^\/lessons\/(.+)#/.exec(measuringLesson(key)) ?? [];
	return TEXTS.get(id) ?? '';
};

describe('how each measurement is taken', () => {
	it.each(MEASUREMENT_KEYS)('%s: its lesson has its figure and a field for it', (key) => {
		expect(measuringLesson(key)).toMatch(new RegExp(`#${key}$`));
		expect(lessonOf(key)).toContain(`<Tape of="${key}" />`);
		expect(lessonOf(key)).toContain(`<TryIt of="${key}" />`);
	});

	it('only what no draft needs stands beside the course', () => {
		const aside = MEASUREMENT_KEYS.filter((key) => frontMatter(lessonOf(key))['aside'] === true);
		expect(aside.sort()).toEqual([...FURTHER_KEYS].sort());
	});
});
