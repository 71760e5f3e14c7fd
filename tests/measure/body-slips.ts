import { surveyRows, type Sample, type SurveyRow } from '../reference/survey-bodies.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { judge, type Doubt, type Offer } from '#shared/plausible/doubts.ts';
import { together } from '#shared/plausible/people.ts';
import { STAND_INS, SURVEYED_KEYS, type SurveyedKey } from '#shared/plausible/stand-ins.ts';
import { mm, type Mm } from '#shared/units.ts';

/** A real body in millimetres, by what stands in for its measurements, and whose sample it is of. */
export interface SurveyBody {
	readonly of: Sample;
	readonly measurements: Readonly<Record<SurveyedKey, Mm>>;
}

/** A tape is read to a millimetre. */
const read = (cm: number): Mm => mm(Math.round(cm * 10));

const measured = (row: SurveyRow): SurveyBody['measurements'] =>
	Object.fromEntries(
		SURVEYED_KEYS.map((key) => {
			const { columns, more } = STAND_INS[key];
			const taken = Object.entries(columns).map(([column, part]) => part * Number(row[column]));
			return [key, read(taken.reduce((sum, each) => sum + each, more))];
		})
	) as Record<SurveyedKey, Mm>;

/** The 300 women and 300 men of shared/survey, in the order of the files. */
export const surveyBodies = (): readonly SurveyBody[] =>
	(['women', 'men'] as const).flatMap((of) =>
		surveyRows(of).map((row) => ({ of, measurements: measured(row) }))
	);

type Numbers = Readonly<Partial<Record<SurveyedKey, Mm>>>;

/** A body with one slip in it, the measurements that it is at, and what was meant. */
export interface Injected {
	readonly numbers: Numbers;
	readonly at: readonly SurveyedKey[];
	/** Whether what is offered is the slip. */
	readonly isIt: (doubt: Doubt, offer: Offer) => boolean;
}

/** Two of the first digits changed about as somebody writes them down, a nought in front left off; none where they are alike. */
const digitsChanged = (length: Mm): Mm | undefined => {
	const [tens, ones, ...rest] = Array.from((length / 10).toFixed(1));
	const changed = read(Number([ones, tens, ...rest].join('')));
	return ones === '.' || changed === length ? undefined : changed;
};

const GIRTHS: ReadonlySet<SurveyedKey> = new Set([
	'bust',
	'waist',
	'hip',
	'neck',
	'upperBust',
	'underBust',
	'upperArm',
	'wrist'
]);
const NEAR = 6;

type Change = (length: Mm, key: SurveyedKey, body: Numbers) => number | undefined;
const girth =
	(times: number): Change =>
	(length, key) =>
		GIRTHS.has(key) ? length * times : undefined;

/** Slips of one number, in the words: what is written instead of the right number; undefined where there is no such slip. */
const OF_ONE: Readonly<Record<string, Change>> = {
	'10 cm less': (length) => length - 100,
	'10 cm more': (length) => length + 100,
	'digits swapped': digitsChanged,
	'inches for cm': (length) => length / 2.54,
	'half a girth': girth(0.5),
	'twice a girth': girth(2),
	'decimal point': (length) => length / 10,
	'hundred left off': (length) => (length > 1000 ? length - 1000 : undefined),
	'waist for hip': (_, key, { waist }) => (key === 'hip' ? waist : undefined)
};

export const KINDS = [...Object.keys(OF_ONE), 'two fields swapped'];

const swaps = (body: Numbers, keys: readonly SurveyedKey[]): readonly Injected[] =>
	keys.flatMap((a, i) =>
		keys.slice(i + 1).flatMap((b): readonly Injected[] => {
			const [first, second] = [body[a], body[b]];
			if (first === undefined || second === undefined || first === second) return [];
			return [
				{
					numbers: { ...body, [a]: second, [b]: first },
					at: [a, b],
					isIt: ({ of }, { slip, other }) => slip === 'swapped' && other === (of === a ? b : a)
				}
			];
		})
	);

/** A body with one slip of a kind in it, at each measurement in turn, or each two. */
export const injected = (kind: string, body: Numbers, keys: readonly SurveyedKey[]): readonly Injected[] => {
	const change = OF_ONE[kind];
	if (!change) return swaps(body, keys);
	return keys.flatMap((key): readonly Injected[] => {
		const right = body[key];
		const wrong = right === undefined ? undefined : change(right, key, body);
		// Nobody writes down a length of 1 cm, and no field takes it.
		if (right === undefined || wrong === undefined || wrong < 10) return [];
		const isIt: Injected['isIt'] = (_, { slip, value, other }) =>
			kind === 'waist for hip'
				? slip === 'instead' && other === 'waist'
				: value !== undefined && Math.abs(value - right) < NEAR;
		return [{ numbers: { ...body, [key]: read(wrong / 10) }, at: [key], isIt }];
	});
};

export interface Tally {
	readonly tried: number;
	readonly unseen: number;
	readonly asked: number;
	readonly field: number;
	readonly offered: number;
}

/** How far a number lies from what all others let expect, in conditional standard deviations of its own survey. */
const strayOf = (of: Sample, numbers: Numbers, keys: readonly SurveyedKey[]) => {
	const { mean, precision } = together(of, keys);
	return (key: SurveyedKey): number => {
		const i = keys.indexOf(key);
		const pull = keys.reduce(
			(sum, each, j) => sum + (precision[i]?.[j] ?? NaN) * ((numbers[each] ?? NaN) - (mean[j] ?? NaN)),
			0
		);
		return Math.abs(pull) / Math.sqrt(precision[i]?.[i] ?? NaN);
	};
};

const outcome = (
	{ of }: SurveyBody,
	keys: readonly SurveyedKey[],
	{ numbers, at, isIt }: Injected
): Tally => {
	const stray = strayOf(of, numbers, keys);
	if (Math.max(...at.map(stray)) <= 3) return { tried: 1, unseen: 1, asked: 0, field: 0, offered: 0 };
	const { doubts } = judge({ measurements: numbers }, 'cm');
	const [first] = doubts;
	const field = first && at.includes(first.of);
	const offered = field && first.offers.slice(0, 2).some((offer) => isIt(first, offer));
	return { tried: 1, unseen: 0, asked: first ? 1 : 0, field: field ? 1 : 0, offered: offered ? 1 : 0 };
};

const NONE: Tally = { tried: 0, unseen: 0, asked: 0, field: 0, offered: 0 };
const added = (a: Tally, b: Tally): Tally => ({
	tried: a.tried + b.tried,
	unseen: a.unseen + b.unseen,
	asked: a.asked + b.asked,
	field: a.field + b.field,
	offered: a.offered + b.offered
});

const only = (measurements: Numbers, keys: readonly MeasurementKey[]): Numbers =>
	Object.fromEntries(Object.entries(measurements).filter(([key]) => keys.some((each) => each === key)));

/** How many bodies are asked about as they are, and what becomes of each kind of slip. */
export const tallied = (
	bodies: readonly SurveyBody[],
	keys: readonly SurveyedKey[],
	kinds: readonly string[],
	slips: typeof injected,
	/** Only every so manyth of them, of each body others. */
	every: number
): { readonly falseAlarms: number; readonly byKind: ReadonlyMap<string, Tally> } => {
	const own = bodies.map((body) => ({ ...body, numbers: only(body.measurements, keys) }));
	return {
		falseAlarms: own.filter(({ numbers }) => judge({ measurements: numbers }, 'cm').doubts.length > 0).length,
		byKind: new Map(
			kinds.map((kind) => [
				kind,
				own
					.flatMap((body, at) =>
						slips(kind, body.numbers, keys)
							.filter((_, i) => (i + at) % every === 0)
							.map((each) => outcome(body, keys, each))
					)
					.reduce(added, NONE)
			])
		)
	};
};
