import type { HandleOff } from '#shared/speech/en/verdicts.ts';
import { UNSPOKEN } from '#shared/tolerances.ts';
import { mm } from '#shared/units.ts';
import type { FindingOf } from '#shared/verdict.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import type { Tool } from '../tool.svelte.ts';
import type { Arrow } from './right-place.ts';

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

/** From where a wrong curve strays furthest to its place; none where it strays nowhere. */
export const strayed = ({ work, stepName }: Tool): readonly Arrow[] => {
	const verdict = work.verdict(stepName);
	const strays =
		verdict.answer === 'wrong'
			? verdict.findings.find(
					(finding): finding is FindingOf<'course'> => finding.aspect === 'course' && !finding.within
				)
			: undefined;
	if (!strays) return [];
	const from = at(mm(strays.where[0]), mm(strays.where[1]));
	return [{ from, to: at(from.x - strays.across, from.y - strays.down) }];
};
