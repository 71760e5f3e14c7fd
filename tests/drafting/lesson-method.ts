import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import type { Method } from '#drafting/method.ts';
import { readMethod } from '#drafting/read-method.ts';

/** Reads the method of a lesson's folder, such as `40-back-levels`. */
export const lessonMethod = (lesson: string): Method => {
	const place = `lessons/${lesson}/method.yaml`;
	const file = fileURLToPath(new URL(`../../${place}`, import.meta.url));
	return readMethod(parse(readFileSync(file, 'utf8')), place);
};

/** The back block, as the lessons teach it. */
export const backBlock = (): Method => lessonMethod('40-back-levels');
