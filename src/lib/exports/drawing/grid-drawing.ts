import { mm, type Mm, type Unit } from '#shared/units.ts';
import { polyline, type Bounds, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import type { Drawing, Stroke } from './drawing.ts';

/** Squares of the bare grid, by the unit that the drafter works in; every fifth line (every second inch) is stronger. */
const SQUARES: Readonly<Record<Unit, { readonly side: Mm; readonly strong: number }>> = {
	cm: { side: mm(10), strong: 5 },
	mm: { side: mm(10), strong: 5 },
	in: { side: mm(25.4), strong: 2 }
};

/** Side of the corner marks: a ring, with a square within it at all corners but the lower right, so that a picture shows which way up the sheet is. */
const RING: Mm = mm(12);
const DOT: Mm = mm(3);
/** How far outside the grid the middles of the corner marks stand. */
export const CORNER_OUT: Mm = mm(12);

const square = (x: number, y: number, side: number): Path =>
	polyline(
		at(x - side / 2, y - side / 2),
		at(x + side / 2, y - side / 2),
		at(x + side / 2, y + side / 2),
		at(x - side / 2, y + side / 2)
	);

const cornerStrokes = ({ left, top, right, bottom }: Bounds): readonly Stroke[] => {
	const corners = [
		[left - CORNER_OUT, top - CORNER_OUT, true],
		[right + CORNER_OUT, top - CORNER_OUT, true],
		[left - CORNER_OUT, bottom + CORNER_OUT, true],
		[right + CORNER_OUT, bottom + CORNER_OUT, false]
	] as const;
	return corners.flatMap(([x, y, dotted]) => [
		{ kind: 'corner' as const, path: square(x, y, RING), closed: true },
		...(dotted ? [{ kind: 'corner' as const, path: square(x, y, DOT), closed: true }] : [])
	]);
};

/**
 * The bare grid over a part of the sheet, for drafting by hand: lines a centimetre or an inch apart, the corner marks
 * that a photograph can be measured by. `bounds` is grown to whole squares.
 */
export const gridDrawing = (bounds: Bounds, unit: Unit): Drawing => {
	const { side, strong } = SQUARES[unit];
	const [from, to] = [
		{ x: Math.floor(bounds.left / side), y: Math.floor(bounds.top / side) },
		{ x: Math.ceil(bounds.right / side), y: Math.ceil(bounds.bottom / side) }
	];
	const whole: Bounds = {
		left: mm(from.x * side),
		top: mm(from.y * side),
		right: mm(to.x * side),
		bottom: mm(to.y * side)
	};
	const kind = (count: number): Stroke['kind'] => (count % strong === 0 ? 'line' : 'grid');
	const columns = Array.from({ length: to.x - from.x + 1 }, (_, i) => from.x + i);
	const rows = Array.from({ length: to.y - from.y + 1 }, (_, i) => from.y + i);
	return {
		name: 'grid',
		strokes: [
			...columns.map((count): Stroke => ({
				kind: kind(count),
				path: polyline(at(count * side, whole.top), at(count * side, whole.bottom))
			})),
			...rows.map((count): Stroke => ({
				kind: kind(count),
				path: polyline(at(whole.left, count * side), at(whole.right, count * side))
			})),
			...cornerStrokes(whole)
		],
		words: []
	};
};
