import { lessonMetaSchema, type LessonMeta } from '#shared/lesson-meta.ts';
import { parsed } from '#shared/reading.ts';
import { z } from '#shared/shape.ts';
import { LANGUAGES, type Language } from '#shared/speech/language.ts';
import { methodFileId, methodLibrary, type ParsedMethodFile } from '#drafting/library.ts';
import type { Method } from '#drafting/method.ts';
import type { Garment } from '#garment/garment.ts';
import { readGarment } from '#garment/read-garment.ts';
import { readYaml } from './read-yaml.ts';

/** The texts of a course's files by their paths, such as `lessons/40-back-levels/method.yaml`: whoever asks finds them. */
export type CourseFiles = Readonly<Record<string, string>>;

/** A lesson, but for its text. */
export interface Lesson {
	/** The name of its folder, and its address. */
	readonly id: string;
	readonly meta: LessonMeta;
	/** The steps embedded in its text, in order. */
	readonly steps: readonly string[];
	/** What the part of the course was good for, in the lesson that ends one. */
	readonly goodFor: string | undefined;
	/** The language that its text is in: English where it is not written in the course's language yet. */
	readonly language: Language;
}

/** Lessons, methods and garments in one language. Each is read when it is first asked for, and BadInput where its file is wrong. */
export interface Course {
	readonly language: Language;
	/** In the order of their folders. */
	readonly lessons: readonly Lesson[];
	readonly methodIds: readonly string[];
	readonly garmentIds: readonly string[];
	readonly method: (id: string) => Method | undefined;
	readonly garment: (id: string) => Garment | undefined;
	readonly methods: readonly Method[];
	readonly garments: readonly Garment[];
}

/** The lessons in which something is drafted, in the order of the course. */
export const draftedIn = ({ lessons }: Pick<Course, 'lessons'>): readonly Lesson[] =>
	lessons.filter(({ meta, steps }) => meta.method !== undefined && steps.length > 0);

const once = <T>(make: () => T): (() => T) => {
	let made: { readonly value: T } | undefined;
	return () => (made ??= { value: make() }).value;
};

const goodForSchema = z.record(z.enum(LANGUAGES), z.string().check(z.minLength(1)));

const folderOf = (path: string): string => path.split('/').at(-2) ?? path;
const beside = (path: string, name: string): string => path.replace(/[^/]*$/, name);

/** What a part was good for, from the file beside its last lesson that says it in every language. */
const readGoodFor = (files: CourseFiles, english: string, language: Language): string | undefined => {
	const place = beside(english, 'part.yaml');
	if (!(place in files)) return undefined;
	return parsed(goodForSchema, readYaml(files[place] ?? '', place), `${place}: `, 'part')[language];
};

const readLesson = (files: CourseFiles, english: string, language: Language): Lesson => {
	const own = beside(english, `${language}.md`);
	const [path, written] = own in files ? ([own, language] as const) : ([english, 'en'] as const);
	const text = files[path] ?? '';
	const [, front = ''] = /^---\r?\n(.*?)\r?\n---/s.exec(text) ?? [];
	const {
		of: _,
		own: __,
		...meta
	} = parsed(lessonMetaSchema, readYaml(`\n${front}`, path), `${path}: `, 'front matter');
	const steps = [...text.matchAll(/<Step name="([^"]+)">/g)].map(([, name = '']) => name);
	return {
		id: folderOf(path),
		meta,
		steps,
		goodFor: readGoodFor(files, english, language),
		language: written
	};
};

/** Makes a course of its files, in one language. What has no words in it is called by its English ones. */
export const course = (files: CourseFiles, language: Language): Course => {
	const named = (name: string): readonly string[] =>
		Object.keys(files)
			.filter((path) => path.endsWith(`/${name}`))
			.sort();
	/** A method's or a garment's file, with its section of the words in the folder. */
	const readFiles = (kind: 'method' | 'garment'): readonly ParsedMethodFile[] =>
		named(`${kind}.yaml`).map((place) => {
			const words = beside(place, `${language}.yaml`);
			const content = words in files ? readYaml(files[words] ?? '', words) : undefined;
			const section = (content as Readonly<Record<string, unknown>> | null | undefined)?.[kind];
			return {
				place,
				content: readYaml(files[place] ?? '', place),
				...(section === undefined ? {} : { words: { place: `${words}: ${kind}`, content: section } })
			};
		});
	const methodFiles = once(() => readFiles('method'));
	const garmentFiles = once(() => readFiles('garment'));
	const find = once(() => methodLibrary(methodFiles(), language));
	const made = new Map<string, Garment>();
	const garment = (id: string): Garment | undefined => {
		const file = garmentFiles().find((each) => methodFileId(each) === id);
		if (file && !made.has(id))
			made.set(id, readGarment(file.content, file.place, find(), { language, words: file.words }));
		return made.get(id);
	};
	const lessons = once(() => named('en.md').map((path) => readLesson(files, path, language)));
	const all = <T>(ids: readonly string[], get: (id: string) => T | undefined): readonly T[] =>
		ids.flatMap((id) => get(id) ?? []);
	const result: Course = {
		language,
		get lessons() {
			return lessons();
		},
		get methodIds() {
			return methodFiles().map(methodFileId);
		},
		get garmentIds() {
			return garmentFiles().map(methodFileId);
		},
		method: (id) => find()(id),
		garment,
		get methods() {
			return all(result.methodIds, result.method);
		},
		get garments() {
			return all(result.garmentIds, garment);
		}
	};
	return result;
};
