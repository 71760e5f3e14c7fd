import { fileName } from '#exports/files/file-name.ts';
import { download } from '#ui/keeping/download.ts';
import { drawnOnWhite, NoPicture } from './picture.ts';

/** What a style sheet says of a drawing: a picture has none, so each part is given its own. */
const STYLES = [
	'fill',
	'fill-opacity',
	'stroke',
	'stroke-width',
	'stroke-dasharray',
	'stroke-linecap',
	'stroke-linejoin',
	'opacity',
	'font-family',
	'font-size',
	'font-style',
	'font-weight',
	'text-anchor',
	'dominant-baseline',
	'paint-order',
	'vector-effect',
	'display',
	'visibility'
];
/** Dots of a picture for each one on the screen, so that it is sharp on paper too. */
const FINER = 3;

/** A drawing of the page as an SVG file that needs no style sheet. */
const standingAlone = (drawing: SVGSVGElement, width: number, height: number): string => {
	const copy = drawing.cloneNode(true) as SVGSVGElement;
	const [from, to] = [drawing, copy].map((each) => [each, ...each.querySelectorAll<SVGElement>('*')]);
	// It is drawn on white, whatever the colours of the screen; nothing is painted in between.
	drawing.classList.add('as-paper');
	from?.forEach((part, i) => {
		const seen = getComputedStyle(part);
		for (const name of STYLES) to?.[i]?.style.setProperty(name, seen.getPropertyValue(name));
	});
	drawing.classList.remove('as-paper');
	copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
	copy.setAttribute('width', String(width));
	copy.setAttribute('height', String(height));
	return new XMLSerializer().serializeToString(copy);
};

/** Saves a drawing of the page as a picture (PNG), under a name that any system takes. */
export const saveFigure = async (drawing: SVGSVGElement, name: string): Promise<void> => {
	const { width, height } = drawing.getBoundingClientRect();
	const canvas = await drawnOnWhite(
		standingAlone(drawing, width, height),
		Math.round(width * FINER),
		Math.round(height * FINER)
	);
	const png = await new Promise<Blob | null>((resolve) => {
		canvas.toBlob(resolve, 'image/png');
	});
	if (!png) throw new NoPicture();
	download(`${fileName(name)}.png`, png);
};
