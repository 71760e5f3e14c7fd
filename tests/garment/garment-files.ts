import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { methodLibrary, type ParsedMethodFile } from '#drafting/library.ts';
import type { FindMethod } from '#drafting/read-method.ts';
import type { Garment } from '#garment/garment.ts';
import { makePattern, type Choices, type Pattern } from '#garment/pattern.ts';
import { readGarment } from '#garment/read-garment.ts';

const FOLDERS = fileURLToPath(new URL('../../lessons/', import.meta.url));

/** The files of this name in the lessons' folders, parsed, in the order of the folders. */
const parsedFiles = (name: string): readonly ParsedMethodFile[] =>
	readdirSync(FOLDERS)
		.filter((lesson) => existsSync(`${FOLDERS}${lesson}/${name}`))
		.sort()
		.map((lesson) => ({
			place: `lessons/${lesson}/${name}`,
			content: parse(readFileSync(`${FOLDERS}${lesson}/${name}`, 'utf8')) as unknown
		}));

/** Finds the methods of all lessons. */
export const findMethod: FindMethod = methodLibrary(parsedFiles('method.yaml'));

let read: readonly Garment[] | undefined;
/** Every garment of the lessons, in order; read once. */
export const garments = (): readonly Garment[] =>
	(read ??= parsedFiles('garment.yaml').map(({ place, content }) => readGarment(content, place, findMethod)));

/** The garment of this name. */
export const garmentOf = (id: string): Garment => {
	const found = garments().find((each) => each.id === id);
	if (!found) throw new Error(`there is no garment "${id}"`);
	return found;
};

/** The demo body of this name. */
export const bodyOf = (id: string): Body => {
	const found = DEMO_BODIES.find((each) => each.id === id);
	if (!found) throw new Error(`there is no demo body "${id}"`);
	return found.body;
};

/** A garment's pattern for a body that can have it. */
export const madeFor = (garment: Garment, body: Body, choices?: Choices): Pattern => {
	const work = makePattern(garment, body, choices);
	if (work.kind !== 'made') throw new Error(`${body.name} cannot have ${garment.name}`);
	return work.pattern;
};
