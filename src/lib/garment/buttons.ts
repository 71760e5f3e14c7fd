import type { Mm } from '#shared/units.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { boundsOf, polyline, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { buttonLevels } from './button-levels.ts';
import type { ButtonRule } from './garment.ts';

/** Buttons of a piece, from the top down, and the buttonhole of each: one half has the ones, the other half the others. */
export interface Buttons {
	readonly at: readonly SheetPoint[];
	readonly holes: readonly Path[];
	/** How wide a button is. */
	readonly width: Mm;
	/** How long a buttonhole is. */
	readonly hole: Mm;
}

/** Where buttons sit on their upright line, and the buttonhole of each. Undefined where the draft lacks a point. */
export const buttonsOf = (
	rule: ButtonRule,
	outline: Path,
	{ points }: Draft,
	scope: Scope
): Buttons | undefined => {
	const [top, foot, bust] = [...rule.on, rule.at].map((name) => points[name]);
	if (!top || !foot || !bust) return undefined;
	const places = buttonLevels(top.y, bust.y, foot.y).map((y) => at(top.x, y));
	const { left, right } = boundsOf([outline]);
	const inward = (left + right) / 2 > top.x ? 1 : -1;
	const hole = lengthOf(rule.hole, scope);
	const holes = places.map(({ x, y }) =>
		polyline(at(x - inward * rule.beyond, y), at(x + inward * (hole - rule.beyond), y))
	);
	return { at: places, holes, width: lengthOf(rule.width, scope), hole };
};

/** Half the arms of a button's cross, and half the bars at a buttonhole's ends. */
const ARM = 3;
const BAR = 2;

/** How buttons are drawn: a slanting cross for each, and a line with a bar at either end for its buttonhole. */
export const buttonStrokes = ({ at: places, holes }: Pick<Buttons, 'at' | 'holes'>): readonly Path[] => [
	...places.flatMap(({ x, y }) => [
		polyline(at(x - ARM, y - ARM), at(x + ARM, y + ARM)),
		polyline(at(x - ARM, y + ARM), at(x + ARM, y - ARM))
	]),
	...holes.flatMap((hole) => [
		hole,
		...[hole[0].from, hole[0].to].map(({ x, y }) => polyline(at(x, y - BAR), at(x, y + BAR)))
	])
];
