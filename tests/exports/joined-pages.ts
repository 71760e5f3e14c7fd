import { at, type SheetPoint } from '#geometry/point.ts';
import { alignmentPlaces, CHECK_SIDES } from '#exports/pdf/page-words.ts';
import { PAGE_MARGIN, type Tile } from '#exports/sheets/tiles.ts';
import { isInk, runsInRow, type Raster } from './raster.ts';

/** The middle of an upright line's ink on a row. */
export const middleOf = ([from, to]: readonly [number, number]): number => (from + to) / 2;

/** Furthest that a side of a check square is looked for from where it should be, in millimetres: half of what the two differ by. */
const LOOKED_FOR = 0.8;
/** The widest run of dots that is an upright line's own, in millimetres. */
const WIDEST_LINE = 1;

/** The sides of the two check squares of a first page, in millimetres, as the distance between two upright lines on its rows. */
export const measuredSquares = (page: Raster): readonly number[] =>
	CHECK_SIDES.map((side) => {
		const found = new Map<string, number>();
		for (let y = 0; y < page.height; y++) {
			const runs = runsInRow(page, y).filter(([from, to]) => to - from < WIDEST_LINE * page.perMm);
			const [left] = runs;
			if (!left) continue;
			for (const run of runs) {
				const apart = (middleOf(run) - middleOf(left)) / page.perMm;
				if (Math.abs(apart - side) > LOOKED_FOR) continue;
				const key = apart.toFixed(6);
				found.set(key, (found.get(key) ?? 0) + 1);
			}
		}
		// A square's sides stand on nearly every one of its rows; letters and the map only on a few.
		const [most] = [...found].sort(([, a], [, b]) => b - a);
		return most && most[1] > 0.8 * side * page.perMm ? Number(most[0]) : NaN;
	});

/** Where an alignment mark's cross stands on a page, looked for in the picture near where it may be. */
const markIn = (page: Raster, near: SheetPoint): SheetPoint | undefined => {
	const reach = Math.round(4 * page.perMm);
	const arm = Math.round(2.5 * page.perMm);
	const [cx, cy] = [Math.round(near.x * page.perMm), Math.round(near.y * page.perMm)];
	let best: { x: number; y: number; score: number } | undefined;
	for (let y = cy - reach; y <= cy + reach; y++) {
		for (let x = cx - reach; x <= cx + reach; x++) {
			let score = 0;
			for (let d = -arm; d <= arm; d++)
				score += Number(isInk(page, x + d, y)) + Number(isInk(page, x, y + d));
			if (!best || score > best.score) best = { x, y, score };
		}
	}
	return best && best.score > 3.2 * arm ? at(best.x / page.perMm, best.y / page.perMm) : undefined;
};

/** The pages moved so that their alignment marks lie on one another: how far right and down each stands, in mm. */
export const joinedBy = (
	pages: readonly Raster[],
	tiles: readonly Tile[]
): ReadonlyMap<string, SheetPoint> => {
	const marks = tiles.map((tile, i) => {
		const page = pages[i];
		if (!page) throw new Error('a page is missing');
		return alignmentPlaces(tile).map((place) => ({
			key: `${place.x.toFixed(2)},${place.y.toFixed(2)}`,
			on: markIn(page, at(place.x - tile.left + PAGE_MARGIN + 0.7, place.y - tile.top + PAGE_MARGIN - 0.6))
		}));
	});
	const placed = new Map<number, SheetPoint>([[0, at(0, 0)]]);
	for (let round = 0; round < tiles.length; round++) {
		for (const [i, own] of marks.entries()) {
			if (placed.has(i)) continue;
			for (const [j, base] of placed) {
				const shared = own.flatMap(({ key, on }) => {
					const other = marks[j]?.find((each) => each.key === key)?.on;
					return on && other ? [at(base.x + other.x - on.x, base.y + other.y - on.y)] : [];
				});
				const [first] = shared;
				if (!first) continue;
				const mean = (of: (place: SheetPoint) => number): number =>
					shared.reduce((sum, each) => sum + of(each), 0) / shared.length;
				placed.set(
					i,
					at(
						mean(({ x }) => x),
						mean(({ y }) => y)
					)
				);
				break;
			}
		}
	}
	return new Map([...placed].map(([i, place]) => [tiles[i]?.name ?? '', place]));
};
