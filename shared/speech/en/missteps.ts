import type { Compass } from '../../method.ts';
import type { MeasurementKey } from '../../measurements.ts';
import { did, misdoneOf, type Misdone } from '../misdone.ts';
import type { Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the } from './grammar.ts';
import { allowanceNoun, measurementNoun, partOf } from './nouns.ts';

/** A share of a length, by its name in notes; `part` is one that has no name. */
export type Share =
	| 'whole'
	| 'half'
	| 'third'
	| 'quarter'
	| 'fifth'
	| 'sixth'
	| 'eighth'
	| 'twelfth'
	| 'twoThirds'
	| 'threeQuarters'
	| 'twice'
	| 'part';

/** By how much a tape is read beside its mark. */
export type TapeSlip = 'centimetre' | 'halfCentimetre' | 'twoCentimetres' | 'inch' | 'halfInch';

/** How a formula was read otherwise in one place. */
export type RewrittenHow = 'otherOfTwo' | 'otherCase' | 'otherChoice' | 'numberForgotten';

/** A line, and the draft that it is of where that is another one. */
export interface Line {
	readonly noun: Noun;
	readonly of?: Noun;
}

/** Two points between which another is put. */
interface Between {
	readonly from: string;
	readonly to: string;
}

/** A length that a rule, or a wrong rule, takes. */
export type Taken =
	| { readonly kind: 'measurement'; readonly key: MeasurementKey }
	| { readonly kind: 'allowance'; readonly key: string; readonly noun?: Noun | undefined }
	| { readonly kind: 'apart'; readonly from: string; readonly to: string }
	| { readonly kind: 'line'; readonly line: Line }
	| { readonly kind: 'difference'; readonly one: Taken; readonly other: Taken }
	| { readonly kind: 'distance' }
	| { readonly kind: 'length' };

const OF: Readonly<Record<Share, string>> = {
	whole: 'the whole of',
	half: 'half of',
	third: 'a third of',
	quarter: 'a quarter of',
	fifth: 'a fifth of',
	sixth: 'a sixth of',
	eighth: 'an eighth of',
	twelfth: 'a twelfth of',
	twoThirds: 'two thirds of',
	threeQuarters: 'three quarters of',
	twice: 'twice',
	part: 'a part of'
};
const ALONE: Readonly<Record<Share, string>> = {
	whole: 'the whole',
	half: 'a half',
	third: 'a third',
	quarter: 'a quarter',
	fifth: 'a fifth',
	sixth: 'a sixth',
	eighth: 'an eighth',
	twelfth: 'a twelfth',
	twoThirds: 'two thirds',
	threeQuarters: 'three quarters',
	twice: 'the double',
	part: 'another part'
};
const wayShare = (share: Share): string =>
	share === 'twice' ? 'twice the way' : `${share === 'half' ? 'half' : ALONE[share]} of the way`;
const TAPE: Readonly<Record<TapeSlip, string>> = {
	centimetre: 'a centimetre',
	halfCentimetre: 'half a centimetre',
	twoCentimetres: 'two centimetres',
	inch: 'an inch',
	halfInch: 'half an inch'
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
		case 'difference':
			return {
				article: 'the',
				name: `difference between ${said(taken.one)} and ${said(taken.other)}`
			};
		case 'distance':
		case 'length':
			return { article: 'the', name: taken.kind };
	}
};
const said = (taken: Taken): string => the(nounOf(taken));

/** How many times as deep, in tenths: nobody sees a curve more finely. */
const timesAs = (v: Voice, times: number): string => {
	const tenths = Math.round(times * 10);
	if (tenths === 5) return 'half';
	return tenths === 20 ? 'twice' : `${v.number(tenths / 10)} times`;
};

/** The name of a draft within a sentence: "the front block". */
const small = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

/** A length that was misread: what it should be, and what it became. */
interface Misread {
	readonly what: Taken;
	readonly asRead?: readonly [right: Mm, wrong: Mm];
}

/** A share of a length laid off from a point; the length may be another step's. */
interface LaidOff {
	readonly of: Taken | { readonly kind: 'rule'; readonly name: string };
	readonly share: Share;
	readonly way: Compass;
	readonly from: string;
}

/** The rule, where its share has a name. */
const ruleShare = (right: Share): string | undefined =>
	right === 'part' ? undefined : `the rule is ${ALONE[right]}`;

/** What may have gone wrong, by kind. */
const slipsIn = (v: Voice) => ({
	fraction: ({ wrong, right, of }: { wrong: Share; right: Share; of: readonly Taken[] }) =>
		did(`took ${OF[wrong]} ${of.map(said).join(' and of ')}`, ruleShare(right)),
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
	inInches: ({ what }: Misread) => did(`read ${said(what)} on the inch side of the tape`),
	inCentimetres: ({ what }: Misread) => did(`read ${said(what)} on the centimetre side of the tape`),
	decimal: ({ what }: Misread) => did(`put the decimal point of ${said(what)} one place off`),
	tape: ({ what }: Misread) => did(`read ${said(what)} one ten off on the tape`),
	digits: ({ what, asRead }: Misread) =>
		did(
			`swapped two digits of ${said(what)}${asRead ? ` (${asRead.map((each) => v.bare(each)).join(', ')})` : ''}`
		),
	start: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`started from ${wrong}`, `the rule starts from ${right}`),
	squaredFrom: ({ wrong, right, way }: { wrong: string; right: string; way: 'down' | 'across' }) =>
		did(`squared ${way} from ${wrong}`, `the rule squares ${way} from ${right}`),
	between: ({ share, wrong, right }: { share: Share; wrong: Between; right: Between }) =>
		share === 'half'
			? did(
					`took the middle between ${wrong.from} and ${wrong.to}`,
					`the rule takes it between ${right.from} and ${right.to}`
				)
			: did(
					`went ${wayShare(share)} from ${wrong.from} to ${wrong.to}`,
					`the rule goes from ${right.from} to ${right.to}`
				),
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
		did(`measured ${lineWords(line)} from its other end`, `the rule begins where it ${from}s`),
	opposite: () => did('went the opposite way'),
	oppositeFrom: ({ from }: { from: string }) => did(`went the opposite way from ${from}`),
	otherPoint: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`placed ${wrong}`, `this step asks for ${right}`),
	panel: ({ wrong, right }: { wrong: Noun; right: string }) =>
		did(`followed the rule of ${the(wrong)}`, `this is ${small(right)}`),
	share: ({ wrong, right, from, to }: { wrong: Share; right: Share; from: string; to: string }) =>
		did(`went ${wayShare(wrong)} from ${from} to ${to}`, ruleShare(right)),
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
		did(`turned ${wayShare(wrong)} onto ${onto}`, ruleShare(right)),
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
		did('drew the curve too flat', `it is about ${timesAs(v, times)} as deep as the rule’s`),
	tooDeep: ({ times }: { times: number }) =>
		did('drew the curve too deep', `it is about ${timesAs(v, times)} as deep as the rule’s`),
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
	tooShort: () => did('drew it too short', 'the rule’s is longer'),
	shareOfSum: ({ wrong }: { wrong: Share }) =>
		did(`took ${OF[wrong]} the whole sum`, 'the rule takes a share of one part of it alone'),
	shareInstead: ({ wrong, of }: { wrong: Share; of: Taken }) =>
		did(`took ${wrong === 'whole' ? '' : `${OF[wrong]} `}${said(of)}`, 'the rule takes another length'),
	tapeBeside: ({ what, size, way }: { what: Taken; size: TapeSlip; way: 'long' | 'short' }) =>
		did(`took ${said(what)} ${TAPE[size]} too ${way}`),
	fractionDropped: () => did('left out what the distance has beyond a whole number'),
	otherRule: ({ wrong }: { wrong: string }) =>
		did(`took the length that the rule has for ${wrong}`, 'this step has a rule of its own'),
	measuredStraight: ({ line }: { line: Line }) =>
		did('measured straight', `the rule measures along ${lineWords(line)}`),
	alongOther: ({ wrong, right }: { wrong: Line; right: Line }) =>
		did(`measured along ${lineWords(wrong)}`, `the rule measures along ${lineWords(right)}`),
	otherFormula: ({ how }: { how: RewrittenHow }) =>
		({
			otherOfTwo: did('took the other of the two lengths', 'the rule chooses between them'),
			otherCase: did('took the rule of another case', 'for these measurements there is a rule of its own'),
			otherChoice: did('worked with another share', 'the rule takes the one that was chosen'),
			numberForgotten: did('forgot a number that the rule multiplies or divides by')
		})[how],
	squareToGuide: ({ from, to, right }: { from: string; to: string; right: Compass }) =>
		did(`measured square to the line ${from}–${to}`, `the rule goes ${WAYS[right]}`),
	swungUp: () => did('swung the length upward', 'the rule swings it down to its level'),
	turnedAbout: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`turned about ${wrong}`, `the rule turns about ${right}`),
	turnedOnto: ({ wrong, right }: { wrong: string; right: string }) =>
		did(`turned as far as ${wrong}`, `the rule turns as far as ${right}`),
	straightOn: ({ how }: { how: 'byWhole' | 'byWhatLacks' | 'notRound' }) =>
		({
			byWhole: did('measured the length straight on', 'the rule measures it along the curve'),
			byWhatLacks: did(
				'went straight on by what the curve lacks',
				'the rule goes on until the curve is long enough'
			),
			notRound: did('went straight on', 'the rule swings the point round')
		})[how],
	leftAt: ({ at }: { at: string }) => did(`left the point at ${at}`, 'the rule goes on from there'),
	squared: ({ down, across }: { down: string; across: string }) =>
		did(`put the point straight above or below ${down} and level with ${across}`),
	wholePart: ({ how }: { how: 'leftOut' | 'twice' | 'half' | 'otherSign' }) =>
		({
			leftOut: did('left out a part of the sum'),
			twice: did('took a part of the sum twice'),
			half: did('took half of a part of the sum', 'the rule takes all of it'),
			otherSign: did('added a part of the sum that is taken off, or took off one that is added')
		})[how],
	withRule: ({ of }: { of: string }) => did(`added the length that the rule has for ${of}`),
	withoutRule: ({ of }: { of: string }) => did(`took off the length that the rule has for ${of}`),
	laidOff: ({ of, share, way, from }: LaidOff) =>
		did(
			`laid off ${of.kind === 'rule' ? `the length of ${of.name}` : share === 'whole' ? said(of) : `${OF[share]} ${said(of)}`} from ${from}, ${WAYS[way]}`,
			'the rule does something else from there'
		),
	halfway: ({ from, to }: { from: string; to: string }) => did(`took the middle between ${from} and ${to}`)
});

/** Several slips at once. */
const together = (all: readonly Misdone[]): string => all.map(({ did }) => did).join(' and ');

/** What may have gone wrong at a step. */
export const missteps = (v: Voice) => {
	const slips = slipsIn(v);
	return {
		slips,
		/** To whoever did it. */
		yours: (misdone: Misdone) => misdoneOf('You', misdone),
		/** Of whoever did it. */
		theirs: (misdone: Misdone) => misdoneOf('They', misdone),
		/** The same, of a slip that was handed on as data. */
		theirSlip: ({ key, values }: { key: keyof ReturnType<typeof slipsIn>; values: readonly unknown[] }) =>
			misdoneOf('They', (slips[key] as (...values: readonly unknown[]) => Misdone)(...values)),
		/** What would lead to where a mark lies: any of several, each one slip or several at once. */
		wouldLie: (any: readonly (readonly Misdone[])[]) => {
			const [rule, ...more] = any.flat().flatMap((each) => each.rule ?? []);
			const told = any.flat().length === 1 && rule !== undefined && more.length === 0 ? `; ${rule}` : '';
			return `It would lie there if you ${any.map(together).join(', or if you ')}${told}.`;
		},
		/** The one thing that was likely done, without certainty. */
		perhaps: (all: readonly Misdone[]) => {
			const [only, ...more] = all;
			const told = only?.rule !== undefined && more.length === 0 ? `; ${only.rule}` : '';
			return `Perhaps you ${together(all)}${told}.`;
		},
		/** One of several. */
		either: (any: readonly (readonly Misdone[])[]) =>
			`Either ${any.map((all) => `you ${together(all)}`).join(', or ')}.`
	};
};
