import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { course, type Course } from '#course/course.ts';
import type { Language } from '#shared/speech/language.ts';

const LESSONS = fileURLToPath(new URL('../../lessons/', import.meta.url));

/** The course of the lessons' folder, in a language. */
export const lessonCourse = (language: Language = 'en'): Course => {
	const files = readdirSync(LESSONS, { recursive: true, encoding: 'utf8' })
		.filter((file) => /\.(md|yaml)$/.test(file))
		.map((file) => [
			`lessons/${file.split(path.sep).join('/')}`,
			readFileSync(path.join(LESSONS, file), 'utf8')
		]);
	return course(Object.fromEntries(files) as Readonly<Record<string, string>>, language);
};
