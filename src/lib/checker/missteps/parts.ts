import { mm, type Mm } from '#shared/units.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import type { Course } from './courses.ts';
import { slip, type Misstep, type Part, type Slip } from './misstep.ts';
import { ALIKE, LEAST_PAIR, PAIR, PRIORS, STRAY } from './priors.ts';
import { othersThan, type Stand } from './stand.ts';
import { sumOf } from './terms.ts';
import { wideDistances } from './wide-distances.ts';
import { wrongDistances } from './wrong-distances.ts';

/** A place that a mark put at `placed` may have meant; without one, any. */
export const mayBeMeant = ({ placed }: Stand, place: SheetPoint): boolean =>
	!placed || (Math.abs(place.x - placed.x) <= STRAY && Math.abs(place.y - placed.y) <= STRAY);

/**
 * Every wrong way of working a length; the rare ones only where a mark is to be explained. Those that are looked at on `course` alone, or
 * together with `others`, are not made where they lead elsewhere and are too rare for a pair.
 */
export const lengthParts = (
	formula: Formula,
	stand: Stand,
	course?: Course,
	...others: readonly Part<unknown>[]
): readonly Part<Mm>[] => {
	const points = stand.earlier.map(({ name }) => name);
	const common = wrongDistances(formula, { ...stand, points }).map(
		({ note, prior, terms, slip, term }): Part<Mm> => ({ note, prior, slip, term, value: sumOf(terms) })
	);
	if (!stand.placed) return common;
	const commonest = Math.max(0, ...others.map(({ prior }) => prior));
	const counts = (prior: number, length: number, term?: number): boolean => {
		// Another term of the same rule may be wrong as well.
		const beside = term === undefined ? commonest : Math.max(PRIORS.fraction, commonest);
		return !course || PAIR * prior * beside >= LEAST_PAIR || course.near(length);
	};
	return [...common, ...wideDistances(formula, stand, counts)];
};

/** G2 is read for G3 more often than any other is. */
const alike = (name: string, right: string): number => (name.charAt(0) === right.charAt(0) ? ALIKE : 1);

/** Every other of the points on the sheet, begun from by mistake. */
export const startParts = (
	right: string,
	stand: Stand,
	part = 1,
	said = (wrong: string): Slip => slip('start', { wrong, right })
): readonly Part<SheetPoint>[] =>
	othersThan(stand, right).map(({ name, place, share }) => ({
		note: `start:${name}-for-${right}`,
		prior: PRIORS.start * part * share * alike(name, right),
		slip: () => said(name),
		value: place
	}));

/** Every other of the points on the sheet, gone toward by mistake. */
export const aimParts = (
	right: string,
	start: string,
	stand: Stand,
	said = (wrong: string): Slip => slip('toward', { wrong, right })
): readonly Part<SheetPoint>[] =>
	othersThan(stand, right, start).map(({ name, place, share }) => ({
		note: `toward:${name}-for-${right}`,
		prior: PRIORS.toward * share * alike(name, right),
		slip: () => said(name),
		value: place
	}));

/** Where one wrong part leads, the rest of the step being right; for a mark, only what it may have meant. */
export const laid = <T>(
	stand: Stand,
	parts: readonly Part<T>[],
	lay: (value: T) => SheetPoint | undefined
): readonly Misstep[] => {
	const found: Misstep[] = [];
	for (const { note, prior, slip, value } of parts) {
		const place = lay(value);
		if (place && mayBeMeant(stand, place)) found.push({ note, prior, slips: [slip()], place });
	}
	return found;
};

/** Where wrong lengths lead on the right course. */
export const laidOn = (
	stand: Stand,
	lengths: readonly Part<Mm>[],
	{ at, near }: Course
): readonly Misstep[] => laid(stand, lengths, (length) => (near(length) ? at(length) : undefined));

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
					slips: [a.slip(), b.slip()]
				});
		}
	}
	return found;
};

/** A wrong length on a wrong course. */
export const laidOnOthers = (
	stand: Stand,
	lengths: readonly Part<Mm>[],
	courses: readonly Part<Course>[]
): readonly Misstep[] =>
	laidTogether(stand, lengths, courses, (length, { at, near }) => (near(length) ? at(length) : undefined));

/** Two terms of one rule, both worked wrongly. */
export const twoTerms = (
	formula: Formula,
	parts: readonly Part<Mm>[],
	stand: Stand,
	{ at, near }: Course
): readonly Misstep[] => {
	const right = lengthOf(formula, stand.scope);
	const terms = [...new Set(parts.map(({ term }) => term))].filter((term) => term !== undefined);
	const of = (term: number) => parts.filter((part) => part.term === term);
	const lay = (a: Mm, b: Mm): SheetPoint | undefined =>
		near(a + b - right) ? at(mm(a + b - right)) : undefined;
	return terms.flatMap((one, i) =>
		terms.slice(i + 1).flatMap((other) => laidTogether(stand, of(one), of(other), lay))
	);
};
