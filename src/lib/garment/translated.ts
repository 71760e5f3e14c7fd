import type { GarmentFile, GarmentWords } from '#shared/garment.ts';

type PieceFile = GarmentFile['pieces'][number];

const pieceSaid = (
	piece: PieceFile,
	{ name, edges, marks, drills, darts, text }: NonNullable<GarmentWords['pieces']>[string]
): PieceFile => ({
	...piece,
	name: name ?? piece.name,
	edges: piece.edges.map((each) => ({ ...each, label: edges?.[each.name] ?? each.label })),
	marks: piece.marks.map((each) => ({ ...each, label: marks?.[each.line] ?? each.label })),
	drills: piece.drills.map((each) => ({
		...each,
		label: drills?.['point' in each ? each.point : each.end] ?? each.label
	})),
	levels: piece.levels.map((each) => ({ ...each, label: marks?.[each.name] ?? each.label })),
	darts: piece.darts.map((each, i) => ({ ...each, name: darts?.[i] ?? each.name })),
	text: piece.text.map((each, i) => text?.[i] ?? each)
});

/** A garment's file with what another language calls everything in it; what that leaves out stays as it is. */
export const translated = (file: GarmentFile, words: GarmentWords): GarmentFile => ({
	...file,
	name: words.name ?? file.name,
	about: words.about ?? file.about,
	pieces: file.pieces.map((each) => pieceSaid(each, words.pieces?.[each.key] ?? {})),
	seams: file.seams.map((each) => {
		const said = words.seams?.[each.name];
		return { ...each, label: said?.label ?? each.label, runs: { ...each.runs, ...said?.runs } };
	}),
	smooth: file.smooth.map((each, i) => ({ ...each, label: words.smooth?.[i] ?? each.label })),
	numbers: file.numbers.map((each) => ({ ...each, ...words.numbers?.[each.name] })),
	wear: file.wear.map((each) => ({ ...each, ...words.wear?.[each.name] })),
	girths: file.girths.map((each) => {
		const said = words.girths?.[each.name];
		return {
			...each,
			label: said?.label ?? each.label,
			rows: each.rows.map((row) => ({ ...row, label: said?.rows?.[row.name] ?? row.label }))
		};
	}),
	order: file.order.map((each, i) => words.order?.[i] ?? each)
});
