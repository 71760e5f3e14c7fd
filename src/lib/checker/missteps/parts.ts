import { mm, type Mm } from '#shared/units.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Direction, SheetPoint } from '#geometry/point.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { slip, type Misstep, type Slip } from './misstep.ts';
import { LEAST_PAIR, PAIR, PRIORS, STRAY } from './priors.ts';
import { othersThan, type Stand } from './stand.ts';
import { sumOf } from './terms.ts';
import { wideDistances } from './wide-distances.ts';
import { wrongDistances } from './wrong-distances.ts';

/** One part of a step done wrongly: the length, the start, the way, each with what it was in the place of the right one. */
export interface Part<T> {
	readonly note: string;
	readonly prior: number;
	readonly slip: Slip;
	readonly value: T;
	/** Which of a rule's terms it changes, where it is one alone. */
	readonly term?: number | undefined;
}

/** A place that a mark put at `placed` may have meant; without one, any. */
export const mayBeMeant = ({ placed }: Stand, place: SheetPoint): boolean =>
	!placed || (Math.abs(place.x - placed.x) <= STRAY && Math.abs(place.y - placed.y) <= STRAY);

/** Whether a mark may have been meant by any length laid off from a start this way: looked at first, since lengths are many. */
export const mayLieOn = ({ placed }: Stand, start: SheetPoint, way: Direction): boolean =>
	!placed || Math.abs((placed.x - start.x) * way.dy - (placed.y - start.y) * way.dx) <= 2 * STRAY;

/** Every wrong way of working a length; the rare ones only where a mark is to be explained. */
export const lengthParts = (formula: Formula, stand: Stand): readonly Part<Mm>[] => {
	const points = stand.earlier.map(({ name }) => name);
	const common = wrongDistances(formula, { ...stand, points });
	const all = stand.placed ? [...common, ...wideDistances(formula, stand)] : common;
	return all.map((wrong) => ({
		...{ note: wrong.note, prior: wrong.prior, term: wrong.term, value: sumOf(wrong.terms) },
		// Made where it is told: hundreds are only looked at.
		get slip() {
			return wrong.slip;
		}
	}));
};

/** Every other of the points on the sheet, begun from by mistake. */
export const startParts = (right: string, stand: Stand, part = 1): readonly Part<SheetPoint>[] =>
	othersThan(stand, right).map(({ name, place, share }) => ({
		note: `start:${name}-for-${right}`,
		prior: PRIORS.start * part * share,
		slip: slip('start', { wrong: name, right }),
		value: place
	}));

/** Every other of the points on the sheet, gone toward by mistake. */
export const aimParts = (right: string, start: string, stand: Stand): readonly Part<SheetPoint>[] =>
	othersThan(stand, right, start).map(({ name, place, share }) => ({
		note: `toward:${name}-for-${right}`,
		prior: PRIORS.toward * share,
		slip: slip('toward', { wrong: name, right }),
		value: place
	}));

/** Where one wrong part leads, the rest of the step being right; for a mark, only what it may have meant. */
export const laid = <T>(
	stand: Stand,
	parts: readonly Part<T>[],
	lay: (value: T) => SheetPoint | undefined
): readonly Misstep[] =>
	parts.flatMap((part) => {
		const place = lay(part.value);
		if (!place || !mayBeMeant(stand, place)) return [];
		return [{ note: part.note, prior: part.prior, slips: [part.slip], place }];
	});

/** Where two wrong parts lead together: looked for only where a mark is to be explained. */
export const laidTogether = <A, B>(
	stand: Stand,
	first: readonly Part<A>[],
	second: readonly Part<B>[],
	lay: (a: A, b: B) => SheetPoint | undefined
): readonly Misstep[] => {
	if (!stand.placed) return [];
	const found: Misstep[] = [];
	const commonFirst = second.toSorted((a, b) => b.prior - a.prior);
	for (const a of first) {
		const most = a.prior * PAIR;
		for (const b of commonFirst) {
			if (most * b.prior < LEAST_PAIR) break;
			const place = lay(a.value, b.value);
			if (place && mayBeMeant(stand, place))
				found.push({
					...{ note: `${a.note}+${b.note}`, prior: most * b.prior, place },
					slips: [a.slip, b.slip]
				});
		}
	}
	return found;
};

/** Two terms of one rule, both worked wrongly. */
export const twoTerms = (
	formula: Formula,
	parts: readonly Part<Mm>[],
	stand: Stand,
	lay: (length: Mm) => SheetPoint | undefined
): readonly Misstep[] => {
	const right = lengthOf(formula, stand.scope);
	const terms = [...new Set(parts.map(({ term }) => term))].filter((term) => term !== undefined);
	const of = (term: number) => parts.filter((part) => part.term === term);
	return terms.flatMap((one, i) =>
		terms
			.slice(i + 1)
			.flatMap((other) => laidTogether(stand, of(one), of(other), (a, b) => lay(mm(a + b - right))))
	);
};
