import { turnedTo } from '#checker/check-line.ts';
import { pathEnd, pathStart, type Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Tool } from '../tool.svelte.ts';

/** Where a step belongs. */
export interface RightPlace {
	readonly point?: SheetPoint | undefined;
	readonly line?: Path | undefined;
}

/** Where the step at hand belongs, once that may be seen: after a check, or with the last rung of help. From the learner's own points where it is right from those. */
export const rightPlace = ({ work, stepName }: Tool): RightPlace | undefined => {
	const { checked, help } = work.entry(stepName);
	if (!checked && help < 3) return undefined;
	const truth = work.followsThrough(stepName) ? work.own : work.draft;
	return truth && { point: truth.points[stepName], line: truth.lines[stepName]?.path };
};

/** The ends of each piece of a line, and the handles of a bent one: its course lies between them. */
const placesOn = (path: Path): readonly SheetPoint[] =>
	path.flatMap((piece) =>
		piece.kind === 'cubic' ? [piece.from, piece.leaving, piece.arriving, piece.to] : [piece.from, piece.to]
	);

/** What must be seen of the step at hand: the learner's marks, and where they belong once that is shown. */
export const toBeSeen = (tool: Tool): readonly SheetPoint[] => {
	const right = rightPlace(tool);
	const placed = tool.work.entry(tool.stepName).placement ? Object.values(tool.places) : [];
	return [
		...placed,
		...(tool.line ? placesOn(tool.line) : []),
		...(right?.point ? [right.point] : []),
		...(right?.line ? placesOn(right.line) : [])
	];
};

/** A way from where something lies to where it belongs. */
export interface Arrow {
	readonly from: SheetPoint;
	readonly to: SheetPoint;
}

/** From each mark of a wrong answer to its place; of a curve, from where it strays furthest. None where nothing is wrong. */
export const arrowsOf = (tool: Tool): readonly Arrow[] => {
	const { work, stepName, places, line } = tool;
	const [verdict, right] = [work.verdict(stepName), rightPlace(tool)];
	if (verdict.answer !== 'wrong' || !work.entry(stepName).checked || !right) return [];
	const mark = places['point'];
	if (right.point) return mark ? [{ from: mark, to: right.point }] : [];
	if (!right.line || !line) return [];
	if (tool.answer.put === 'handles') return tool.curve?.strays() ?? [];
	const drawn = turnedTo(line, right.line);
	return [
		{ from: pathStart(drawn), to: pathStart(right.line) },
		{ from: pathEnd(drawn), to: pathEnd(right.line) }
	];
};
