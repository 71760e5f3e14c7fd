import { Bezier } from 'bezier-js';
import { cuttingLine, type StitchedEdge } from '#garment/cutting-line.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { parallelPath } from '#geometry/parallel.ts';
import { pathEnd, pathStart, polyline, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic, segmentPoint, straight, type CubicSegment } from '#geometry/segment.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm } from '#shared/units.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { median, type Figure } from './figure.ts';

/** Greatest distance of a cutting line from where its allowance puts it, in millimetres. */
const GOAL_MM = 0.1;
/** Milliseconds of one core for the cutting lines of ten pieces: not to be noticed while an allowance is changed. */
const GOAL_MS = 10;
const PIECES = 10;
const ALLOWANCES = [10, 40];
const ROUNDS = 41;

/** The curves of the first demo body's back block, and a hem that drops from square to the side. */
const curvesOf = (lines: Readonly<Record<string, { readonly path: Path }>>) => {
	const line = (name: string): Path => {
		const found = lines[name]?.path;
		if (!found) throw new Error(`the back block has no ${name}`);
		return found;
	};
	const [side, centre] = [pathEnd(line('hip')), pathStart(line('hem'))];
	const third = (side.x - centre.x) / 3;
	const hem: Path = [
		cubic(
			side,
			at(side.x - third, side.y + 12),
			at(centre.x + third, centre.y + 25),
			at(centre.x, centre.y + 25)
		)
	];
	return { neck: line('neck'), shoulder: line('shoulder'), armhole: line('armhole'), hip: line('hip'), hem };
};

/** The line at distance `by` as it is defined: square to each of many places, whose direction is read from two beside them. */
const trueLine = (curve: CubicSegment, by: number): Path => {
	const [first, second, ...rest] = Array.from({ length: 1201 }, (_, i): SheetPoint => {
		const t = i / 1200;
		const [a, b] = [segmentPoint(curve, t - 1e-6), segmentPoint(curve, t + 1e-6)];
		const { x, y } = segmentPoint(curve, t);
		return at(x - (by * (b.y - a.y)) / distance(a, b), y + (by * (b.x - a.x)) / distance(a, b));
	});
	return polyline(first ?? curve.from, second ?? curve.to, ...rest);
};

const ownOffset = (curve: CubicSegment, by: number): readonly SheetPoint[] =>
	parallelPath([curve], mm(by)).flatMap((segment) =>
		Array.from({ length: 21 }, (_, i) => segmentPoint(segment, i / 20))
	);

const packageOffset = (curve: CubicSegment, by: number): readonly SheetPoint[] => {
	const { from, leaving, arriving, to } = curve;
	const pieces = new Bezier([from, leaving, arriving, to].map(({ x, y }) => ({ x, y }))).offset(by);
	if (!Array.isArray(pieces)) throw new Error('a curve was asked for');
	return pieces.flatMap((piece) =>
		piece instanceof Bezier ? piece.getLUT(20).map(({ x, y }) => at(x, y)) : []
	);
};

/** The greatest distance of an offset from the true line, over the neck, the armhole and the hem. */
const greatestError = (
	curves: ReturnType<typeof curvesOf>,
	by: number,
	offset: (curve: CubicSegment, by: number) => readonly SheetPoint[]
): number =>
	Math.max(
		...[curves.neck, curves.armhole, curves.hem].flat().flatMap((segment) => {
			if (segment.kind === 'straight') return [];
			const truth = trueLine(segment, by);
			return offset(segment, by).map((place) => distance(place, nearestOnPath(truth, place)));
		})
	);

const pieceOf = ({
	neck,
	shoulder,
	armhole,
	hip,
	hem
}: ReturnType<typeof curvesOf>): readonly StitchedEdge[] => [
	{ name: 'neck', kind: 'seam', path: neck, allowance: mm(10) },
	{ name: 'shoulder', kind: 'seam', path: shoulder, allowance: mm(15) },
	{ name: 'armhole', kind: 'seam', path: armhole, allowance: mm(8) },
	{
		name: 'side',
		kind: 'seam',
		path: [straight(pathEnd(armhole), pathStart(hip)), ...hip],
		allowance: mm(12)
	},
	{ name: 'hem', kind: 'hem', path: hem, allowance: mm(30) },
	{ name: 'fold', kind: 'fold', path: [straight(pathEnd(hem), pathStart(neck))], allowance: mm(0) }
];

/** Milliseconds of one core for the cutting lines of ten such pieces: by the processor's clock, in the middle of many rounds. */
const tenPieces = (edges: readonly StitchedEdge[]): number =>
	median(
		Array.from({ length: ROUNDS }, () => {
			const start = process.cpuUsage();
			for (let i = 0; i < PIECES; i++) cuttingLine(edges);
			const { user, system } = process.cpuUsage(start);
			return (user + system) / 1000;
		}).slice(ROUNDS / 4)
	);

/** How exact cutting lines are, beside those of a package that we have for other tests, and how long they take. */
export const allowanceFigures = (): readonly Figure[] => {
	const [demo] = DEMO_BODIES;
	if (!demo) throw new Error('there are demo bodies');
	const curves = curvesOf(draftOf(backBlock(), demo.body).lines);
	const exact = ALLOWANCES.map((allowance): Figure => {
		const own = greatestError(curves, -allowance, ownOffset);
		const other = greatestError(curves, -allowance, packageOffset);
		return {
			name: `a cutting line ${allowance} mm from neck, armhole and hem`,
			figure: `within ${own.toFixed(3)} mm (bezier-js: ${other.toFixed(2)} mm)`,
			goal: `within ${GOAL_MM} mm`,
			met: own <= GOAL_MM
		};
	});
	const took = tenPieces(pieceOf(curves));
	return [
		...exact,
		{
			name: `the cutting lines of ${PIECES} pieces, each with six edges and five allowances`,
			figure: `${took.toFixed(1)} ms on one core`,
			goal: `at most ${GOAL_MS} ms`,
			met: took <= GOAL_MS
		}
	];
};
