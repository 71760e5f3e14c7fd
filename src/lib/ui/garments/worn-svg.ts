import type { Worn } from '#garment/worn/worn.ts';
import { WORN_BUTTON } from '#garment/worn/worn.ts';
import { wornInk } from './worn-ink.ts';

/** Inks of the page in one of its looks: lines, finer lines, the cloth, its inside, a button. */
const inks = (line: string, fine: string, cloth: string, inside: string, button: string): string =>
	`path,circle{stroke:${line}}.gather,.fold{stroke:${fine}}.outside{fill:${cloth}}.inside{fill:${inside}}circle{fill:${button}}.outside,.inside{stroke:none}`;

/**
 * The colours of the page, since a picture of its own does not know them; it does know whether the page is dark or in the system's own
 * colours. Outlines and seams stand out from the cloth by more than 7 : 1 in each, as more contrast asks.
 */
const STYLE = [
	'path,circle{fill:none;stroke-width:1.4;stroke-linecap:round;stroke-linejoin:round;vector-effect:non-scaling-stroke}',
	inks('#22303c', '#56636f', '#f4efe2', '#d9cfba', '#fffefb'),
	'.seam,.dart,.zip,circle{stroke-width:1}.gather,.fold{stroke-width:.8}',
	'.zip{stroke-width:2.4;stroke-dasharray:1.5 2.5;stroke-linecap:butt}',
	`@media(prefers-color-scheme:dark){${inks('#e8ebee', '#b0bac3', '#36404a', '#1c2126', '#191f25')}}`,
	`@media(forced-colors:active){${inks('canvastext', 'canvastext', 'canvas', 'canvas', 'canvas')}}`
].join('');

/** A garment as it is worn, as an SVG file that needs no style sheet. */
export const wornSvg = (worn: Worn): string => {
	const { width, height, views } = wornInk(worn);
	const drawn = views.map(({ left, top, layers }) => {
		const parts = layers.flatMap(({ side, cloth, lines, buttons }) => [
			...(cloth ? [`<path class="${side}" d="${cloth}"/>`] : []),
			...lines.map(({ kind, data }) => `<path class="${kind}" d="${data}"/>`),
			...buttons.map(({ x, y }) => `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="${WORN_BUTTON}"/>`)
		]);
		return `<g transform="translate(${left.toFixed(1)} ${top.toFixed(1)})">${parts.join('')}</g>`;
	});
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width / 4}" height="${height / 4}"><style>${STYLE}</style>${drawn.join('')}</svg>`;
};
