import { english } from '../support/speech.ts';
import { readFileSync } from 'node:fs';
import { withFile } from './raster.ts';
import { execFileSync } from 'node:child_process';
import type { FileOptions } from '#exports/pdf/file.ts';
import { PAPERS, SHEETS, type Paper } from '#exports/sheets/tiles.ts';

const FONT = new Uint8Array(
	readFileSync('node_modules/@fontsource/literata/files/literata-latin-400-normal.woff')
);

/** The paper of this name. */
export const paperOf = (id: string): Paper => {
	const paper = [...PAPERS, ...SHEETS].find((each) => each.id === id);
	if (!paper) throw new Error(`no paper ${id}`);
	return paper;
};

/** What a file of words is made with in the tests. */
export const fileOptions = (title: string, paper = 'a4'): FileOptions => ({
	paper: paperOf(paper),
	title,
	speech: english,
	font: FONT,
	date: new Date('2026-01-02T03:04:05Z')
});

/** A text with ligatures and fractions spelt out and every white the same, as far as reading it goes. */
export const plain = (text: string): string =>
	text.normalize('NFKC').replaceAll('\u2044', '/').replace(/\s+/g, ' ').trim();

/** What poppler's pdftotext reads on each page, in reading order. */
export const pageTexts = (bytes: Uint8Array): readonly string[] =>
	withFile(bytes, 'file.pdf', (file) =>
		execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' })
	)
		.split('\f')
		.slice(0, -1);

/** What pdftotext reads in a file, each text in the order in which it was written: words beside each other are not mixed. */
export const writtenText = (bytes: Uint8Array): string =>
	withFile(bytes, 'file.pdf', (file) =>
		plain(execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' }))
	);

/** A word on a page: where it stands, in millimetres from the page's upper left corner. */
export interface PageWord {
	readonly page: number;
	readonly text: string;
	readonly left: number;
	readonly top: number;
	readonly right: number;
	readonly bottom: number;
}

const MM_PER_POINT = 25.4 / 72;

/** The words of every page with their places, as poppler's pdftotext measures them. */
export const placedWords = (bytes: Uint8Array): readonly PageWord[] =>
	withFile(bytes, 'file.pdf', (file) => execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8' }))
		.split('<page ')
		.slice(1)
		.flatMap((content, page) =>
			[
				...content.matchAll(
					/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g
				)
			].map(([, left, top, right, bottom, text = '']) => ({
				page,
				text,
				left: Number(left) * MM_PER_POINT,
				top: Number(top) * MM_PER_POINT,
				right: Number(right) * MM_PER_POINT,
				bottom: Number(bottom) * MM_PER_POINT
			}))
		);
