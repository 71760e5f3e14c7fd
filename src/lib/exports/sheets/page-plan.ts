import { mm } from '#shared/units.ts';
import type { Bounds } from '#geometry/path.ts';
import { boundsOfDrawings, type Drawing } from '../drawing/drawing.ts';
import { hasInk } from './ink.ts';
import { tilesOver, type Paper, type Tile } from './tiles.ts';

/** White left round everything that is drawn. */
const AROUND = mm(3);

/** The pages that a print has: those with ink, and those that are left out. */
export interface PagePlan {
	readonly bounds: Bounds;
	/** The pages that are printed. */
	readonly tiles: readonly Tile[];
	/** Every page of the sheet, with those that have no ink. */
	readonly every: readonly Tile[];
	/** The names of the pages that are left out. */
	readonly blank: readonly string[];
}

/** Plans the pages of some drawings. Throws BadInput where nothing is drawn. */
export const planPages = (drawings: readonly Drawing[], paper: Paper): PagePlan => {
	const bounds = boundsOfDrawings(drawings, AROUND);
	const every = tilesOver(bounds, paper);
	const tiles = every.filter((tile) => hasInk(drawings, tile));
	const kept = new Set(tiles.map(({ name }) => name));
	return { bounds, tiles, every, blank: every.map(({ name }) => name).filter((name) => !kept.has(name)) };
};
