import { mm, type Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';

/** Several sizes of a pattern on one sheet. */
export const nested = (v: Voice) => {
	const small = (length: Mm): string => (v.unit === 'in' ? v : v.inUnit('mm')).length(length);
	const signed = (length: Mm): string => {
		const size = v.bare(mm(Math.abs(length)));
		return `${length < 0 && size !== '0' ? '−' : '+'}${size}`;
	};
	return {
		heading: 'Several sizes on one sheet',
		about:
			'Each size has a line of its own rhythm and its name beside it; fine lines run through the same corner of all, so that a size between two can be drawn. Sizes are standard sizes, and yours can be one of them.',
		open: 'Choose sizes',
		close: 'Hide the sizes',
		sizes: 'Sizes (two to seven)',
		own: ({ body }: { body: string }) => `${body}, as chosen above`,
		count: 'Choose two to seven sizes.',
		key: 'Sizes',
		size: ({ name }: { name: string }) => `Size ${name}`,
		/** Whose a sheet is. */
		title: ({ what, sizes }: { what: string; sizes: readonly string[] }) => `${what}, sizes ${v.list(sizes)}`,
		forSizes: ({ sizes }: { sizes: readonly string[] }) => `Sizes ${v.list(sizes)}`,
		cutOne: 'Cut along the line of one size. Where your girths lie between two, draw between them.',
		estimated:
			'Standard sizes have girths from memory of EN 13402-3, and lengths estimated from a survey of 1988.',
		refused: ({ size, reasons }: { size: string; reasons: readonly string[] }) =>
			`size ${size} cannot be drafted: ${reasons.join('; ')}`,
		twoToSeven: ({ count, most }: { count: number; most: number }) =>
			`a sheet holds from two to ${v.number(most)} sizes that are told apart, not ${v.number(count)}`,
		twice: ({ name }: { name: string }) => `size ${name} is named twice`,
		notWith: ({ flag }: { flag: string }) => `${flag} does not go with --sizes`,
		noFormat: ({ format, formats }: { format: string; formats: readonly string[] }) =>
			`several sizes are saved as ${v.list(formats)}, not as ${format}`,

		growth: 'How each edge grows',
		growthAbout:
			'Lengths along the stitching line, and how much each grows from the size before. A seam whose two sides grow unalike is named: in that size it would not sew together as it does in the others.',
		piece: 'Piece',
		edge: 'Edge',
		grown: ({ length, by }: { length: Mm; by: Mm | undefined }) =>
			by === undefined ? v.bare(length) : `${v.bare(length)} (${signed(by)})`,
		none: '–',
		even: 'Every seam grows alike on both sides, to within 1 mm a size.',
		uneven: ({
			label,
			from,
			to,
			first,
			second
		}: {
			label: string;
			from: string;
			to: string;
			first: Mm;
			second: Mm;
		}) =>
			`${label}: from size ${from} to ${to} the first side grows by ${small(first)}, the second by ${small(second)}.`,
		save: 'Save the sheet',
		columns: { piece: 'piece', edge: 'edge', grows: 'grows' },
		unevenColumn: 'uneven seam',
		format: 'What is saved',
		formats: {
			pages: 'Pages to join (PDF)',
			sheet: 'One large sheet (PDF)',
			svg: 'Drawing (SVG)',
			dxf: 'Drawing for a plotter (DXF)',
			csv: 'Growth as a table (CSV)'
		},
		preview: 'How the sizes lie on each other'
	};
};
