import type { MeasurementKey } from '../../measurements.ts';
import { mm, type Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** Why a body cannot be drafted, and what to look at before cutting. */
export const drafts = (v: Voice) => ({
	/** A condition that a body breaks, with what was measured. */
	broken: ({
		because,
		measured,
		differs
	}: {
		because: string;
		measured: Mm | undefined;
		differs: 'too-much' | 'too-little' | undefined;
	}) => {
		if (measured === undefined) return because;
		const long = v.length(differs ? mm(Math.abs(measured)) : measured);
		return differs
			? `${because} (here ${long} too ${differs === 'too-much' ? 'much' : 'little'})`
			: `${because} (here it is ${long})`;
	},
	disagree: ({ odds, because }: { odds: readonly Noun[]; because: string }) =>
		`${v.list(odds.map(the))} disagree: ${because}; measure both again`,
	cannot: ({ because }: { because: string }) => `this body cannot be drafted: ${because}`,
	warning: ({ odds, because }: { odds: readonly Noun[]; because: string }) =>
		`${v.list(odds.map(the))}: ${because}`,
	missing: ({ key, body }: { key: MeasurementKey; body: string }) =>
		`${the(measurementNoun(key))} of ${body} is missing`,

	// Why a step cannot be worked.
	samePlace: ({ name, from, toward }: { name: string; from: string; toward: string }) =>
		`${name} has no direction: ${from} and ${toward} are the same place`,
	noWay: ({ name }: { name: string }) => `${name} has no direction: its line has no length`,
	beyondEnd: ({ name, line }: { name: string; line: string }) =>
		`${name} would lie beyond the end of ${line}`,
	noRadius: ({ name, about, from }: { name: string; about: string; from: string }) =>
		`${name} has no radius: ${about} and ${from} are the same place`,
	runsBack: ({ noun }: { readonly noun: Noun }) =>
		`${the(noun)} would run back on itself, since it lies further off than the line beside it bends`,
	notJoined: ({ name }: { name: string }) => `the lines of ${name} do not join`,
	doesNotCross: ({ name }: { name: string }) => `${name} cannot be placed: its two lines do not cross there`,
	noFold: ({ name }: { name: string }) => `${name} cannot be mirrored: its fold has no length`,
	nothingLeft: ({ name, of }: { name: string; of: string }) => `nothing is left of ${of} for ${name}`,
	doesNotReach: ({ name, from }: { name: string; from: string }) =>
		`the length swung from ${from} does not reach the level of ${name}`,
	cannotTurn: ({ name, move, about }: { name: string; move: string; about: string }) =>
		`${name} cannot be reached by turning ${move} about ${about}`,
	noPlace: ({ name }: { name: string }) => `no place of ${name} makes the curve as long as it must be`,
	notFinite: ({ name }: { name: string }) =>
		`the rule of ${name} divides by nothing, or comes to more than any draft measures`
});
