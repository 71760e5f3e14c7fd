import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { swungToLevel } from '#geometry/rays.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { slip, type Part } from '../misstep.ts';
import { laid, laidTogether, lengthParts, mayBeMeant, startParts } from '../parts.ts';
import { PRIORS } from '../priors.ts';
import type { KindMissteps } from './kind-missteps.ts';

/** A length swung to a level: the length, the level, the start, the side, upward, straight across instead of swung, and two of them. */
export const swingMissteps: KindMissteps<'swing'> = (step, stand) => {
	const { side, from } = step;
	const centre = stand.scope.point(from);
	const [length, level] = [lengthOf(step.length, stand.scope), lengthOf(step.level, stand.scope)];
	const out = side === 'outward' ? 1 : -1;
	const swung = (start: SheetPoint, by: Mm, depth: Mm): SheetPoint | undefined =>
		swungToLevel(start, by, depth, side);
	// A level that was left out lies at the start: that is straight across, which is told as such.
	const levelled = (by: Mm, depth: Mm): SheetPoint | undefined =>
		Math.abs(depth - centre.y) <= POINT_TOLERANCE ? undefined : swung(centre, by, depth);
	const [lengths, levels, starts] = [
		lengthParts(step.length, stand),
		lengthParts(step.level, stand),
		startParts(from, stand)
	];
	const other: Part<'outward' | 'inward'> = {
		note: 'direction:opposite',
		prior: PRIORS.opposite,
		value: side === 'outward' ? 'inward' : 'outward',
		slip: () => slip('swung', { wrong: side === 'outward' ? 'inward' : 'outward', right: side })
	};
	const up: Part<Mm> = {
		note: 'direction:upward',
		prior: PRIORS.opposite,
		value: mm(2 * centre.y - level),
		slip: () => slip('swungUp')
	};
	const straight: readonly Part<SheetPoint>[] = [
		{ value: at(centre.x, level), from: undefined },
		{ value: centre, from }
	].map(({ value, from: begun }) => ({
		...{ note: 'slope', prior: PRIORS.slope / 2, value },
		slip: () => slip('notSwung', { from: begun })
	}));
	const across = (start: SheetPoint, by: Mm): SheetPoint => at(start.x + out * by, start.y);
	return [
		...laid(stand, lengths, (by) => swung(centre, by, level)),
		...laid(stand, levels, (depth) => levelled(length, depth)),
		...laid(stand, starts, (start) => swung(start, length, level)),
		...laid(stand, straight, (start) => across(start, length)),
		...laid(stand, [other], (wrong) => swungToLevel(centre, length, level, wrong)),
		...laid(stand, [up], (depth) => swung(centre, length, depth)),
		...laidTogether(
			stand,
			lengths,
			levels.filter(({ value }) => mayBeMeant(stand, at(stand.placed?.x ?? 0, value))),
			levelled
		),
		...laidTogether(stand, lengths, starts, (by, start) => swung(start, by, level)),
		...laidTogether(stand, lengths, straight, (by, start) => across(start, by)),
		...laidTogether(stand, levels, starts, (depth, start) => swung(start, length, depth)),
		...laidTogether(stand, lengths, [other], (by, wrong) => swungToLevel(centre, by, level, wrong))
	];
};
