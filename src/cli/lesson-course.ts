import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { course, type Course } from '#course/course.ts';
import type { Language } from '#shared/speech/language.ts';

const LESSONS = fileURLToPath(new URL('../../lessons/', import.meta.url));

const read = new Map<Language, Course>();

/** The course of the lessons' folder, in a language; read once. */
export const lessonCourse = (language: Language = 'en'): Course => {
	const known = read.get(language);
	if (known) return known;
	const files = readdirSync(LESSONS, { recursive: true, encoding: 'utf8' })
		.filter((file) => /\.(md|yaml)$/.test(file))
		.map((file) => [
			`lessons/${file.split(path.sep).join('/')}`,
			readFileSync(path.join(LESSONS, file), 'utf8')
		]);
	const made = course(Object.fromEntries(files) as Readonly<Record<string, string>>, language);
	read.set(language, made);
	return made;
};
