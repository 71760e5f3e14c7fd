import { SAME_PLACE, UNWRITTEN } from '#shared/tolerances.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import type { OnItsWay } from '#drafting/steps/step-rules.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { enclosedArea } from '#geometry/area.ts';
import { pathEnd, pathLength, pathReversed, pathStart, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { straight } from '#geometry/segment.ts';
import { carriedWith, nameAtRest } from '#drafting/moved.ts';

/** The slash that a turn opens: where its edge stays, and the same place of the panel before this turn. */
export interface Opening {
	/** The name of the point at its mouth. */
	readonly name: string;
	readonly stays: SheetPoint;
	readonly goes: SheetPoint;
}

/** The part of a draft that a step moves, as it lies before it is moved. */
export interface Panel {
	readonly lines: readonly Path[];
	readonly points: readonly SheetPoint[];
	/** Closed paths that together cover it. */
	readonly faces: readonly Path[];
	/** The far leg of the dart that the step closes. */
	readonly onto: SheetPoint | undefined;
	readonly opening: Opening | undefined;
}

const isSame = (a: SheetPoint, b: SheetPoint): boolean => distance(a, b) <= SAME_PLACE;

/** The end of a line that leaves the hub; undefined for a line that does not. */
const spokeEnd = (line: Path, hub: SheetPoint): SheetPoint | undefined => {
	if (isSame(pathStart(line), hub)) return pathEnd(line);
	return isSame(pathEnd(line), hub) ? pathStart(line) : undefined;
};

/** Whether one line lies on a longer one: then that one stands for more than is there, as a side seam across the mouth of its dart. */
const liesOn = (part: Path, whole: Path): boolean =>
	pathLength(part) < pathLength(whole) - UNWRITTEN &&
	[pathStart(part), pathEnd(part)].every((end) => distance(end, nearestOnPath(whole, end)) <= UNWRITTEN);

/** A line with straight ways to the hub and back, closed; all run round the same way, so that where two overlap neither undoes the other. */
const faceOf = (line: Path, hub: SheetPoint): Path => {
	const closed: Path = [straight(hub, pathStart(line)), ...line, straight(pathEnd(line), hub)];
	return enclosedArea(closed) < 0 ? pathReversed(closed) : closed;
};

/** Of the lines that leave the pin, the one furthest round the panel from where the dart closes: there the slash opens. */
const openingOf = (
	method: Method,
	drafted: Drafted,
	name: string,
	{ from, turns }: OnItsWay,
	lines: readonly Path[],
	about: SheetPoint,
	move: SheetPoint
): Opening | undefined => {
	if (!turns) return undefined;
	if (turns.onto === undefined) return { name: from, stays: move, goes: move };
	const angle = (place: SheetPoint): number => turnAngle(about, move, place);
	const side = Math.sign(
		lines
			.flatMap((line) => [pathStart(line), pathEnd(line)])
			.reduce((sum, end) => sum + (isSame(end, about) ? 0 : angle(end)), 0)
	);
	const ends = lines.flatMap((line) => spokeEnd(line, about) ?? []);
	const goes = ends.toSorted((a, b) => side * (angle(b) - angle(a)))[0];
	if (!goes || side * angle(goes) <= 0) return undefined;
	const point = carriedWith(method, name).find(({ of }) => {
		const place = drafted.points[of];
		return place && isSame(place, goes);
	});
	if (!point) return undefined;
	const mouth = nameAtRest(method, point.of);
	return { name: mouth, stays: drafted.points[mouth] ?? goes, goes };
};

/** What a step moves along its way, of what is drafted so far; undefined while its own points are not drafted. */
export const panelOf = (method: Method, drafted: Drafted, name: string, way: OnItsWay): Panel | undefined => {
	const move = drafted.points[way.from];
	const about = 'about' in way.on ? drafted.points[way.on.about] : move;
	if (!move || !about) return undefined;
	const moved = carriedWith(method, name);
	const lines = moved.flatMap(({ of }) => {
		const line = drafted.lines[of];
		return line ? [line.path] : [];
	});
	const edges = lines.filter((line) => !lines.some((other) => liesOn(other, line)));
	return {
		lines,
		points: [move, ...moved.flatMap(({ of }) => drafted.points[of] ?? [])],
		faces: edges.filter((line) => spokeEnd(line, about) === undefined).map((line) => faceOf(line, about)),
		onto: way.turns?.onto === undefined ? undefined : drafted.points[way.turns.onto],
		opening: openingOf(method, drafted, name, way, lines, about, move)
	};
};
