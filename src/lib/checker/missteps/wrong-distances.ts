import { isChoice } from '#shared/allowances.ts';
import { MM_PER, mm, type Mm } from '#shared/units.ts';
import type { Body } from '#shared/body.ts';
import type { Taken } from '#shared/speech/en/missteps.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Scope } from '#drafting/formula/value.ts';
import type { Method } from '#drafting/method.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { asWritten, digitSwaps } from './digits.ts';
import { FRACTIONS, fractionOf, fractionWeight, isSameShare } from './fractions.ts';
import { slip, type Slip } from './misstep.ts';
import { kinship } from './kinship.ts';
import { EASE_OF, MEASUREMENT_NEIGHBOURS } from './neighbours.ts';
import { KINSHIP, LOWERED, PRIORS } from './priors.ts';
import { takenAllowance, takenOf } from './taken.ts';
import { replaced, sumOf, termsOf, type Term } from './terms.ts';

/** A distance worked by a wrong rule. */
export interface WrongDistance {
	readonly note: string;
	readonly prior: number;
	readonly terms: readonly Term[];
	/** Made where it is told. */
	readonly slip: () => Slip;
	/** Which of the rule's terms it changes, where it is one alone: another term may be wrong besides. */
	readonly term?: number;
}

/** What wrong distances are made from. */
export interface Working {
	readonly method: Method;
	readonly body: Body;
	readonly scope: Scope;
	/** The other points on the sheet, to which a distance could have been taken. */
	readonly points: readonly string[];
	/** The step that the rule is of, where it is one's. */
	readonly step?: Step;
}

/** An inch read as a centimetre, and the reverse. */
const INCH = MM_PER.in / MM_PER.cm;
/** What a tape slips by when the wrong ten is read. */
const TEN: Mm = mm(100);

type Change = (term: Term) => Term;
const changed = (terms: readonly Term[], which: (term: Term, i: number) => boolean, change: Change) =>
	terms.map((term, i) => (which(term, i) ? change(term) : term));

/** What a term is called in a note where it is not the rule's first: the first needs no name. */
const suffix = ({ leaf }: Term, i: number): string => (i > 0 && 'key' in leaf ? `:${leaf.key}` : '');

const isMeasured = ({ leaf }: Term): boolean => leaf.kind === 'measurement';
const isNamed = ({ leaf }: Term): boolean => leaf.kind === 'measurement' || leaf.kind === 'allowance';
/** What another share may be taken of: also a part of a distance on the sheet, such as half a dart's width. */
const isShared = (term: Term): boolean =>
	isNamed(term) || (term.leaf.kind === 'distance' && Math.abs(term.share) !== 1);

/** What a share is taken of at once: lengths one after the other, or the difference of two. */
const takenTogether = (terms: readonly Term[], method: Method): readonly Taken[] => {
	const of = terms.map(({ leaf }) => takenOf(leaf, method));
	const [one, other, ...more] = of;
	const isDifference = (terms[0]?.share ?? 0) * (terms[1]?.share ?? 0) < 0;
	return one && other && more.length === 0 && isDifference ? [{ kind: 'difference', one, other }] : of;
};

/** Another share for some of the terms that all have the same one. */
const fractionsOf = (
	terms: readonly Term[],
	chosen: readonly number[],
	method: Method,
	weight: number
): WrongDistance[] => {
	const first = terms[chosen[0] ?? 0];
	if (!first) return [];
	const right = fractionOf(first.share);
	const end = chosen.length > 1 ? '' : suffix(first, chosen[0] ?? 0);
	const of = takenTogether(
		chosen.flatMap((i) => terms[i] ?? []),
		method
	);
	const others = FRACTIONS.filter(({ share }) => !isSameShare(share, right.share));
	return others.map((wrong) => ({
		note: `fraction:${wrong.name}-for-${right.name}${end}`,
		prior: PRIORS.fraction * weight * fractionWeight(wrong, right),
		terms: changed(
			terms,
			(_, i) => chosen.includes(i),
			(term) => ({ ...term, share: Math.sign(term.share) * wrong.share })
		),
		slip: () => slip('fraction', { wrong: wrong.name, right: right.name, of }),
		...(chosen.length === 1 && chosen[0] !== undefined ? { term: chosen[0] } : {})
	}));
};

/** Another share of one term, or of all the terms that have the same share. The parts of a difference are never halved apart. */
const wrongFractions = (terms: readonly Term[], { method }: Working): WrongDistance[] => {
	const isOfDifference = ({ share }: Term): boolean =>
		terms.some((other) => isSameShare(other.share, -share));
	const single = terms.flatMap((term, i) => {
		if (!isShared(term) || isOfDifference(term)) return [];
		// What the rule takes whole is lowered already.
		const isLowered = term.leaf.kind === 'allowance' && !isSameShare(Math.abs(term.share), 1);
		return fractionsOf(terms, [i], method, isLowered ? LOWERED.unlikelyFraction : 1);
	});
	const alike = terms.flatMap((term, i) => {
		const same = isSameShare(Math.abs(term.share), Math.abs(terms[0]?.share ?? 0));
		return same && isNamed(term) ? [i] : [];
	});
	return alike.length > 1 ? [...single, ...fractionsOf(terms, alike, method, 1)] : single;
};

/** An allowance left out, added twice, taken off. Alone in a rule it cannot be taken off: that would be the opposite way. */
const wrongAllowances = (terms: readonly Term[], { method }: Working): WrongDistance[] =>
	terms.flatMap((term, i) => {
		const { leaf, share } = term;
		if (leaf.kind !== 'allowance') return [];
		const what = takenAllowance(method, leaf.key);
		const how = share < 0 ? 'takenOff' : 'added';
		const left: WrongDistance = {
			note: `allowance:left-out:${leaf.key}`,
			prior: PRIORS.allowanceLeftOut,
			terms: terms.filter((_, k) => k !== i),
			slip: () => slip('leftOut', { what }),
			term: i
		};
		const twice: WrongDistance = {
			note: `allowance:twice:${leaf.key}`,
			prior: PRIORS.allowanceTwice,
			terms: [...terms, term],
			slip: () => slip('twice', { what, how: terms.length > 1 ? how : 'taken' }),
			term: i
		};
		if (terms.length === 1) return [left, twice];
		const off: WrongDistance = {
			note: `allowance:subtracted:${leaf.key}`,
			prior: PRIORS.allowanceSubtracted,
			terms: replaced(terms, i, { share: -share }),
			slip: () => slip(share < 0 ? 'added' : 'takenOff', { what }),
			term: i
		};
		return [left, twice, off];
	});

/** The terms with another measurement, and its ease in place of the right one's where that makes a difference. */
const withNeighbour = (
	terms: readonly Term[],
	i: number,
	key: MeasurementKey,
	w: Working
): (readonly Term[])[] => {
	const [term, base] = [terms[i], w.body.measurements[key]];
	if (!term || term.leaf.kind !== 'measurement' || base === undefined) return [];
	const [ease, itsEase] = [EASE_OF[term.leaf.key], EASE_OF[key]];
	const swapped = replaced(terms, i, { leaf: { kind: 'measurement', key }, base });
	if (ease === undefined || itsEase === undefined) return [swapped];
	const isEase = ({ leaf }: Term): boolean => leaf.kind === 'allowance' && leaf.key === ease;
	const leaf: Formula = { kind: 'allowance', key: itsEase };
	const both = changed(swapped, isEase, (each) => ({ ...each, leaf, base: w.scope.allowance(itsEase) }));
	return [swapped, both];
};

/** A neighbouring measurement, which the rule does not name anyway. */
const wrongMeasurements = (terms: readonly Term[], working: Working): WrongDistance[] =>
	terms.flatMap(({ leaf }, i) => {
		if (leaf.kind !== 'measurement') return [];
		const named = terms.map((each) => ('key' in each.leaf ? each.leaf.key : ''));
		return (MEASUREMENT_NEIGHBOURS[leaf.key] ?? [])
			.filter(({ key }) => !named.includes(key))
			.flatMap(({ key, how }) =>
				withNeighbour(terms, i, key, working).map((wrong) => ({
					note: `measurement:${key}-for-${leaf.key}`,
					prior: PRIORS.measurement * (how === 'seldom' ? LOWERED.seldom : 1),
					terms: wrong,
					slip: () =>
						slip('instead', {
							wrong: { kind: 'measurement', key },
							right: { kind: 'measurement', key: leaf.key }
						}),
					term: i
				}))
			);
	});

/** The same allowance of the other panel, or one that is called alike. */
const wrongNeighbours = (terms: readonly Term[], { method, scope, step }: Working): WrongDistance[] =>
	terms.flatMap(({ leaf }, i) => {
		if (leaf.kind !== 'allowance') return [];
		const likely = method.allowances.flatMap((each) => {
			const prior = kinship(each.key, leaf.key, method, step);
			return each.key !== leaf.key && !isChoice(each) && prior >= KINSHIP.alike
				? [{ key: each.key, prior }]
				: [];
		});
		return likely.map(({ key, prior }) => ({
			note: `allowance:${key}-for-${leaf.key}`,
			prior,
			terms: replaced(terms, i, { leaf: { kind: 'allowance', key }, base: scope.allowance(key) }),
			slip: () =>
				slip('instead', { wrong: takenAllowance(method, key), right: takenAllowance(method, leaf.key) }),
			term: i
		}));
	});

/** A distance taken to another of the points on the sheet. */
const wrongEnds = (terms: readonly Term[], { scope, points }: Working): WrongDistance[] =>
	terms.flatMap(({ leaf }, i) => {
		if (leaf.kind !== 'distance') return [];
		const others = points.filter((point) => point !== leaf.from && point !== leaf.to);
		return others.map((point) => {
			const [from, to] = [scope.point(leaf.from), scope.point(point)];
			const base = mm(Math.hypot(to.x - from.x, to.y - from.y));
			return {
				note: `distance:${point}-for-${leaf.to}`,
				prior: PRIORS.distance / others.length,
				terms: replaced(terms, i, { leaf: { ...leaf, to: point }, base }),
				slip: () => slip('farEnd', { from: leaf.from, wrong: point, right: leaf.to }),
				term: i
			};
		});
	});

/** One kind of slip that turns a length into another: in the result, and in each measurement that was read. */
interface Misreading {
	readonly note: string;
	readonly prior: number;
	/** Whether every part of a sum is changed in the same way, so that it can still be seen in a typed sum. */
	readonly inParts: boolean;
	/** What the length becomes; none, one or several. */
	readonly change: (length: Mm) => readonly Mm[];
	/** What was done to the length. */
	readonly key: 'inInches' | 'inCentimetres' | 'decimal' | 'tape' | 'digits';
}

const times =
	(factor: number) =>
	(length: Mm): readonly Mm[] => [mm(length * factor)];

const slipsOf = ({ body }: Working): readonly Misreading[] => {
	const inInches = body.unit === 'in';
	return [
		{
			note: 'unit:inches-for-centimetres',
			prior: PRIORS.unit * (inInches ? LOWERED.otherSide : 1),
			inParts: true,
			change: times(INCH),
			key: 'inInches'
		},
		{
			note: 'unit:centimetres-for-inches',
			prior: PRIORS.unit * (inInches ? 1 : LOWERED.otherSide),
			inParts: true,
			change: times(1 / INCH),
			key: 'inCentimetres'
		},
		{
			note: 'decimal',
			prior: PRIORS.decimal,
			inParts: true,
			change: (length) => [mm(length * 10), mm(length / 10)],
			key: 'decimal'
		},
		{
			note: 'tape:10cm',
			prior: PRIORS.tape,
			inParts: false,
			change: (length) => [mm(length + TEN), mm(length - TEN)].filter((each) => each > 0),
			key: 'tape'
		},
		{
			note: 'digits:swapped',
			prior: PRIORS.digits,
			inParts: false,
			change: (length) => digitSwaps(length, body.unit),
			key: 'digits'
		}
	];
};

const wrongReadings = (terms: readonly Term[], working: Working): WrongDistance[] => {
	const whole = sumOf(terms);
	const result: Formula = { kind: 'number', value: whole };
	const shown = (length: Mm, key: Misreading['key']): Mm =>
		key === 'digits' ? asWritten(length, working.body.unit) : length;
	return slipsOf(working).flatMap(({ note, prior, inParts, change, key }) => [
		...(whole > 0 ? change(whole) : []).map((length) => ({
			note,
			prior,
			terms: inParts
				? terms.map((term) => ({ ...term, base: mm((term.base * length) / whole) }))
				: [{ leaf: result, base: length, share: 1 }],
			slip: () => slip(key, { what: { kind: 'distance' }, asRead: [shown(whole, key), length] })
		})),
		...terms.flatMap((term, i) =>
			isMeasured(term)
				? change(term.base).map((base) => ({
						note,
						prior: prior * LOWERED.inMeasurement,
						terms: replaced(terms, i, { base }),
						slip: () =>
							slip(key, { what: takenOf(term.leaf, working.method), asRead: [shown(term.base, key), base] }),
						term: i
					}))
				: []
		)
	]);
};

/** Every plausible wrong way of working a length: the terms of each, and what was done. */
export const wrongDistances = (formula: Formula, working: Working): readonly WrongDistance[] => {
	const terms = termsOf(formula, working.scope);
	return [
		wrongFractions,
		wrongAllowances,
		wrongMeasurements,
		wrongNeighbours,
		wrongEnds,
		wrongReadings
	].flatMap((kind) => kind(terms, working));
};
