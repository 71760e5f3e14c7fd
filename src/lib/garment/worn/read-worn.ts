import type { GarmentFile } from '#shared/garment.ts';
import { BadInput } from '#shared/bad-input.ts';
import { oneOf } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import { parseFormula, type KnownNames } from '#drafting/formula/parse.ts';
import type { EdgeRef, PanelRule, PieceRule, TierRule } from '../garment.ts';

type TierFile = GarmentFile['worn'][number];

/** What a tier may name: the garment's pieces, and the points of its drafts as formulas know them. */
interface WornNames {
	readonly known: KnownNames;
	readonly pieces: readonly PieceRule[];
	/** An edge of a piece by its name. Throws BadInput. */
	readonly edge: (name: string, place: string) => EdgeRef;
}

/** The piece of this name, with the points of its draft. Throws BadInput. */
const pieceNamed = (name: string, { pieces, known }: WornNames, place: string) => {
	const keys = pieces.map(({ key }) => key);
	const key = oneOf('piece', name, keys, place);
	const piece = pieces.find((each) => each.key === key);
	const before = `${piece?.draft ?? ''}.`;
	const points = known.points.flatMap((each) => (each.startsWith(before) ? [each.slice(before.length)] : []));
	return { edges: piece?.edges.map((each) => each.name) ?? [], points };
};

const readPanel = (file: TierFile['front'], count: number, names: WornNames, place: string): PanelRule => {
	for (const piece of file.pieces) pieceNamed(piece, names, place);
	const { edges, points } = pieceNamed(file.pieces[0] ?? '', names, place);
	if (file.levels.length !== count)
		throw new BadInput(
			place,
			message('reading', 'levelsAndGirths', { levels: file.levels.length, girths: count })
		);
	const { zip = [], slit = [], shoulder } = file;
	const named = [...file.levels.flatMap(({ side, centre }) => [side, centre]), ...zip, ...slit, shoulder];
	for (const point of named) if (point !== undefined) oneOf('point', point, points, place);
	for (const level of file.levels)
		for (const edge of [...level.edges, ...level.across]) oneOf('edge', edge, edges, place);
	return file;
};

/** How a garment is worn. Throws BadInput: unknown names, another number of levels than of girths. */
export const readWorn = (file: TierFile, names: WornNames, place: string): TierRule => {
	const where = `${place}: worn`;
	const { girths, front, back, neck, band, sleeve } = file;
	if (sleeve) {
		const { edges, points } = pieceNamed(sleeve.piece, names, where);
		for (const point of sleeve.middle) oneOf('point', point, points, where);
		for (const edge of [sleeve.seam, sleeve.hem]) oneOf('edge', edge, edges, where);
	}
	return {
		girths,
		front: readPanel(front, girths.length, names, `${where}: front`),
		back: readPanel(back, girths.length, names, `${where}: back`),
		neck: neck && [names.edge(neck[0], where), names.edge(neck[1], where)],
		band: band === undefined ? undefined : parseFormula(band, `${where}: band`, names.known),
		sleeve
	};
};
