import { mm } from '#shared/units.ts';
import { polyline, type Bounds, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { boundsOfDrawings, type Drawing } from '../drawing/drawing.ts';
import { hasInk } from './ink.ts';
import { OVERLAP, tilesOver, type Paper, type Tile } from './tiles.ts';

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

/** The lines that words keep clear of, each once: where pages are joined, and where the page that lies under ends. */
export const jointLines = ({ bounds, every }: PagePlan): readonly Path[] => {
	const { left, top, right, bottom } = bounds;
	const lines = every.flatMap(({ joins }) => joins.map(({ edge, at: place }) => ({ edge, place })));
	const places = (wanted: 'right' | 'bottom'): readonly number[] => [
		...new Set(lines.flatMap(({ edge, place }) => (edge === wanted ? [place, place + OVERLAP] : [])))
	];
	return [
		...places('right').map((x) => polyline(at(x, top), at(x, bottom))),
		...places('bottom').map((y) => polyline(at(left, y), at(right, y)))
	];
};

/** Plans the pages of some drawings. Throws BadInput where nothing is drawn. */
export const planPages = (drawings: readonly Drawing[], paper: Paper): PagePlan => {
	const bounds = boundsOfDrawings(drawings, AROUND);
	const every = tilesOver(bounds, paper);
	const tiles = every.filter((tile) => hasInk(drawings, tile));
	const kept = new Set(tiles.map(({ name }) => name));
	return { bounds, tiles, every, blank: every.map(({ name }) => name).filter((name) => !kept.has(name)) };
};
