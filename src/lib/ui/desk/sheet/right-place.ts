import type { HandleOff } from '#shared/speech/en/verdicts.ts';
import { UNSPOKEN } from '#shared/tolerances.ts';
import { mm } from '#shared/units.ts';
import type { FindingOf } from '#shared/verdict.ts';
import { turnedTo } from '#checker/check-line.ts';
import { pathEnd, pathStart, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
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

/** The handle of a curve that lies furthest from its place; undefined for another line, and where none is off. */
export const worstHandle = ({ answer, line, work, stepName }: Tool): HandleOff | undefined => {
	const right = (work.followsThrough(stepName) ? work.own : work.draft)?.lines[stepName]?.path;
	if (answer.put !== 'handles' || !line || !right) return undefined;
	const off = line.flatMap((piece, i) => {
		const wanted = right[i];
		if (piece.kind !== 'cubic' || wanted?.kind !== 'cubic') return [];
		const handle = (t: 0 | 1, a: SheetPoint, b: SheetPoint) => ({
			...{ point: answer.through[i + t]?.point ?? '', leaving: t === 0 },
			...{ across: mm(a.x - b.x), down: mm(a.y - b.y), away: distance(a, b) }
		});
		return [handle(0, piece.leaving, wanted.leaving), handle(1, piece.arriving, wanted.arriving)];
	});
	const [worst] = off.toSorted((a, b) => b.away - a.away);
	return worst && worst.away >= UNSPOKEN ? worst : undefined;
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
	if (tool.answer.put === 'handles') {
		const strays = verdict.findings.find(
			(finding): finding is FindingOf<'course'> => finding.aspect === 'course' && !finding.within
		);
		if (!strays) return [];
		const from = at(mm(strays.where[0]), mm(strays.where[1]));
		return [{ from, to: at(from.x - strays.across, from.y - strays.down) }];
	}
	const drawn = turnedTo(line, right.line);
	return [
		{ from: pathStart(drawn), to: pathStart(right.line) },
		{ from: pathEnd(drawn), to: pathEnd(right.line) }
	];
};
