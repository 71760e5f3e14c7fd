import type { Compass } from '../../method.ts';
import type { MeasurementKey } from '../../measurements.ts';
import { did, misdoneOf, type Misdone } from '../misdone.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the } from './grammar.ts';
import { allowanceNoun, measurementNoun, partOf } from './nouns.ts';

/** A share of a length, by its name in notes; `part` is one that has no name. */
export type Share = 'whole' | 'half' | 'third' | 'quarter' | 'sixth' | 'part';

/** A line, and the draft that it is of where that is another one. */
export interface Line {
	readonly noun: Noun;
	readonly of?: Noun;
}

/** A length that a rule, or a wrong rule, takes. */
export type Taken =
	| { readonly kind: 'measurement'; readonly key: MeasurementKey }
	| { readonly kind: 'allowance'; readonly key: string; readonly noun?: Noun | undefined }
	| { readonly kind: 'apart'; readonly from: string; readonly to: string }
	| { readonly kind: 'line'; readonly line: Line }
	| { readonly kind: 'distance' }
	| { readonly kind: 'length' };

const OF: Readonly<Record<Share, string>> = {
	whole: 'the whole of',
	half: 'half of',
	third: 'a third of',
	quarter: 'a quarter of',
	sixth: 'a sixth of',
	part: 'a part of'
};
const ALONE: Readonly<Record<Share, string>> = {
	whole: 'the whole',
	half: 'a half',
	third: 'a third',
	quarter: 'a quarter',
	sixth: 'a sixth',
	part: 'another part'
};
const WAYS: Readonly<Record<Compass, string>> = {
	up: 'straight up',
	down: 'straight down',
	across: 'straight across',
	in: 'straight in toward the centre'
};

const lineWords = ({ noun, of }: Line): string => the(of ? partOf(noun, of) : noun);

const nounOf = (taken: Taken): Noun => {
	switch (taken.kind) {
		case 'measurement':
			return measurementNoun(taken.key);
		case 'allowance':
			return allowanceNoun(taken);
		case 'apart':
			return { article: 'the', name: `distance ${taken.from}–${taken.to}` };
		case 'line':
			return { article: 'the', name: `length of ${lineWords(taken.line)}` };
		case 'distance':
		case 'length':
			return { article: 'the', name: taken.kind };
	}
};
const said = (taken: Taken): string => the(nounOf(taken));

/** How many times as deep, in tenths: nobody sees a curve more finely. */
const timesAs = (times: number): string => {
	const tenths = Math.round(times * 10);
	if (tenths === 5) return 'half';
	return tenths === 20 ? 'twice' : `${tenths / 10} times`;
};

/** The name of a draft within a sentence: "the front block". */
const small = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

/** What may have gone wrong, by kind. */
const slips = {
	fraction: ({ wrong, right, of }: { wrong: Share; right: Share; of: readonly Taken[] }) =>
		did(`took ${OF[wrong]} ${of.map(said).join(' and of ')}`, `the rule is ${ALONE[right]}`),
	leftOut: ({ what }: { what: Taken }) => did(`left out ${said(what)}`),
	twice: ({ what, how }: { what: Taken; how: 'added' | 'takenOff' | 'taken' }) =>
		did(`${{ added: 'added', takenOff: 'took off', taken: 'took' }[how]} ${said(what)} twice`),
	added: ({ what }: { what: Taken }) => did(`added ${said(what)}`, 'the rule takes it off'),
	takenOff: ({ what }: { what: Taken }) => did(`took off ${said(what)}`, 'the rule adds it'),
	usual: ({ what }: { what: Taken }) =>
		did(`took ${said(what)} as it usually is`, 'the rule takes the one chosen here'),
	addedToo: ({ what }: { what: Taken }) => did(`added ${said(what)}`, 'the rule does without it'),
	takenOffToo: ({ what }: { what: Taken }) => did(`took off ${said(what)}`, 'the rule does without it'),
	instead: ({ wrong, right }: { wrong: Taken; right: Taken }) =>
		did(`took ${said(wrong)}`, `the rule takes ${said(right)}`),
	farEnd: ({ from, wrong, right }: { from: string; wrong: string; right: string }) =>
		did(`took the distance from ${from} to ${wrong}`, `the rule takes it to ${right}`),
	inInches: ({ what }: { what: Taken }) => did(`took ${said(what)} in inches instead of centimetres`),
	inCentimetres: ({ what }: { what: Taken }) => did(`took ${said(what)} in centimetres instead of inches`),
	decimal: ({ what }: { what: Taken }) => did(`put the decimal point of ${said(what)} one place off`),
	tape: ({ what }: { what: Taken }) => did(`read ${said(what)} 10 cm off, as from the wrong end of the tape`),
	digits: ({ what }: { what: Taken }) => did(`swapped two digits of ${said(what)}`),
	start: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`started from ${wrong}`, `the rule starts from ${right}`),
	toward: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`went toward ${wrong}`, `the rule goes toward ${right}`),
	way: ({ wrong, right }: { wrong: Compass; right: Compass }) =>
		did(`went ${WAYS[wrong]}`, `the rule goes ${WAYS[right]}`),
	notSloping: ({ wrong }: { wrong: Compass }) => did(`went ${WAYS[wrong]}`, 'the rule goes along a slope'),
	squareTo: ({ wrong, toward }: { wrong: Compass; toward: string }) =>
		did(`measured ${WAYS[wrong]}`, `the rule measures along the slope toward ${toward}`),
	alongLine: ({ line, right }: { line: Line; right: Compass }) =>
		did(`measured along ${lineWords(line)}`, `the rule goes ${WAYS[right]}`),
	away: ({ toward }: { toward: string }) => did(`went away from ${toward}`, `the rule goes toward ${toward}`),
	otherEnd: ({ line, from }: { line: Line; from: 'start' | 'end' }) =>
		did(`measured ${lineWords(line)} from its other end`, `the rule begins at its ${from}`),
	opposite: () => did('went the opposite way'),
	oppositeFrom: ({ from }: { from: string }) => did(`went the opposite way from ${from}`),
	otherPoint: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`placed ${wrong}`, `this step asks for ${right}`),
	panel: ({ wrong, right }: { wrong: Noun; right: string }) =>
		did(`followed the rule of ${the(wrong)}`, `this is ${small(right)}`),
	share: ({ wrong, right, from, to }: { wrong: Share; right: Share; from: string; to: string }) =>
		did(`went ${ALONE[wrong]} of the way from ${from} to ${to}`, `the rule is ${ALONE[right]}`),
	fromFarEnd: ({ from, to }: { from: string; to: string }) =>
		did(`measured from ${to} toward ${from}`, `the rule goes from ${from} to ${to}`),
	squaresExchanged: ({ down, across }: { down: string; across: string }) =>
		did(
			`squared across from ${down} and down from ${across}`,
			`the rule goes down from ${down} and across from ${across}`
		),
	notFolded: ({ point, fold }: { point: string; fold: readonly string[] }) =>
		did(`left ${point} where it was`, `the rule folds it over ${fold.join('–')}`),
	toFold: ({ fold }: { fold: readonly string[] }) =>
		did(`stopped at the fold ${fold.join('–')}`, 'the rule goes as far again beyond it'),
	notSpread: ({ point }: { point: string }) => did(`left ${point} where it was`, 'the rule moves it away'),
	notTurned: ({ point, about }: { point: string; about: string }) =>
		did(`left ${point} where it was`, `the rule turns it about ${about}`),
	notSwung: ({ from }: { from: string | undefined }) =>
		did(
			`measured straight across ${from === undefined ? 'along its level' : `from ${from}`}`,
			'the rule swings the length until it meets its level'
		),
	swung: ({ wrong, right }: { wrong: 'outward' | 'inward'; right: 'outward' | 'inward' }) =>
		did(`swung the length ${wrong}`, `the rule swings it ${right}`),
	turnedBack: ({ point, onto }: { point: string; onto: string | undefined }) =>
		did('turned the other way', onto === undefined ? undefined : `the rule turns ${point} toward ${onto}`),
	turnedFor: ({ other }: { other: string }) =>
		did(`turned as far as for ${other}`, 'the rule closes this dart, and no more'),
	turnedForBoth: ({ other }: { other: string }) =>
		did(`turned as far as for ${other} and this dart together`, 'the rule closes this dart'),
	turnedShare: ({ wrong, right, onto }: { wrong: Share; right: Share; onto: string }) =>
		did(`turned ${ALONE[wrong]} of the way onto ${onto}`, `the rule is ${ALONE[right]}`),
	straightOnto: ({ point, onto, about }: { point: string; onto: string; about: string }) =>
		did(`moved ${point} straight onto ${onto}`, `a part that turns keeps its distance from ${about}`),
	asLongAs: ({ line }: { line: Line }) =>
		did(`went on until the curve was as long as ${lineWords(line)}`, 'the rule takes another line'),
	notGoneOn: ({ from }: { from: string }) =>
		did(`left the point at ${from}`, 'the rule goes on until the curve is long enough'),
	notCrossed: ({ from, of }: { from: string; of: readonly string[] }) =>
		did(`left the point at ${from}`, `the rule looks where the line ${of.join('–')} crosses`),
	notFoldedOver: ({ of, fold }: { of: readonly string[]; fold: readonly string[] }) =>
		did(`took the line ${of.join('–')} as it lies`, `the rule folds it over on ${fold.join('–')}`),
	ruledFrom: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`ruled the line from ${wrong}`, `the rule has ${right} there`),
	ruledTo: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`ruled the line to ${wrong}`, `the rule has ${right} there`),
	curveFrom: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`began the curve at ${wrong}`, `the rule has ${right} there`),
	curveTo: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`drew the curve to ${wrong}`, `the rule has ${right} there`),
	nodeMissed: ({ node }: { node: string }) =>
		did(`drew the curve past ${node}`, `the rule’s runs through ${node}`),
	nodeTaken: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`drew the curve through ${wrong}`, `the rule’s runs through ${right}`),
	tooFlat: ({ times }: { times: number }) =>
		did('drew the curve too flat', `it is about ${timesAs(times)} as deep as the rule’s`),
	tooDeep: ({ times }: { times: number }) =>
		did('drew the curve too deep', `it is about ${timesAs(times)} as deep as the rule’s`),
	mirrored: () => did('drew the curve the other way round', 'it is the mirror image of the rule’s'),
	straightened: () => did('drew it almost straight', 'the rule makes it a hollow curve'),
	wrongBulge: () => did('let it bulge the wrong way', 'the rule bends it to the other side'),
	wrongEnds: () =>
		did('drew the right shape on the wrong ends', 'it does not begin and end where the rule says'),
	wobble: () => did('let the curve wobble', 'it bends to and fro where the rule’s does not'),
	leftSlanting: ({ point }: { point: string }) =>
		did(`left ${point} at a slant`, `the curve leaves it square`),
	reachedSlanting: ({ point }: { point: string }) =>
		did(`reached ${point} at a slant`, `the curve reaches it square`),
	tooLong: () => did('drew it too long', 'the rule’s is shorter'),
	tooShort: () => did('drew it too short', 'the rule’s is longer')
};

/** What may have gone wrong at a step. */
export const missteps = (_voice: Voice) => ({
	slips,
	/** To whoever did it. */
	yours: (misdone: Misdone) => misdoneOf('You', misdone),
	/** Of whoever did it. */
	theirs: (misdone: Misdone) => misdoneOf('They', misdone),
	/** The same, of a slip that was handed on as data. */
	theirSlip: ({ key, values }: { key: keyof typeof slips; values: readonly unknown[] }) =>
		misdoneOf('They', (slips[key] as (...values: readonly unknown[]) => Misdone)(...values)),
	/** What would lead to where a mark lies: one thing, any of several, or several at once. */
	wouldLie: ({ all, joined }: { all: readonly Misdone[]; joined: 'and' | 'or' }) => {
		const [rule, ...more] = all.flatMap((each) => each.rule ?? []);
		const told = all.length === 1 && rule !== undefined && more.length === 0 ? `; ${rule}` : '';
		return `It would lie there if you ${all.map(({ did }) => did).join(joined === 'and' ? ' and ' : ', or if you ')}${told}.`;
	},
	/** One of several. */
	either: (all: readonly Misdone[]) => `Either ${all.map(({ did }) => `you ${did}`).join(', or ')}.`
});
