import { english } from '../support/speech.ts';
import { readFileSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { chromium, type Browser } from '@playwright/test';
import { mm } from '#shared/units.ts';
import { flattened } from '#geometry/flatten.ts';
import type { Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { parameterAtLength, segmentLength, segmentPoint, type Segment } from '#geometry/segment.ts';
import { pieceDrawing } from '#exports/drawing/piece-drawing.ts';
import type { Drawing } from '#exports/drawing/drawing.ts';
import { patternPdf } from '#exports/pdf/pattern-pdf.ts';
import { onFewestPages } from '#exports/sheets/fewest-pages.ts';
import { planPages, type PagePlan } from '#exports/sheets/page-plan.ts';
import { PAGE_MARGIN, PAPERS, type Paper } from '#exports/sheets/tiles.ts';
import { drawingsSvg } from '#exports/svg/drawings-svg.ts';
import { cutStrokes } from '#garment/piece-lines.ts';
import type { Pattern } from '#garment/pattern.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { CHROMIUM_SWITCHES, windowedChromium } from '../support/chromium.ts';
import { median, type Figure } from './figure.ts';

/** At least so many times faster than a browser's printing. */
const FASTER = 15;
/** At most this share of the points of uniform sampling. */
const SHARE = 0.5;
/** The error that both ways of flattening may make. */
const WITHIN = mm(0.05);
const ROUNDS = 15;
const WARM_UP = 3;
/** Milliseconds between two rounds. */
const REST = 200;

const FONT = new Uint8Array(
	readFileSync('node_modules/@fontsource/literata/files/literata-latin-400-normal.woff')
);

const a4 = (): Paper => {
	const paper = PAPERS.find(({ id }) => id === 'a4');
	if (!paper) throw new Error('there is no A4');
	return paper;
};

/**
 * The page that a browser is given to print: the drawing's SVG written once, and shown in part on each page of the
 * paper by reference. No first page, no words about joining: less than our file has.
 */
const printable = (svg: string, { tiles, bounds }: PagePlan, { width, height }: Paper): string => {
	const pages = tiles.map(
		({ left, top, width: wide, height: high }) =>
			`<div class="page"><svg width="${wide}mm" height="${high}mm" viewBox="${left} ${top} ${wide} ${high}"><use href="#sheet"/></svg></div>`
	);
	const content = svg.replace(/^<svg[^>]*>/, '').replace(/<\/svg>\s*$/, '');
	return (
		`<!doctype html><style>@page{size:${width}mm ${height}mm;margin:0}body{margin:0}` +
		`.page{width:${width}mm;height:${height}mm;padding:${PAGE_MARGIN}mm;box-sizing:border-box;break-after:page;overflow:hidden}svg{display:block}</style>` +
		`<svg width="0" height="0" style="position:absolute" viewBox="${bounds.left} ${bounds.top} 1 1"><defs><g id="sheet" font-family="serif">${content}</g></defs></svg>${pages.join('')}`
	);
};

const printedBy = async (browser: Browser, html: string): Promise<Uint8Array> => {
	const tab = await browser.newPage();
	try {
		await tab.setContent(html);
		return await tab.pdf({ preferCSSPageSize: true, printBackground: true });
	} finally {
		await tab.close();
	}
};

const timed = async <T>(work: () => Promise<T>): Promise<{ value: T; took: number }> => {
	const start = performance.now();
	const value = await work();
	return { value, took: performance.now() - start };
};

/**
 * A tiled A4 dress: our file against what a browser prints of the same SVG on the same pages, the browser already running, by
 * the median round of each. On a busy machine the ratio falls: what else it does adds most to what is short.
 */
const printingFigures = async (pattern: Pattern): Promise<readonly Figure[]> => {
	const paper = a4();
	const drawings: readonly Drawing[] = onFewestPages(
		pattern.pieces.map((piece) => pieceDrawing(piece, [piece.name], english)),
		paper
	);
	const plan = planPages(drawings, paper);
	const options = {
		paper,
		title: 'A dress',
		about: [],
		speech: english,
		font: FONT,
		date: new Date(0)
	} as const;
	const ours = () => patternPdf(drawings, options);
	const browser = await chromium.launch({ executablePath: windowedChromium(), args: [...CHROMIUM_SWITCHES] });
	try {
		const theirs = () => printedBy(browser, printable(drawingsSvg(drawings, 'A dress'), plan, paper));
		const rounds: { ours: number; theirs: number; bytes: readonly [number, number] }[] = [];
		for (let round = 0; round < ROUNDS + WARM_UP; round++) {
			// A browser goes on tidying up after it has answered, which is not for us to pay.
			await setTimeout(REST);
			const mine = await timed(ours);
			const other = await timed(theirs);
			const bytes = [mine.value.length, other.value.length] as const;
			rounds.push({ ours: mine.took, theirs: other.took, bytes });
		}
		const counted = rounds.slice(WARM_UP);
		const took = median(counted.map((round) => round.ours));
		const ratio = median(counted.map((round) => round.theirs)) / took;
		const [mine = NaN, other = NaN] = counted[0]?.bytes ?? [];
		return [
			{
				name: `a dress on ${plan.tiles.length} pages of A4, against a browser printing the same SVG`,
				figure: `${ratio.toFixed(1)} times as fast (${took.toFixed(0)} ms)`,
				goal: `at least ${FASTER} times`,
				met: ratio >= FASTER
			},
			{
				name: "that file's size, against the browser's",
				figure: `${(mine / 1000).toFixed(1)} kB against ${(other / 1000).toFixed(1)} kB`,
				goal: 'smaller',
				met: mine < other
			}
		];
	} finally {
		await browser.close();
	}
};

/** How far a place lies from a chord. */
const fromChord = (place: SheetPoint, a: SheetPoint, b: SheetPoint): number => {
	const whole = distance(a, b);
	if (whole === 0) return distance(place, a);
	const along = ((place.x - a.x) * (b.x - a.x) + (place.y - a.y) * (b.y - a.y)) / whole ** 2;
	const share = Math.min(1, Math.max(0, along));
	return Math.hypot(place.x - a.x - share * (b.x - a.x), place.y - a.y - share * (b.y - a.y));
};

/** Places between two points of a curve at which the error is looked for. */
const PROBES = 8;

/** The greatest error of a curve divided into so many parts of equal length. */
const errorOf = (segment: Segment, parts: number): number => {
	const length = segmentLength(segment);
	const places = Array.from({ length: parts * PROBES + 1 }, (_, i) =>
		segmentPoint(segment, parameterAtLength(segment, mm((length * i) / (parts * PROBES))))
	);
	return places.reduce((most, place, i) => {
		const from = Math.min(parts - 1, Math.floor(i / PROBES)) * PROBES;
		const [a, b] = [places[from], places[from + PROBES]];
		return a && b ? Math.max(most, fromChord(place, a, b)) : most;
	}, 0);
};

const partsAt = (segment: Segment, step: number): number =>
	Math.max(1, Math.ceil(segmentLength(segment) / step - 1e-9));

/** Points of an outline sampled uniformly, at the longest step that keeps the error; corners and ends are kept, in its favour. */
const uniformCount = (outline: Path): number => {
	let [good, bad] = [0.5, 2000];
	for (let i = 0; i < 24; i++) {
		const step = Math.sqrt(good * bad);
		if (outline.every((segment) => errorOf(segment, partsAt(segment, step)) <= WITHIN)) good = step;
		else bad = step;
	}
	return 1 + outline.reduce((sum, segment) => sum + partsAt(segment, good), 0);
};

/** Flattening the dress's cutting lines, against uniform sampling of each whole outline at the same error. */
const flatteningFigure = (pattern: Pattern): Figure => {
	const outlines = pattern.pieces.flatMap((piece) => cutStrokes(piece).map(({ path }) => path));
	const sum = (count: (outline: Path) => number): number =>
		outlines.reduce((all, outline) => all + count(outline), 0);
	const [ours, uniform] = [sum((outline) => flattened(outline, WITHIN).length), sum(uniformCount)];
	return {
		name: `flattening a dress within ${WITHIN} mm, against uniform sampling`,
		figure: `${((100 * ours) / uniform).toFixed(0)} % of the points (${ours} against ${uniform})`,
		goal: `at most ${100 * SHARE} %`,
		met: ours <= SHARE * uniform
	};
};

/** What the files of a pattern cost, against the obvious other ways to make them. */
export const exportFigures = async (): Promise<readonly Figure[]> => {
	const pattern = madeFor(garmentOf('course-dress'), bodyOf('heron'));
	return [...(await printingFigures(pattern)), flatteningFigure(pattern)];
};
