import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** A page as another program (poppler's pdftoppm) renders it: a grey for every dot, 0 black to 255 white. */
export interface Raster {
	readonly width: number;
	readonly height: number;
	readonly grey: Uint8Array;
	/** Dots in a millimetre. */
	readonly perMm: number;
}

const MM_PER_INCH = 25.4;

/** Reads a binary PGM file (P5), as its public specification has it. */
const readPgm = (bytes: Buffer, dpi: number): Raster => {
	const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'));
	if (!header) throw new Error('not a PGM file of 255 greys');
	const [whole, width, height] = header;
	return {
		width: Number(width),
		height: Number(height),
		grey: bytes.subarray(whole.length),
		perMm: dpi / MM_PER_INCH
	};
};

/** Does something with a file that holds these bytes, in a folder that is removed afterwards. */
export const withFile = <T>(bytes: Uint8Array, name: string, use: (file: string, folder: string) => T): T => {
	const folder = mkdtempSync(path.join(tmpdir(), 'square-across-'));
	try {
		const file = path.join(folder, name);
		writeFileSync(file, bytes);
		return use(file, folder);
	} finally {
		rmSync(folder, { recursive: true });
	}
};

/** What another program prints about a PDF file. */
export const askOf = (program: string, bytes: Uint8Array, ...options: readonly string[]): string =>
	withFile(bytes, 'file.pdf', (file) => execFileSync(program, [...options, file], { encoding: 'utf8' }));

/** The words of a PDF file, as poppler's pdftotext reads them. */
export const wordsOf = (bytes: Uint8Array, ...options: readonly string[]): string =>
	withFile(bytes, 'file.pdf', (file) =>
		execFileSync('pdftotext', [...options, file, '-'], { encoding: 'utf8' })
	);

/** The words of a PDF file's first page. */
export const firstWords = (bytes: Uint8Array): string => wordsOf(bytes, '-l', '1');

/** How many pages of words a PDF file has: each says at its foot which of how many it is. */
export const wordsPages = (bytes: Uint8Array): number =>
	withFile(bytes, 'file.pdf', (file) => {
		const text = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' });
		return Number(/^page 1 of (\d+)$/m.exec(text)?.[1] ?? 0);
	});

/** The pages of a PDF file, rendered by poppler. */
export const rasters = (bytes: Uint8Array, dpi: number, first = 1, last = 9999): readonly Raster[] =>
	withFile(bytes, 'file.pdf', (file, folder) => {
		const pages = ['-gray', '-r', String(dpi), '-f', String(first), '-l', String(last)];
		execFileSync('pdftoppm', [...pages, '-aa', 'no', '-aaVector', 'no', file, path.join(folder, 'page')]);
		return readdirSync(folder)
			.filter((name) => name.endsWith('.pgm'))
			.sort()
			.map((name) => readPgm(readFileSync(path.join(folder, name)), dpi));
	});

/** Whether the dot at a place is ink. */
export const isInk = ({ width, height, grey }: Raster, x: number, y: number): boolean =>
	x >= 0 && y >= 0 && x < width && y < height && (grey[y * width + x] ?? 255) < 128;

/** The dots of a row that are ink, as runs: from which dot to which. */
export const runsInRow = (
	raster: Raster,
	y: number,
	from = 0,
	to = raster.width
): readonly (readonly [number, number])[] => {
	const runs: [number, number][] = [];
	for (let x = from; x < to; x++) {
		if (!isInk(raster, x, y)) continue;
		const last = runs.at(-1);
		if (last && last[1] === x - 1) last[1] = x;
		else runs.push([x, x]);
	}
	return runs;
};
