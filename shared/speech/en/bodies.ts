import type { MeasurementKey } from '../../measurements.ts';
import { mm, type Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';
import { the, within } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** How whoever is measured stands, and how the tape is held: own words, after the definitions of ISO 8559-1 as remembered. */
export interface HowTo {
	readonly stand: string;
	readonly hold: string;
}

const STRAIGHT = 'Stand upright and at ease, feet together, arms hanging, eyes ahead. Breathe out as usual.';
const HANGING = 'Stand upright, shoulders let down, arms hanging.';

const HOW: Readonly<Record<MeasurementKey, HowTo>> = {
	bust: {
		stand: STRAIGHT,
		hold: 'Tape under the arms, over the fullest of the bust and level across the back. It touches and does not press.'
	},
	waist: { stand: STRAIGHT, hold: 'Tape on the ribbon at the waist, level all the way round.' },
	hip: {
		stand: STRAIGHT,
		hold: 'Tape level round the fullest of the seat. Look from the side for where that is.'
	},
	neck: {
		stand: 'Head upright, eyes ahead.',
		hold: 'Tape round the foot of the neck: over the bone at the nape, the two side neck points and the hollow in front. Stand it on its edge if it will not lie.'
	},
	shoulderWidth: {
		stand: HANGING,
		hold: 'From the end of one shoulder bone over the bone at the nape to the end of the other.'
	},
	backLength: {
		stand: STRAIGHT,
		hold: 'Zero at the side neck point, straight down over the shoulder blade to the ribbon.'
	},
	waistToHip: {
		stand: STRAIGHT,
		hold: 'At the side, from the ribbon down over the hip to the level of the fullest seat.'
	},
	frontLength: {
		stand: STRAIGHT,
		hold: 'Zero at the side neck point, over the bust point, then straight down to the ribbon.'
	},
	bustHeight: { stand: STRAIGHT, hold: 'Zero at the side neck point, down to the bust point.' },
	bustSpan: {
		stand: STRAIGHT,
		hold: 'Straight across from bust point to bust point; the tape bridges the hollow.'
	},
	napeToWaist: {
		stand: 'Stand upright, the head bent forward to find the bone at the nape, then upright again.',
		hold: 'Zero on the bone at the nape, down the middle of the back to the ribbon.'
	},
	shoulderLength: {
		stand: HANGING,
		hold: 'From the side neck point along the shoulder to the end of its bone.'
	},
	shoulderDrop: {
		stand: HANGING,
		hold: 'A ruler held level at the side neck point; measure straight down from it to the end of the shoulder bone.'
	},
	acrossBack: {
		stand: HANGING,
		hold: 'Halfway down the armhole, from the fold of one arm across the back to the other.'
	},
	acrossChest: {
		stand: HANGING,
		hold: 'Halfway down the armhole, from the fold of one arm across the chest to the other.'
	},
	scyeDepth: {
		stand: STRAIGHT,
		hold: 'A strip of card level under the arms; down the middle of the back from the bone at the nape to the card.'
	},
	upperBust: { stand: STRAIGHT, hold: 'Close under the arms, level round the back and above the bust.' },
	underBust: { stand: STRAIGHT, hold: 'Level round the ribs, close under the bust.' },
	upperArm: {
		stand: 'Let the arm hang, the hand open.',
		hold: 'Round the fullest of the upper arm, square to it.'
	},
	armLength: {
		stand: 'Bend the arm a little, the hand at the front of the hip.',
		hold: 'From the end of the shoulder bone over the elbow to the wrist bone.'
	},
	wrist: { stand: 'Hold the hand out, open.', hold: 'Round the wrist, over its bone.' },
	sideWaistToFloor: {
		stand: 'Stand without shoes, feet together, your weight on both.',
		hold: 'At the side, from the ribbon over the hip, then straight down to the floor.'
	}
};

/** What a measurement that no draft needs makes surer. */
const SURER: Readonly<Partial<Record<MeasurementKey, string>>> = {
	napeToWaist: 'Cards and charts often give this in place of the back length, which follows from it.',
	shoulderLength: 'Tells whether the shoulder seam ends at the shoulder.',
	shoulderDrop: 'Tells whether the shoulder seam slopes as the shoulder does.',
	acrossBack: 'Tells whether the back armhole is hollowed too far or too little.',
	acrossChest: 'Tells whether the front armhole is hollowed too far or too little.',
	scyeDepth: 'Tells how far below the armpit the armhole lies.',
	upperBust: 'Lets the bust be compared: a full bust on a narrow back is seen.',
	underBust: 'Lets the bust be compared with the ribs below it.',
	upperArm: 'Tells whether the sleeve is wide enough.',
	armLength: 'Gives the length of the sleeve.',
	wrist: 'Tells whether the hand passes through the sleeve’s end.',
	sideWaistToFloor: 'Helps to choose the length of a skirt or dress.'
};

interface Range {
	readonly value: Mm;
	readonly range: readonly [Mm, Mm];
}
type Who = 'women' | 'men';

/** The learner's own body, field by field, beside real bodies. */
export const bodies = (v: Voice) => {
	/** What is only expected, to a millimetre. */
	const whole = (length: Mm): string => v.length(mm(Math.round(length)));
	const from = (range: readonly [Mm, Mm]): string => {
		const { least, most } = v.range(range);
		return `${least} to ${most}`;
	};
	return {
		how: HOW,
		surer: SURER,
		standard:
			'What is measured, and its names, follow ISO 8559-1 (body measurements for clothing), as we remember it; the words are ours.',
		details: 'How, why, and a second reading',
		detailsOf: ({ title }: { title: string }) => `How, why, and a second reading: ${title}`,
		stand: 'Stand',
		hold: 'Tape',
		neededFor: ({ garments }: { garments: readonly string[] }) =>
			`Needed for: ${v.list(garments.map(within))}.`,
		neededByNone: 'No draft needs it.',
		percentile: ({ percent, who }: { percent: number; who: Who }) =>
			percent < 1
				? `Fewer than 1 in 100 of the ${who} surveyed have less.`
				: percent > 99
					? `More than 99 in 100 of the ${who} surveyed have less.`
					: `${v.number(percent, 0)} in 100 of the ${who} surveyed have less.`,
		expected: ({ value, range }: Range) =>
			`From the others about ${whole(value)} is expected; 19 bodies in 20 have ${from(range)}.`,
		estimate: ({ value, range }: Range) =>
			`Not taken: about ${whole(value)}, for 19 bodies in 20 ${from(range)}.`,
		useEstimate: 'Use as an estimate',
		workOut: ({ value }: { value: Mm }) =>
			`From nape to waist it works out as ${v.length(value)}: the side neck lies about 2 cm higher.`,
		useWorkedOut: 'Use what works out',
		estimated:
			'Estimated from your other measurements, not taken. It is marked so wherever it is used, and changes with them. Type over it once you have taken it.',
		workedOut:
			'Worked out from nape to waist, not taken. It is marked so wherever it is used. Type over it once you have taken it.',
		second: 'Second reading',
		secondWhat: 'take it again, without looking at the first',
		apart: ({ first, second, mean, difference }: { first: Mm; second: Mm; mean: Mm; difference: Mm }) =>
			`${v.length(first)} and ${v.length(second)}: ${v.length(difference)} apart. ${v.length(mean)}, halfway, is used.`,
		tooFar: ({ most }: { most: Mm }) =>
			`More than ${v.length(most)} apart: take it a third time, and keep the two that agree.`,
		// Left and right
		sides: 'Left and right, and remarks',
		sidesAbout:
			'Hardly anybody is alike on both sides. What you note here is kept and shown. It is not drafted yet: every draft here is alike left and right, so fit the sides apart at the toile.',
		left: 'left',
		right: 'right',
		sidesDiffer: ({
			of,
			difference,
			longer
		}: {
			of: MeasurementKey;
			difference: Mm;
			longer: 'left' | 'right';
		}) => `${v.length(difference)} more on the ${longer}: ${the(measurementNoun(of))}. Not drafted yet.`,
		remarks: 'Remarks',
		// The whole body
		beside: 'Beside real bodies',
		compared: 'Compare with',
		likelier: ({ who }: { who: Who }) => `whichever is likelier (${who})`,
		women: 'women',
		men: 'men',
		allWell: ({ count }: { count: number }) =>
			v.plural(count, {
				one: 'The one measurement is an ordinary one.',
				other: `The ${v.number(count)} measurements go together.`
			}),
		toAsk: ({ keys }: { keys: readonly MeasurementKey[] }) =>
			`Take once more: ${v.list(keys.map((key) => the(measurementNoun(key))))}. The field says what may have happened. It is advice: you can draft all the same.`,
		outlying: ({ percent, who }: { percent: number; who: Who }) =>
			percent > 99
				? `Taken together they lie further from the middle than those of more than 99 in 100 of the ${who} surveyed.`
				: `Taken together they lie further from the middle than those of about ${v.number(percent, 0)} in 100 of the ${who} surveyed.`,
		unknown:
			'The survey hardly has bodies such as this one: children, very large or otherwise rare ones. Nothing is wrong with that. Only gross slips can be told here, and estimates are wide.',
		cannotSee: ({ sizes }: { sizes: readonly { readonly of: MeasurementKey; readonly least: Mm }[] }) =>
			`What this cannot see: a slip of less than ${v.list(sizes.map(({ of, least }) => `${whole(least)} at ${the(measurementNoun(of))}`))} looks like any other body. Measure twice.`,
		survey:
			'Compared with 2,208 women and 1,774 men of the US Army, measured in 1988 with calipers and tape: fit people of 17 to 51. Older, very large, pregnant and very young bodies are badly represented, and bodies of today may differ. Unusual is not wrong: about one woman in ten of them has a bust above her hip.',
		standIns: ({ keys }: { keys: readonly MeasurementKey[] }) =>
			`Not taken as here, so something like it stands in: ${v.list(keys.map((key) => the(measurementNoun(key))))}.`,
		private:
			'These numbers stay in this browser. They leave it only in a file that you save, or in work that you hand in to a class and say so.',
		duplicate: 'Duplicate',
		copyDemo: 'Copy as your own',
		card: 'Measuring card to print',
		cardTitle: 'Measuring card',
		cardAbout:
			'For two people who measure each other. Tie a ribbon round the waist, wear thin clothes, mark the side neck points with stickers. Take each twice and write both down; where they differ by more than a finger’s breadth, take it again.',
		cardName: 'Name',
		cardBy: 'Measured by',
		cardDate: 'Date',
		first: '1st',
		secondShort: '2nd',
		print: 'Print it',
		back: 'Back to the fields'
	};
};
