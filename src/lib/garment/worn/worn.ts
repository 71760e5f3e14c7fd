import { mm, type Mm } from '#shared/units.ts';
import type { Bounds } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Places } from './panel.ts';

/** How large a button is drawn: half of it, in millimetres of the garment. */
export const WORN_BUTTON: Mm = mm(8);

export type WornLineKind = 'outline' | 'seam' | 'dart' | 'gather' | 'fold' | 'zip' | 'slit';

/** A line of the drawing, by places in turn. */
export interface WornLine {
	readonly kind: WornLineKind;
	readonly places: Places;
}

/** A part of the drawing, over those before it: the cloth that it covers, and the lines on that. */
export interface WornLayer {
	/** The right side of the cloth, or its inside, seen through the neck. */
	readonly side: 'outside' | 'inside';
	readonly cloth: Places;
	readonly lines: readonly WornLine[];
	readonly buttons: readonly SheetPoint[];
}

/** A garment as it is worn, seen from one side. Millimetres, the middle at 0, y down. */
export interface WornView {
	readonly side: 'front' | 'back';
	readonly layers: readonly WornLayer[];
	readonly bounds: Bounds;
	/** Down the centre of this side, from its upper edge to its hem. */
	readonly length: Mm;
}

/** What a worn garment's drawing shows, in numbers. */
export interface Worn {
	readonly views: readonly WornView[];
	/** The round of the hem, of one sleeve; how many buttons there are; how many times the waist is gathered. */
	readonly hem: Mm;
	readonly sleeve: Mm | undefined;
	readonly buttons: number;
	readonly gathered: number | undefined;
}
