import { mm, px, radians, type Mm } from '#shared/units.ts';
import type { Laid, Laying } from '#garment/laying.ts';
import { pathMovedBy, followedBy, shifting, turning, type Motion, REST, movedBy } from '#geometry/motion.ts';
import { boundsOf, polyline, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import type { Piece } from '#garment/piece.ts';
import type { ScreenSize, SheetView } from '#ui/drawing/view.ts';

/** Pixels round the cloth: room for the words along its edges. */
const MARGIN = 24;
/** In a room narrower than this the cloth is drawn upright, and so that it is at most so many times as tall as the room is wide. */
const UPRIGHT_BELOW = 520;
const TALLEST = 2.1;
/** A lying cloth is at most so tall for the room's width. */
const TALLEST_LYING = 0.8;

/** The cloth as it is drawn: upright, or lying on its side with the cut end at the left and the fold below. */
export interface ClothLeaf {
	readonly size: ScreenSize;
	readonly view: SheetView;
	readonly upright: boolean;
	/** From the cloth's own places (x from the fold, y from the cut end) to those of the drawing. */
	readonly motion: Motion;
}

/** The greatest breadth that is drawn: of a laying that all lies folded, half of the cloth. */
const breadthOf = ({ width, length, folded }: Laying): Mm => (length > folded ? width : mm(width / 2));

/** The drawing of a laying in a room so many pixels wide. */
export const clothLeaf = (laying: Laying, room: number): ClothLeaf => {
	const upright = room < UPRIGHT_BELOW;
	const [breadth, length] = [breadthOf(laying), Math.max(1, laying.length)];
	const [across, down] = upright ? [breadth, length] : [length, breadth];
	const tallest = room * (upright ? TALLEST : TALLEST_LYING);
	const scale = Math.min((room - 2 * MARGIN) / across, (tallest - 2 * MARGIN) / down);
	const lying = followedBy(turning(at(0, 0), radians(-Math.PI / 2)), shifting(at(0, 0), at(0, breadth)));
	return {
		size: { width: px(across * scale + 2 * MARGIN), height: px(down * scale + 2 * MARGIN) },
		view: { scale, left: mm(-MARGIN / scale), top: mm(-MARGIN / scale) },
		upright,
		motion: upright ? REST : lying
	};
};

/** The outlines of the cloth: the folded part, and what of it lies in a single layer. */
export const clothOutlines = ({ width, length, folded }: Laying, { motion }: ClothLeaf): readonly Path[] => {
	const box = (breadth: number, from: number, to: number): Path =>
		pathMovedBy(motion, polyline(at(0, from), at(breadth, from), at(breadth, to), at(0, to), at(0, from)));
	return [
		...(folded > 0 ? [box(width / 2, 0, folded)] : []),
		...(length > folded ? [box(width, folded, length)] : [])
	];
};

/** The fold, from the cut end on. */
export const foldLine = ({ folded }: Laying, { motion }: ClothLeaf): Path =>
	pathMovedBy(motion, polyline(at(0, 0), at(0, folded)));

/** A laid piece's cutting line in the drawing. */
export const laidOutline = (piece: Piece, laid: Laid, { motion }: ClothLeaf): Path =>
	pathMovedBy(followedBy(laid.motion, motion), piece.cutting.outline);

/** Steps at which the length is marked: half a metre, or half a yard. */
const RULED = { cm: 500, in: 457.2 } as const;

/** Marks along the cloth's length: how many halves of a metre, or of a yard, each stands for. */
export const lengthMarks = (
	{ length }: Laying,
	{ motion }: ClothLeaf,
	unit: 'cm' | 'in'
): readonly { readonly at: ReturnType<typeof at>; readonly halves: number }[] => {
	const step = RULED[unit];
	return Array.from({ length: Math.floor(length / step) }, (_, i) => ({
		at: movedBy(motion, at(0, (i + 1) * step)),
		halves: i + 1
	}));
};

/** The middle of a rectangle that holds a path. */
export const middleOf = (path: Path): ReturnType<typeof at> => {
	const { left, top, right, bottom } = boundsOf([path]);
	return at((left + right) / 2, (top + bottom) / 2);
};
