import {
	appendBezierCurve,
	beginText,
	closePath,
	endText,
	fill,
	LineCapStyle,
	lineTo,
	moveTo,
	popGraphicsState,
	pushGraphicsState,
	rectangle,
	setDashPattern,
	setFillingGrayscaleColor,
	setFontAndSize,
	setLineCap,
	setLineWidth,
	setTextMatrix,
	showText,
	stroke,
	type PDFFont,
	type PDFOperator
} from '@cantoo/pdf-lib';
import { keptFor } from '#shared/kept.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Drawing, MarkerInk, Stroke, Words } from '../drawing/drawing.ts';
import { LINE_STYLES, type LineStyle } from '../drawing/line-styles.ts';

/** The name under which every page knows the typeface. */
export const FONT_NAME = 'F0';

/** Decimals of a millimetre in a file: a tenth of a micrometre. */
const DIGITS = 4;
/**
 * A number as it is written. Browsers and Node differ in the last binary digit of a sine: without rounding the same
 * pattern would be another file in each, and a larger one.
 */
export const written = (value: number): number => Math.round(value * 10 ** DIGITS) / 10 ** DIGITS + 0;

/** A path in the sheet's own millimetres, x outward and y down. */
const pathOperators = (path: Path): readonly PDFOperator[] => {
	const xy = ({ x, y }: SheetPoint): [number, number] => [written(x), written(y)];
	return [
		moveTo(...xy(path[0].from)),
		...path.map((segment) =>
			segment.kind === 'straight'
				? lineTo(...xy(segment.to))
				: appendBezierCurve(...xy(segment.leaving), ...xy(segment.arriving), ...xy(segment.to))
		)
	];
};

/** Paths drawn in one style. */
export const strokeOperators = (
	paths: readonly Pick<Stroke, 'path' | 'closed' | 'apart'>[],
	{ width, dashes }: LineStyle
): readonly PDFOperator[] =>
	paths.length === 0
		? []
		: [
				setLineWidth(width),
				setDashPattern([...dashes], 0),
				...paths.flatMap(({ path, closed, apart }) => {
					const ink = [...pathOperators(path), ...(closed ? [closePath()] : []), stroke()];
					// Dots are dashes without length and with round ends.
					return apart === undefined
						? ink
						: [
								pushGraphicsState(),
								setLineCap(LineCapStyle.Round),
								setDashPattern([0, written(apart)], 0),
								...ink,
								popGraphicsState()
							];
				})
			];

/** The signs of each typeface; asked once, because a line of words asks for every word. */
const signsOf = keptFor((font: PDFFont): ReadonlySet<number> => new Set(font.getCharacterSet()));

/** Fractions of a tape: two numbers about a slash, the lower one of those that tapes have. */
const FRACTION = /\b(\d{1,2})\/(2|3|4|8|16|32|64)\b/g;

/** A sign that the typeface lacks, taken apart into signs that it has: "Ŵ" is "W", "⅛" is 1 over 8; `?` for any other. */
const takenApart = (sign: string, knows: (sign: string) => boolean): string => {
	const parts = sign.normalize('NFKD').replace(/\p{M}/gu, '');
	const spelt = parts.includes('\u2044') ? ` ${parts}` : parts;
	return spelt !== '' && Array.from(spelt).every(knows) ? spelt : '?';
};

/**
 * A text in signs that the typeface has. A fraction is written with the fraction slash, which makes the typeface set it
 * small: "1 9/16" could else be read as nineteen sixteenths.
 */
export const writable = (text: string, font: PDFFont): string => {
	const known = signsOf(font);
	const knows = (sign: string): boolean => known.has(sign.codePointAt(0) ?? 0);
	const spelt = text.normalize('NFC').replace(FRACTION, knows('\u2044') ? '$1\u2044$2' : '$1/$2');
	return Array.from(spelt, (sign) => (knows(sign) ? sign : takenApart(sign, knows))).join('');
};

/** Keeps what is made of a text in a typeface: to lay one out costs more than all else, and the same return on every page. */
const kept = <T>(make: (spelt: string, font: PDFFont) => T): ((text: string, font: PDFFont) => T) => {
	const made = new WeakMap<PDFFont, Map<string, T>>();
	return (text, font) => {
		const known = made.get(font) ?? new Map<string, T>();
		made.set(font, known);
		const value = known.get(text) ?? make(writable(text, font), font);
		known.set(text, value);
		return value;
	};
};

const widthAtOne = kept((spelt, font) => font.widthOfTextAtSize(spelt, 1));
const encoded = kept((spelt, font) => font.encodeText(spelt));

/** How wide a text without a line's end is written. */
export const widthOf = (text: string, size: Mm, font: PDFFont): Mm => mm(widthAtOne(text, font) * size);

/** A line of writing. The page's y runs down, so letters are turned over to stand upright. */
export const wordsOperators = (
	{ text, at: { x, y }, middle, size, turn }: Words,
	font: PDFFont
): readonly PDFOperator[] => {
	const back = middle ? widthOf(text, size, font) / 2 : 0;
	const [cos, sin] = [written(Math.cos(turn)), written(Math.sin(turn))];
	return [
		beginText(),
		setFontAndSize(FONT_NAME, written(size)),
		setTextMatrix(cos, sin, sin, -cos, written(x - back * cos), written(y - back * sin)),
		showText(encoded(text, font)),
		endText()
	];
};

const square = (x: number, y: number, side: number): PDFOperator =>
	rectangle(written(x), written(y), written(side), written(side));

/** A marker: its black square, and its white cells over it, so that no two black ones are parted by a hair of white. */
export const markerOperators = ({ at: { x, y }, side, white }: MarkerInk): readonly PDFOperator[] => {
	const cell = side / (white.length + 2);
	const cells = white.flatMap((row, down) =>
		row.flatMap((isWhite, across) =>
			isWhite ? [square(x + (across + 1) * cell, y + (down + 1) * cell, cell)] : []
		)
	);
	return [
		setFillingGrayscaleColor(0),
		square(x, y, side),
		fill(),
		setFillingGrayscaleColor(1),
		...cells,
		fill(),
		setFillingGrayscaleColor(0)
	];
};

const ofKind = (drawings: readonly Drawing[], kind: Stroke['kind']): readonly Stroke[] =>
	drawings.flatMap(({ strokes }) => strokes.filter((each) => each.kind === kind));

/** Drawings in the sheet's millimetres: kind by kind, so that each style is set once. */
export const drawingOperators = (drawings: readonly Drawing[], font: PDFFont): readonly PDFOperator[] => [
	pushGraphicsState(),
	...(Object.keys(LINE_STYLES) as Stroke['kind'][]).flatMap((kind) =>
		strokeOperators(ofKind(drawings, kind), LINE_STYLES[kind])
	),
	...drawings.flatMap(({ markers = [] }) => markers.flatMap(markerOperators)),
	...drawings.flatMap(({ words }) => words.flatMap((each) => wordsOperators(each, font))),
	popGraphicsState()
];
