import { pathData } from '#geometry/path.ts';
import { boundsOfDrawings, STROKE_KINDS, type Drawing, type Stroke, type Words } from '../drawing/drawing.ts';
import { LINE_STYLES } from '../drawing/line-styles.ts';
import { escaped } from './xml.ts';
import { mm } from '#shared/units.ts';

/** White left round everything that is drawn. */
const AROUND = mm(5);

/** A name as an id that XML takes, and that is told apart by its number from others like it. */
const idOf = (name: string, i: number): string =>
	`piece-${i + 1}-${name
		.normalize('NFD')
		.replace(/[^A-Za-z0-9]+/g, '-')
		.replace(/^-+|-+$/g, '')
		.slice(0, 40)
		.toLowerCase()}`;

const wordsElement = ({ text, at: { x, y }, middle, size, turn }: Words): string => {
	const degrees = ((turn * 180) / Math.PI).toFixed(3);
	const anchor = middle ? ' text-anchor="middle"' : '';
	return `<text transform="translate(${x.toFixed(3)} ${y.toFixed(3)}) rotate(${degrees})" font-size="${size}"${anchor}>${escaped(text)}</text>`;
};

const pathElement = ({ path, closed, apart }: Stroke): string => {
	// Dots are dashes without length and with round ends.
	const dots = apart === undefined ? '' : ` stroke-dasharray="0 ${apart}" stroke-linecap="round"`;
	return `<path d="${pathData(path, 4, closed === true)}"${dots}/>`;
};

/** One drawing as a group of groups: one for each kind of line, one for its words. */
const group = (drawing: Drawing, i: number): string => {
	const id = idOf(drawing.name, i);
	const lines = STROKE_KINDS.flatMap((kind) => {
		const own = drawing.strokes.filter((stroke) => stroke.kind === kind);
		if (own.length === 0) return [];
		const { width, dashes } = LINE_STYLES[kind];
		const pattern = dashes.length > 0 ? ` stroke-dasharray="${dashes.join(' ')}"` : '';
		const paths = own.map(pathElement).join('');
		return [`<g id="${id}-${kind}" fill="none" stroke="#000" stroke-width="${width}"${pattern}>${paths}</g>`];
	});
	const words = drawing.words.map(wordsElement).join('');
	return `<g id="${id}"><title>${escaped(drawing.name)}</title>${lines.join('')}<g id="${id}-words">${words}</g></g>`;
};

/**
 * Drawings at true scale in one SVG file: one user unit is one millimetre, and width and height are given in mm. Throws
 * BadInput where nothing is drawn.
 */
export const drawingsSvg = (drawings: readonly Drawing[], title: string): string => {
	const { left, top, right, bottom } = boundsOfDrawings(drawings, AROUND);
	const number = (value: number): string => value.toFixed(3);
	const size = `width="${number(right - left)}mm" height="${number(bottom - top)}mm"`;
	const box = `viewBox="${number(left)} ${number(top)} ${number(right - left)} ${number(bottom - top)}"`;
	return (
		`<svg xmlns="http://www.w3.org/2000/svg" ${size} ${box} font-family="serif"><title>${escaped(title)}</title>` +
		`${drawings.map(group).join('')}</svg>\n`
	);
};
