import type { StepKind } from '#shared/method.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { slip, type Misstep } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import { othersThan, type Stand } from '../stand.ts';
import { sumOf } from '../terms.ts';
import { wrongDistances } from '../wrong-distances.ts';

/** The plausible wrong places for one kind of step. */
export type KindMissteps<K extends StepKind> = (step: StepOf<K>, stand: Stand) => readonly Misstep[];

/** Every wrong way of working a length, laid off as `lay` says; nothing where that leads nowhere. */
export const wronglyWorked = (
	formula: Formula,
	stand: Stand,
	lay: (length: Mm) => SheetPoint | undefined
): readonly Misstep[] => {
	const points = stand.earlier.map(({ name }) => name);
	const { method, body, scope } = stand;
	return wrongDistances(formula, { method, body, scope, points }).flatMap(
		({ note, prior, slip: what, terms }) => {
			const place = lay(sumOf(terms));
			return place ? [{ note, prior, slips: [what], place }] : [];
		}
	);
};

/** The step begun at another of the points on the sheet. */
export const wronglyStarted = (
	right: string,
	stand: Stand,
	lay: (start: SheetPoint) => SheetPoint | undefined,
	part = 1
): readonly Misstep[] =>
	othersThan(stand, right).flatMap(({ name, place: start, share }) => {
		const place = lay(start);
		if (!place) return [];
		return [
			{
				note: `start:${name}-for-${right}`,
				prior: PRIORS.start * part * share,
				place,
				slips: [slip('start', { wrong: name, right })]
			}
		];
	});

/** The step laid off toward another of the points on the sheet. */
export const wronglyAimed = (
	right: string,
	start: string,
	stand: Stand,
	lay: (toward: SheetPoint) => SheetPoint | undefined
): readonly Misstep[] =>
	othersThan(stand, right, start).flatMap(({ name, place: toward, share }) => {
		const place = lay(toward);
		if (!place) return [];
		return [
			{
				note: `toward:${name}-for-${right}`,
				prior: PRIORS.toward * share,
				place,
				slips: [slip('toward', { wrong: name, right })]
			}
		];
	});

/** The opposite of a length. */
export const backward = (length: Mm): Mm => mm(-length);
