import { pieceCurves, piecePlaces } from '#garment/piece-places.ts';
import type { Piece } from '#garment/piece.ts';
import { pathEnd, pathLength, pathSamples, pathStart, polyline, type Path } from '#geometry/path.ts';
import { at, directionTo, squareTo } from '#geometry/point.ts';
import { mm } from '#shared/units.ts';
import { photographed, type Photographed } from '../../photograph/paper-draft.ts';
import { METHODS } from './finished.ts';
import { heronsDraft } from './slips.ts';

/** A line that bends by so much more to one side half way along than another. */
const bentBy = (path: Path, by: number): Path => {
	const way = directionTo(pathStart(path), pathEnd(path));
	const [first, ...places] = pathSamples(path, mm(4));
	if (!way || !first) throw new Error('a line has two ends');
	const out = squareTo(way);
	const moved = [...places, pathEnd(path)].map(({ x, y }, i, all) => {
		const off = by * Math.sin((Math.PI * (i + 1)) / all.length);
		return at(x + off * out.dx, y + off * out.dy);
	});
	const [second, ...rest] = moved;
	if (!second) throw new Error('a line has two ends');
	return polyline(first, second, ...rest);
};

/** A piece that was cut out of paper along its cutting line, and photographed. */
export interface PaperPiece {
	readonly picture: Photographed;
	/** Its curved edges as they were cut, by the number of the corner that each begins at. */
	readonly cut: Readonly<Record<number, Path>>;
	/** What its corners and notches are named in the picture. */
	readonly names: readonly string[];
}

/** Cuts a piece out and photographs it; `bent` says by how much some curved edges were cut otherwise, by the corner that each begins at. */
export const paperPiece = (
	piece: Piece,
	bent: Readonly<Record<number, number>>,
	size: { readonly width: number; readonly height: number }
): PaperPiece => {
	const places = piecePlaces(piece, 'cutting').map(({ kind, number, at: place }) => ({
		name: `${kind} ${String(number)}`,
		place
	}));
	const cut = Object.fromEntries(
		pieceCurves(piece, 'cutting').map(({ from, path }) => [from, bentBy(path, bent[from] ?? 0)])
	);
	const [draft] = METHODS.map(heronsDraft);
	if (!draft) throw new Error('there is a draft');
	const lines = { ...cut, ...(Object.keys(bent).length === 0 ? { all: piece.cutting.outline } : {}) };
	const picture = photographed(
		{
			draft: {
				...draft,
				points: Object.fromEntries(places.map(({ name, place }) => [name, place])),
				lines: Object.fromEntries(
					Object.entries(lines).map(([name, path]) => [name, { path, length: mm(pathLength(path)) }])
				)
			}
		},
		{ ...size }
	);
	return { picture, cut, names: places.map(({ name }) => name) };
};
