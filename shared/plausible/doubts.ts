import type { Body, Measurements } from '../body.ts';
import type { MeasurementKey } from '../measurements.ts';
import type { Slip } from '../speech/en/doubts.ts';
import { mm, type Mm, type Unit } from '../units.ts';
import { distance, expected, surveyedOf, type Expected } from './expect.ts';
import { alone, PEOPLE, type People } from './people.ts';
import type { SurveyedKey } from './stand-ins.ts';
import { causesOf, likelihood, weightAt, type Cause, type Written } from './weigh.ts';

/**
 * From a small child to the largest sizes that are sold: a measurement outside of these is far likelier a slip than a
 * body. It is asked about, and never refused. Common practice, no source.
 */
const PLAIN: Readonly<Partial<Record<MeasurementKey, readonly [Mm, Mm]>>> = {
	bust: [mm(450), mm(1900)],
	waist: [mm(400), mm(1900)],
	hip: [mm(450), mm(2000)],
	neck: [mm(200), mm(550)],
	shoulderWidth: [mm(180), mm(650)],
	backLength: [mm(180), mm(600)],
	waistToHip: [mm(70), mm(400)],
	frontLength: [mm(180), mm(650)],
	bustHeight: [mm(80), mm(500)],
	bustSpan: [mm(70), mm(350)]
};

/** What may have happened to a number, and what would put it right. */
export interface Offer {
	readonly slip: Slip;
	/** What the number would be; unknown where something else was measured in its place. */
	readonly value?: Mm;
	/** The measurement that it was mixed up with. */
	readonly other?: SurveyedKey;
}

/** A measurement that does not go with the others, or that hardly anybody has: which one to take again. */
export interface Doubt {
	readonly of: SurveyedKey;
	/** Written into each other's fields; beyond what hardly anybody has; or beyond what the other measurements let expect. */
	readonly kind: 'swapped' | 'plain' | 'fine';
	/** The other one of two that seem to be swapped. */
	readonly other?: SurveyedKey;
	readonly value: Mm;
	/** From nearly everybody's least to nearly everybody's greatest. */
	readonly plain?: readonly [Mm, Mm];
	/** From the measurements that are not in doubt. */
	readonly expected?: Expected;
	/** At most two, the likeliest first; none where no slip explains it. */
	readonly offers: readonly Offer[];
}

/** What is to be said of a body's measurements together. It advises: whatever is said, any body may be so. */
export interface Judgement {
	/** The survey that the body is likelier to be of, or the chosen one. */
	readonly people: People;
	/** All numbers at once, as if the tape had been read in the other unit. */
	readonly unit?: 'inches' | 'centimetres';
	readonly doubts: readonly Doubt[];
	/** The measurements that were taken and are not in doubt. */
	readonly trusted: Measurements;
	/** Whether the survey has bodies such as this one; of others only gross slips can be seen. */
	readonly known: boolean;
	/** How far the trusted measurements lie from the survey's middle, squared, and of how many. */
	readonly distance: number;
	readonly count: number;
}

/**
 * How much likelier a slip must be than none before it is asked about, for each measurement that might have slipped; and
 * never less than for a draft's ten. Tried on half of the sample (`npm run measure:bodies`): fewer are then asked about in vain than 4 bodies in 100.
 */
const ASKED_ABOUT = 0.9;
const TEN = 10;
/** No more are asked about at once: what is wrong with so many is not a slip. */
const MOST = 4;
const OFFERED = 2;
/** Two numbers as near as this are one to whoever takes the tape again. */
const ALIKE = mm(3);
/** What is offered lies within so many standard deviations of what is expected. */
const FITS = 4;
/** A measurement so many standard deviations from the survey's mean is one that it hardly has. */
const FAR = 3;
/** With so many of them, or such a share of all, the survey does not know such bodies. */
const MANY_FAR = 2;
const SHARE_FAR = 0.25;
/** So many times as far as its number of measurements lets expect, squared: beyond nearly all of the survey. */
const FAR_OUT = 4;
/** With fewer, a unit is not told from a body. */
const ENOUGH = 3;
const INCH = 2.54;

const isPlain = (of: MeasurementKey, value: Mm): boolean => {
	const [least, most] = PLAIN[of] ?? [-Infinity, Infinity];
	return value >= least && value <= most;
};

const writtenOf = (measurements: Measurements): readonly Written[] =>
	surveyedOf(measurements).map((key) => ({ key, value: measurements[key] ?? mm(NaN) }));

const omit = (measurements: Measurements, keys: readonly MeasurementKey[]): Measurements =>
	Object.fromEntries(Object.entries(measurements).filter(([key]) => !keys.some((each) => each === key)));

/** The survey that measurements are likelier to be of: the women's, whom the course is drawn for, where they say nothing. */
const likelier = (measurements: Measurements): People => {
	const written = writtenOf(measurements);
	return likelihood('men', written) > likelihood('women', written) ? 'men' : 'women';
};

/** The unit that all numbers were read in, where that is not the one that they are said to be in. */
const otherUnit = (surveys: readonly People[], written: readonly Written[]): Judgement['unit'] => {
	if (written.length < ENOUGH) return undefined;
	const best = (stretch: number): number => {
		const all = written.map(({ key, value }) => ({ key, value: mm(value * stretch) }));
		return Math.max(...surveys.map((each) => likelihood(each, all))) + written.length * Math.log(stretch);
	};
	const [asIs, inches, centimetres] = [best(1), best(INCH), best(1 / INCH)];
	const least = asIs + Math.log(ASKED_ABOUT * TEN);
	// A girth of a grown body in inches is a child's in no measurement at all: several must be beyond everybody's.
	const beyond = written.filter(({ key, value }) => !isPlain(key, value)).length;
	if (beyond < ENOUGH || Math.max(inches, centimetres) < least) return undefined;
	return inches > centimetres ? 'inches' : 'centimetres';
};

/** What is offered for one number: the likeliest slips, no two that come to the same, none that would not fit either. */
const offersOf = (here: readonly Cause[], of: SurveyedKey, fit: Expected | undefined): readonly Offer[] => {
	const offers: Offer[] = [];
	for (const { slip, value, other } of [...here].sort((a, b) => b.weight - a.weight)) {
		if (slip === undefined || offers.length === OFFERED) continue;
		const fits = (right: Mm): boolean =>
			isPlain(of, right) && (!fit || Math.abs(right - fit.value) < FITS * fit.sd);
		if (slip !== 'swapped' && value !== undefined && !fits(value)) continue;
		const same = offers.some((each) => Math.abs((each.value ?? NaN) - (value ?? NaN)) < ALIKE);
		if (same && slip !== 'swapped') continue;
		offers.push({ slip, ...(value !== undefined && { value }), ...(other && { other }) });
	}
	return offers;
};

/** The one number that is asked about next, and all that may have happened to it; undefined where none is. */
const nextOf = (
	written: readonly Written[],
	causes: readonly Cause[]
): { readonly at: number; readonly here: readonly Cause[]; readonly kind: Doubt['kind'] } | undefined => {
	const weights = written.map((_, i) => weightAt(causes, i));
	const heaviest = (places: readonly number[]): number | undefined =>
		[...places].sort((a, b) => (weights[b] ?? 0) - (weights[a] ?? 0))[0];
	const least = Math.log(ASKED_ABOUT * Math.max(written.length, TEN));
	const best = heaviest(written.map((_, i) => i));
	if (best === undefined) return undefined;
	const at = (place: number) => causes.filter((each) => each.at === place);
	const first = [...at(best)].sort((a, b) => b.weight - a.weight)[0];
	const isAsked = (weights[best] ?? 0) > least;
	if (isAsked && first?.slip === 'swapped') return { at: best, here: at(best), kind: 'swapped' };
	const extreme = heaviest(written.flatMap(({ key, value }, i) => (isPlain(key, value) ? [] : [i])));
	if (extreme !== undefined) return { at: extreme, here: at(extreme), kind: 'plain' };
	return isAsked ? { at: best, here: at(best), kind: 'fine' } : undefined;
};

/** Whether the survey has bodies such as this: neither several measurements nor all together lie beyond nearly everybody's. */
const isKnown = (people: People, written: readonly Written[], squared: number): boolean => {
	const far = written.filter(({ key, value }) => {
		const { mean, sd } = alone(people, key);
		return Math.abs(value - mean) > FAR * sd;
	}).length;
	return (
		far <= Math.max(MANY_FAR, SHARE_FAR * written.length) &&
		squared <= FAR_OUT * Math.max(written.length, ENOUGH)
	);
};

const ORDER: readonly Doubt['kind'][] = ['swapped', 'plain', 'fine'];

/** Asks about one number after the other, each left out before the next: one slip makes others look wrong as well. */
const doubtsIn = (measurements: Measurements, surveys: readonly People[], unit: Unit): readonly Doubt[] => {
	const doubts: Doubt[] = [];
	let left = measurements;
	while (doubts.length < MOST) {
		const written = writtenOf(left);
		const causes = causesOf(surveys, written, unit);
		const next = nextOf(written, causes);
		const number = next && written[next.at];
		if (!number) break;
		const { key: of, value } = number;
		const rest = omit(left, [of]);
		const sure = omit(
			rest,
			writtenOf(rest).flatMap(({ key, value: each }) => (isPlain(key, each) ? [] : [key]))
		);
		const fit = expected(surveys[0] ?? likelier(sure), of, sure);
		const offers = offersOf(next.here, of, fit);
		const other = next.kind === 'swapped' ? offers.find(({ slip }) => slip === 'swapped')?.other : undefined;
		doubts.push({
			of,
			kind: next.kind,
			...(other && { other }),
			value,
			...(isPlain(of, value) ? {} : { plain: PLAIN[of] }),
			...(fit && { expected: fit }),
			offers
		});
		left = omit(left, [of, ...(other ? [other] : [])]);
	}
	return doubts.sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
};

const judged = (
	{ measurements, supposed }: Pick<Body, 'measurements' | 'supposed'>,
	unit: Unit,
	choice: People | undefined
): Judgement => {
	const taken = omit(measurements, Object.keys(supposed ?? {}) as MeasurementKey[]);
	const surveys = choice ? [choice] : PEOPLE;
	const slipped = otherUnit(surveys, writtenOf(taken));
	const doubts = slipped ? [] : doubtsIn(taken, surveys, unit);
	const trusted = omit(
		taken,
		doubts.flatMap(({ of, other }) => (other ? [of, other] : [of]))
	);
	const people = choice ?? likelier(trusted);
	const written = writtenOf(trusted);
	const squared = distance(people, trusted);
	return {
		people,
		...(slipped && { unit: slipped }),
		doubts,
		trusted,
		known: isKnown(people, written, squared),
		distance: squared,
		count: written.length
	};
};

/** What was said of a body: a page asks at every field. */
const SAID = new WeakMap<Measurements, Map<string, Judgement>>();

/**
 * What is to be said of a body's measurements. Those that no tape took are left out, since they were made of the others.
 * `unit` is the one they were written in; `choice` whose survey they are compared with, where somebody has chosen.
 */
export const judge = (
	body: Pick<Body, 'measurements' | 'supposed'>,
	unit: Unit,
	choice?: People
): Judgement => {
	const said = SAID.get(body.measurements) ?? new Map<string, Judgement>();
	SAID.set(body.measurements, said);
	const name = `${unit} ${choice ?? ''}`;
	const known = said.get(name) ?? judged(body, unit, choice);
	said.set(name, known);
	return known;
};

/** What may keep a body from being drafted: numbers that hardly anybody has, or that stand in each other's fields. */
export const grossDoubts = (body: Body, unit: Unit): readonly Doubt[] =>
	judge(body, unit).doubts.filter(({ kind }) => kind !== 'fine');
