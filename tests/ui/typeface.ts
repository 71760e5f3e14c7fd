import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The three faces that the pages are set in, by the endings of their files' names. */
export const FACES = ['400-normal', '400-italic', '600-normal'] as const;

const placeOf = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** Where a face lies with the letters of both languages alone, and where it lies whole. */
export const shortFace = (face: string): string =>
	placeOf(`src/lib/ui/styles/typeface/literata-${face}.woff2`);
export const wholeFace = (face: string): string =>
	placeOf(`node_modules/@fontsource/literata/files/literata-latin-${face}.woff2`);

/** The letters and signs of the short faces, as the style sheet names them. */
export const coreLetters = (): ReadonlySet<string> => {
	const css = readFileSync(placeOf('src/lib/ui/styles/typeface/literata.css'), 'utf8');
	const ranges = [...css.matchAll(/unicode-range:([^;]+);/g)].at(-1)?.[1] ?? '';
	return new Set(
		[...ranges.matchAll(/U\+([0-9A-F]+)(?:-([0-9A-F]+))?/g)].flatMap(([, from = '', to = from]) => {
			const first = Number.parseInt(from, 16);
			const count = Number.parseInt(to, 16) - first + 1;
			return Array.from({ length: count }, (_, i) => String.fromCodePoint(first + i));
		})
	);
};
