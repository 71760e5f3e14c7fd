import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { readYaml } from '#course/read-yaml.ts';
import type { ParsedMethodFile } from '#drafting/library.ts';

const LESSONS = fileURLToPath(new URL('../../lessons/', import.meta.url));

/** The files of this name in the lessons' folders, parsed and not yet checked, in the order of the lessons. */
export const lessonFiles = async (
	name: 'method.yaml' | 'garment.yaml'
): Promise<readonly ParsedMethodFile[]> => {
	const files = await readdir(LESSONS, { recursive: true });
	const lessons = files.filter((file) => path.basename(file) === name).map((file) => path.dirname(file));
	return Promise.all(
		lessons.sort().map(async (lesson) => ({
			place: `lessons/${lesson}/${name}`,
			content: readYaml(await readFile(path.join(LESSONS, lesson, name), 'utf8'), `lessons/${lesson}/${name}`)
		}))
	);
};
