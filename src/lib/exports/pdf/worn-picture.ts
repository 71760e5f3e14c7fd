import {
	closePath,
	fill,
	lineTo,
	moveTo,
	popGraphicsState,
	pushGraphicsState,
	setFillingGrayscaleColor,
	setLineCap,
	setLineWidth,
	stroke,
	LineCapStyle,
	type PDFOperator
} from '@cantoo/pdf-lib';
import { at, type SheetPoint } from '#geometry/point.ts';
import { WORN_BUTTON, type Worn, type WornLineKind } from '#garment/worn/worn.ts';
import { written } from './operators.ts';

/** A place on a page, in millimetres. */
export interface Place {
	readonly left: number;
	readonly top: number;
	readonly width: number;
	readonly height: number;
}

/** How light the right side of the cloth and its inside are; 1 is white. */
const LIGHT = { outside: 0.96, inside: 0.82 } as const;
/** Millimetres of ink; what is not named is as thin as a seam. */
const WIDTHS: Partial<Record<WornLineKind, number>> = { outline: 0.28, gather: 0.1, fold: 0.1, zip: 0.4 };
const SEAM = 0.16;
/** Millimetres of the garment between front and back. */
const GAP = 80;

const run = (places: readonly SheetPoint[]): readonly PDFOperator[] =>
	places.map(({ x, y }, i) => (i === 0 ? moveTo : lineTo)(written(x), written(y)));

/** A button as an octagon, which is round enough at its size. */
const round = ({ x, y }: SheetPoint, radius: number): readonly SheetPoint[] =>
	Array.from({ length: 8 }, (_, i) =>
		at(x + radius * Math.cos((i * Math.PI) / 4), y + radius * Math.sin((i * Math.PI) / 4))
	);

/** A garment as it is worn, front and back side by side and as large as fits, in the middle of a place. */
export const wornPicture = ({ views }: Worn, place: Place): readonly PDFOperator[] => {
	const width = views.reduce((sum, { bounds }) => sum + bounds.right - bounds.left, GAP * (views.length - 1));
	const top = Math.min(...views.map(({ bounds }) => bounds.top));
	const bottom = Math.max(...views.map(({ bounds }) => bounds.bottom));
	const scale = Math.min(place.width / width, place.height / (bottom - top));
	let left = place.left + (place.width - width * scale) / 2;
	const down = place.top + (place.height - (bottom - top) * scale) / 2;
	const drawn = views.flatMap(({ layers, bounds }) => {
		const put = (places: readonly SheetPoint[]): readonly PDFOperator[] =>
			run(places.map(({ x, y }) => at(begin + (x - bounds.left) * scale, down + (y - top) * scale)));
		const begin = left;
		left += (bounds.right - bounds.left + GAP) * scale;
		return layers.flatMap(({ side, cloth, lines, buttons }) => [
			...(cloth.length > 0 ? [setFillingGrayscaleColor(LIGHT[side]), ...put(cloth), fill()] : []),
			...lines.flatMap(({ kind, places }) => [setLineWidth(WIDTHS[kind] ?? SEAM), ...put(places), stroke()]),
			...buttons.flatMap((button) => [
				setLineWidth(SEAM),
				...put(round(button, WORN_BUTTON)),
				closePath(),
				stroke()
			])
		]);
	});
	return [pushGraphicsState(), setLineCap(LineCapStyle.Round), ...drawn, popGraphicsState()];
};
