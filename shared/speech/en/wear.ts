import type { RunName } from '../../garment.ts';
import type { MeasurementKey } from '../../measurements.ts';
import { mm, type Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the, The } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** A number of a check and its bounds: millimetres, degrees, or a plain number. */
export interface WearNumber {
	readonly kind: 'length' | 'angle' | 'ratio';
	readonly value: number;
}
export interface WearBounds {
	readonly kind: WearNumber['kind'];
	readonly least: number | undefined;
	readonly most: number | undefined;
}
/** An allowance that would be another length. */
export interface SaidChange {
	readonly noun: Noun;
	readonly from: Mm;
	readonly to: Mm;
}
/** What a change would spoil. */
export type SaidSpoilt =
	| { readonly kind: 'wear' | 'number' | 'seam' | 'warning' | 'refusal'; readonly label: string }
	| { readonly kind: 'run'; readonly run: RunName };
/** Allowances as far as they go, and the two measurements that disagree where that is known. */
interface TooFar {
	readonly changes: readonly SaidChange[];
	readonly odds: readonly [MeasurementKey, MeasurementKey] | undefined;
}
interface Counted {
	readonly open: number;
	readonly all: number;
}

/** Whether a finished garment can be worn, and what would put it right. */
export const wear = (v: Voice) => {
	const number = ({ kind, value }: WearNumber): string => {
		if (kind === 'length') return v.length(mm(value));
		return kind === 'angle' ? `${v.number(value, 1)}°` : v.fixed(value, 2);
	};
	const bounds = ({ kind, least, most }: WearBounds): string => {
		const [low, high] = [least, most].map((value) => value !== undefined && number({ kind, value }));
		if (low && high) return `from ${low} to ${high}`;
		return low ? `at least ${low}` : `at most ${high || ''}`;
	};
	const changed = (changes: readonly SaidChange[]): string =>
		v.list(
			changes.map(({ noun, from, to }) => `${the(noun)} at ${v.length(to)} instead of ${v.length(from)}`)
		);
	const spoils = (spoilt: SaidSpoilt): string => {
		if (spoilt.kind === 'run')
			return 'label' in spoilt.run ? spoilt.run.label : `${spoilt.run.piece}: ${spoilt.run.edge}`;
		return spoilt.label;
	};
	return {
		title: 'Can it be worn?',
		wear: 'Wear',
		seams: 'Seams',
		check: 'Check',
		found: 'Found',
		wanted: 'Should be',
		state: 'Stands',
		states: ({ state }: { readonly state: 'holds' | 'fails' | 'not-known' }) =>
			({ holds: 'holds', fails: 'does not hold', 'not-known': 'not known' })[state],
		number,
		bounds,
		/** What is written where a check fails. */
		mark: ({ label, ...of }: WearNumber & { label: string }) => `${label}: ${number(of)}`,
		allHold: ({ all }: { readonly all: number }) =>
			`${v.plural(all, { one: 'The one check holds', other: `All ${all} checks hold` })}.`,
		someFail: ({ open, all }: Counted) =>
			`${open} of ${all} ${v.plural(open, { one: 'checks does not hold', other: 'checks do not hold' })}.`,
		unknown: ({ count }: { readonly count: number }) =>
			v.plural(count, { one: 'One more is not known.', other: `${count} more are not known.` }),
		allKnown: ({ all }: { readonly all: number }) =>
			v.plural(all, { one: 'The check', other: `All ${all} checks` }),
		fails: ({
			label,
			because,
			...of
		}: WearNumber & WearBounds & { label: string; because: string | undefined }) =>
			`${label} is ${number(of)}; it should be ${bounds(of)}.${because === undefined ? '' : ` ${because}.`}`,
		notKnown: ({ needs }: { readonly needs: readonly MeasurementKey[] }) =>
			`not known: measure ${v.list(needs.map((key) => the(measurementNoun(key))))}`,
		looking: 'Looking for what would put it right …',
		cure: ({ changes }: { readonly changes: readonly SaidChange[] }) => {
			const [one, ...more] = changes;
			const said = `${one ? `${The(one.noun)} at ${v.length(one.to)} instead of ${v.length(one.from)}` : ''}${
				more.length > 0 ? `, with ${changed(more)},` : ''
			}`;
			return `${said} would put it right.`;
		},
		doIt: ({ changes }: { readonly changes: readonly SaidChange[] }) =>
			`Change to ${v.list(changes.map(({ to }) => v.length(to)))}`,
		doItLabel: ({ changes }: { readonly changes: readonly SaidChange[] }) => `Change: ${changed(changes)}`,
		done: ({ changes }: { readonly changes: readonly SaidChange[] }) => `Changed: ${changed(changes)}.`,
		odds: ({
			label,
			changes,
			spoilt
		}: {
			label: string;
			changes: readonly SaidChange[];
			spoilt: SaidSpoilt;
		}) =>
			`Two things are at odds: with ${changed(changes)} this would hold (${label}), but no longer this: ${spoils(spoilt)}.`,
		tooFar: ({ changes, odds }: TooFar) => {
			const [one, other] = (odds ?? []).map(measurementNoun);
			const both = one && other ? ` ${The(one)} and ${the(other)} disagree: measure both again.` : '';
			return `${v.list(changes.map(({ noun, to }) => `${The(noun)} goes no further than ${v.length(to)}`))}, and that is not enough.${both}`;
		},
		none: 'No number that you choose changes this. Look at the measurements again, and try the garment on in cheap cloth.',
		within: ({ label, value, ...of }: WearNumber & WearBounds & { readonly label: string }) =>
			`${label}: ${number({ value, ...of })} (${bounds(of)})`
	};
};
