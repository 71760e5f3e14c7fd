import type { Speech } from '#shared/speech/speech.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Worn, WornLayer, WornLineKind, WornView } from '#garment/worn/worn.ts';

/** A part of the drawing as path data, in millimetres. */
interface InkLayer {
	readonly side: WornLayer['side'];
	readonly cloth: string;
	readonly lines: readonly { readonly kind: WornLineKind; readonly data: string }[];
	readonly buttons: readonly SheetPoint[];
}

/** Front and back side by side, to one scale, in a frame that begins at 0. */
interface WornInk {
	readonly width: number;
	readonly height: number;
	readonly views: readonly {
		readonly side: WornView['side'];
		/** Where its middle and its 0 stand in the frame. */
		readonly left: number;
		readonly top: number;
		/** How much of the frame's width is its own. */
		readonly width: number;
		readonly layers: readonly InkLayer[];
	}[];
}

/** Millimetres: round a view, and the steps in which the frame grows, so that a longer skirt is seen to be longer. */
const [EDGE, STEP] = [25, 200];

const data = (places: readonly SheetPoint[]): string =>
	places.length === 0 ? '' : `M${places.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;

const inkLayer = ({ side, cloth, lines, buttons }: WornLayer): InkLayer => ({
	side,
	cloth: cloth.length === 0 ? '' : `${data(cloth)}Z`,
	lines: lines.map(({ kind, places }) => ({ kind, data: data(places) })),
	buttons
});

/** A worn garment as path data. */
export const wornInk = ({ views }: Worn): WornInk => {
	const up = (length: number): number => Math.ceil(length / STEP) * STEP;
	const top = Math.min(...views.map(({ bounds }) => bounds.top));
	const bottom = Math.max(...views.map(({ bounds }) => bounds.bottom));
	const width = up(Math.max(...views.map(({ bounds }) => bounds.right - bounds.left))) + 2 * EDGE;
	return {
		width: width * views.length,
		height: up(bottom - top) + 2 * EDGE,
		views: views.map(({ side, layers }, i) => ({
			side,
			left: width * (i + 0.5),
			top: EDGE - top,
			width,
			layers: layers.map(inkLayer)
		}))
	};
};

/** A worn garment for someone who cannot see its drawing. */
export const wornWords = (
	garment: string,
	{ views, hem, buttons, gathered, sleeve }: Worn,
	{ words }: Speech
): string =>
	words.garments.worn({
		garment,
		back: views.find(({ side }) => side === 'back')?.length ?? hem,
		hem,
		buttons,
		gathered,
		sleeve
	});
