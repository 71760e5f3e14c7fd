import { mm, type Mm } from '#shared/units.ts';
import type { Nest, NestedSize, SizedPattern } from './nested.ts';

/** How long an edge is in each size; undefined in a size that does not have it. */
export interface EdgeGrowth {
	readonly piece: string;
	readonly pieceName: string;
	readonly edge: string;
	readonly title: string;
	readonly lengths: readonly (Mm | undefined)[];
	/** How much it is longer than in the size before; undefined for the first, and where a dart that only one of the two has divides it. */
	readonly growth: readonly (Mm | undefined)[];
}

/** From one size to the next, a seam of which one side grows otherwise than the other. */
export interface UnevenSeam {
	readonly label: string;
	readonly from: string;
	readonly to: string;
	readonly first: Mm;
	readonly second: Mm;
}

/** How even a nest grows. */
export interface Growth {
	readonly edges: readonly EdgeGrowth[];
	readonly uneven: readonly UnevenSeam[];
}

/** How much more one side of a seam may grow from a size to the next than it is meant to: what is eased in without being seen. Common practice, no source. */
const GROWN_APART: Mm = mm(1);

/** The seams that grow unevenly between two sizes: what is meant to be eased or gathered grows with its rule, and does not count. */
const unevenBetween = (before: SizedPattern, after: SizedPattern): readonly UnevenSeam[] =>
	after.pattern.seams.flatMap((seam) => {
		const was = before.pattern.seams.find(({ name }) => name === seam.name);
		if (!was || Math.abs(seam.difference - was.difference) <= GROWN_APART) return [];
		return [
			{
				label: seam.label,
				from: before.name,
				to: after.name,
				first: mm(seam.firstLength + seam.ease - was.firstLength - was.ease),
				second: mm(seam.secondLength - was.secondLength)
			}
		];
	});

/** The edges that an edge lies between. */
const nextTo = ({ piece: { edges } }: NestedSize, name: string): string => {
	const i = edges.findIndex((edge) => edge.name === name);
	return [edges.at(i - 1), edges[(i + 1) % edges.length]].map((edge) => edge?.name).join();
};

/** How each edge grows from size to size, along its stitching line, and which seams grow unevenly. */
export const growthOf = ({ sizes, pieces }: Nest): Growth => ({
	edges: pieces.flatMap(({ key, sizes: laid }) => {
		const names = [...new Set(laid.flatMap(({ piece }) => piece.edges.map(({ name }) => name)))];
		return names.flatMap((name) => {
			const found = laid.map(({ piece }) => piece.edges.find((edge) => edge.name === name));
			const [some] = found.flatMap((edge) => edge ?? []);
			const [piece] = laid;
			if (!some || !piece) return [];
			const lengths = found.map((edge) => edge?.length);
			const after = laid.map((size) => nextTo(size, name));
			const growth = lengths.map((length, i) => {
				const before = lengths[i - 1];
				const isComparable = length !== undefined && before !== undefined && after[i] === after[i - 1];
				return isComparable ? mm(length - before) : undefined;
			});
			return [{ piece: key, pieceName: piece.piece.name, edge: name, title: some.title, lengths, growth }];
		});
	}),
	uneven: sizes.slice(1).flatMap((after, i) => {
		const before = sizes[i];
		return before ? unevenBetween(before, after) : [];
	})
});
