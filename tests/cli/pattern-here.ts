import { Bezier } from 'bezier-js';
import type { CliRun } from './run-cli.ts';
import { commandHere } from './run-here.ts';

export type Spot = readonly [x: number, y: number];

/** An edge as the command line prints it. */
export interface PrintedEdge {
	readonly name: string;
	readonly kind: string;
	readonly length: number;
	readonly allowance: number;
	readonly path: string;
}

/** A piece as the command line prints it. */
export interface PrintedPiece {
	readonly key: string;
	readonly number: number;
	readonly name: string;
	readonly cut: readonly { readonly in: string; readonly count: number }[];
	readonly fold: string | null;
	readonly edges: readonly PrintedEdge[];
	readonly stitching: string;
	readonly cutting: string;
	readonly grain: readonly [Spot, Spot];
	readonly bias: boolean;
	readonly notches: readonly {
		readonly edge: string;
		readonly at: Spot;
		readonly along: number;
		readonly style: string;
		readonly seam: string;
	}[];
	readonly marks: readonly { readonly label: string; readonly path: string }[];
	readonly drills: readonly { readonly label: string; readonly at: Spot }[];
	readonly darts: readonly unknown[];
	readonly text: readonly string[];
}

/** A pattern as the command line prints it. */
export interface PrintedPattern {
	readonly garment: string;
	readonly body: string;
	readonly unit: string;
	readonly pieces: readonly PrintedPiece[];
	readonly seams: readonly {
		readonly name: string;
		readonly label: string;
		readonly first: readonly string[];
		readonly second: readonly string[];
		readonly firstLength: number;
		readonly secondLength: number;
		readonly ease: number;
		readonly difference: number;
		readonly within: boolean;
	}[];
	readonly runs: readonly { readonly label: string; readonly degrees: number; readonly within: boolean }[];
	readonly gatheringRatio: number;
	readonly elasticLength: number;
	readonly elasticCut: number;
	readonly numbers: Readonly<
		Record<
			string,
			{ readonly label: string; readonly kind: string; readonly value: number; readonly within: boolean }
		>
	>;
	readonly warnings: readonly string[];
}

/** A row of a batch: a pattern, or why there is none. */
export type PatternRow = PrintedPattern | { readonly body: string; readonly refused: string };

/** The rows that were printed. */
export const patternRows = (out: string): readonly PatternRow[] =>
	out
		.split('\n')
		.filter((line) => line !== '')
		.map((line) => JSON.parse(line) as PatternRow);

/** The one pattern that was printed. */
export const onlyPattern = (out: string): PrintedPattern => {
	const [row, ...more] = patternRows(out);
	if (!row || more.length > 0 || 'refused' in row) throw new Error(`this is not one pattern: ${out}`);
	return row;
};

/** The piece of this key. */
export const pieceIn = ({ pieces }: PrintedPattern, key: string): PrintedPiece => {
	const piece = pieces.find((each) => each.key === key);
	if (!piece) throw new Error(`there is no piece ${key}`);
	return piece;
};

/** The edge of this name, such as `front.side`. */
export const edgeIn = (pattern: PrintedPattern, name: string): PrintedEdge => {
	const [key = '', own = ''] = name.split('.');
	const edge = pieceIn(pattern, key).edges.find((each) => each.name === own);
	if (!edge) throw new Error(`there is no edge ${name}`);
	return edge;
};

/** Path data read by code that shares nothing with the program's own: the four places of each part, straight parts as curves too. */
const curvesOf = (data: string): readonly Bezier[] => {
	const parts = [...data.matchAll(/([MLCZ])([^MLCZ]*)/g)];
	if (parts.map(([whole]) => whole).join('') !== data) throw new Error(`this is not path data: ${data}`);
	let [x, y] = [NaN, NaN];
	const curves: Bezier[] = [];
	for (const [, command = '', text = ''] of parts) {
		const numbers = text.split(' ').filter(Boolean).map(Number);
		if (numbers.length !== { M: 2, L: 2, C: 6, Z: 0 }[command]) throw new Error(`bad ${command}${text}`);
		const [toX, toY] = [numbers.at(-2) ?? x, numbers.at(-1) ?? y];
		if (command === 'L') {
			const [dx, dy] = [(toX - x) / 3, (toY - y) / 3];
			curves.push(new Bezier(x, y, x + dx, y + dy, x + 2 * dx, y + 2 * dy, toX, toY));
		} else if (command === 'C') curves.push(new Bezier([x, y, ...numbers]));
		[x, y] = [toX, toY];
	}
	return curves;
};

const spot = (place: { readonly x: number; readonly y: number } | undefined): Spot => {
	if (!place) throw new Error('there is no place');
	return [place.x, place.y];
};

/** Where path data starts and ends. */
export const endsOf = (data: string): readonly [Spot, Spot] => {
	const curves = curvesOf(data);
	return [spot(curves[0]?.points[0]), spot(curves.at(-1)?.points[3])];
};

/** The length of path data, in millimetres. */
export const lengthOf = (data: string): number =>
	curvesOf(data).reduce((sum, curve) => sum + curve.length(), 0);

/** The place at a length along path data, by halving. */
export const spotAlong = (data: string, length: number): Spot => {
	let left = length;
	for (const curve of curvesOf(data)) {
		const whole = curve.length();
		if (left > whole) {
			left -= whole;
			continue;
		}
		let [low, high] = [0, 1];
		for (let i = 0; i < 40; i++) {
			const middle = (low + high) / 2;
			if (curve.split(0, middle).length() < left) low = middle;
			else high = middle;
		}
		return spot(curve.get(low));
	}
	throw new Error(`the path is ${left} mm shorter than ${length} mm`);
};

/** The area that closed path data encloses, by trapezia under four hundred chords of each part, in square millimetres. */
export const areaOf = (data: string): number => {
	const places = curvesOf(data).flatMap((curve) =>
		Array.from({ length: 400 }, (_, i) => spot(curve.get(i / 400)))
	);
	const doubled = places.reduce((sum, [x, y], i) => {
		const [nextX, nextY] = places[(i + 1) % places.length] ?? [x, y];
		return sum + x * nextY - nextX * y;
	}, 0);
	return Math.abs(doubled) / 2;
};

/** How far apart two places are, in millimetres. */
export const apart = ([ax, ay]: Spot, [bx, by]: Spot): number => Math.hypot(bx - ax, by - ay);

/** Runs `square-across pattern` inside this process. */
export const patternHere = (...words: readonly string[]): Promise<CliRun> => commandHere('pattern', ...words);
