import type { Worn } from '#garment/worn/worn.ts';
import { WORN_BUTTON } from '#garment/worn/worn.ts';
import { wornInk } from './worn-ink.ts';

/** The colours of the page, since a picture of its own does not know them; it does know whether the page is dark. */
const STYLE = [
	'path,circle{fill:none;stroke:#22303c;stroke-width:1.4;stroke-linecap:round;stroke-linejoin:round;vector-effect:non-scaling-stroke}',
	'.outside,.inside{fill:#f4efe2;stroke:none}.inside{fill:#d9cfba}',
	'.seam,.dart,.zip,circle{stroke-width:1}.gather,.fold{stroke:#56636f;stroke-width:.8}',
	'.zip{stroke-width:2.4;stroke-dasharray:1.5 2.5;stroke-linecap:butt}circle{fill:#fffefb}',
	'@media(prefers-color-scheme:dark){path,circle{stroke:#e8ebee}.outside{fill:#36404a}.inside{fill:#1c2126}.gather,.fold{stroke:#b0bac3}circle{fill:#191f25}.outside,.inside{stroke:none}}'
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
