import type { MeasurementKey } from '../../measurements.ts';
import { capital, the, The } from './grammar.ts';
import { readNoun, type Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';

/** How a measurement is spoken of: in a rule, as a title, and where the tape goes. */
export interface MeasurementWords {
	readonly noun: Noun;
	readonly title: string;
	readonly what: string;
}

const noun = (text: string): Noun => readNoun(text, 'en');
const measurement = (name: string, title: string, what: string): MeasurementWords => ({
	noun: noun(name),
	title,
	what
});

/** Every measurement. Terms: the vocabulary of ISO 8559-1, from memory; the standard's text was not reprinted. */
export const MEASUREMENT_WORDS: Readonly<Record<MeasurementKey, MeasurementWords>> = {
	bust: measurement('the bust', 'Bust girth', 'round the body at the fullest level of the bust'),
	waist: measurement('the waist', 'Waist girth', 'round the body at the natural waist'),
	hip: measurement('the hip', 'Hip girth', 'round the body at the fullest level of the hip'),
	neck: measurement('the neck', 'Neck-base girth', 'round the base of the neck'),
	shoulderWidth: measurement(
		'the shoulder width',
		'Shoulder width',
		'across the back, shoulder point to shoulder point'
	),
	backLength: measurement(
		'the back length',
		'Back length',
		'side neck point to waist, down the back; a card’s “nape to waist” is about 2 cm (3/4 inch) less'
	),
	waistToHip: measurement('waist to hip', 'Waist to hip', 'waist level to hip level, at the side'),
	frontLength: measurement(
		'the front length',
		'Front length',
		'side neck point to waist, down the front over the bust point'
	),
	bustHeight: measurement('the bust height', 'Bust height', 'side neck point to bust point'),
	bustSpan: measurement('the bust span', 'Bust span', 'bust point to bust point'),
	napeToWaist: measurement(
		'the nape to waist length',
		'Nape to waist',
		'from the bone at the nape to the waist, down the back; about 2 cm (3/4 inch) less than the back length'
	),
	shoulderLength: measurement(
		'the shoulder length',
		'Shoulder length',
		'side neck point to shoulder point, along the shoulder'
	),
	shoulderDrop: measurement(
		'the drop of the shoulder',
		'Drop of the shoulder',
		'how much lower the shoulder point lies than the side neck point, measured upright'
	),
	acrossBack: measurement(
		'the width across the back',
		'Width across the back',
		'from arm to arm over the back, halfway down the armhole'
	),
	acrossChest: measurement(
		'the width across the chest',
		'Width across the chest',
		'from arm to arm over the chest, halfway down the armhole'
	),
	scyeDepth: measurement(
		'the armhole depth',
		'Armhole depth',
		'from the bone at the nape to the level of the armpit, down the back'
	),
	upperBust: measurement(
		'the upper bust',
		'Upper bust girth',
		'round the body above the bust, close under the arms'
	),
	underBust: measurement('the under bust', 'Under bust girth', 'round the body close under the bust'),
	upperArm: measurement(
		'the upper arm',
		'Upper arm girth',
		'round the upper arm where it is fullest, the arm hanging'
	),
	armLength: measurement(
		'the arm length',
		'Arm length',
		'shoulder point to wrist, down the outside of the arm, the arm slightly bent'
	),
	wrist: measurement('the wrist', 'Wrist girth', 'round the wrist, over the bone'),
	sideWaistToFloor: measurement(
		'the side waist to floor',
		'Waist to floor',
		'waist level to floor, at the side, without shoes'
	)
};

/** The standing allowances: those of the body block, what is cut outside the stitching line, and the width of cloth. */
export const STANDING = {
	bustEase: noun('the bust ease'),
	waistEase: noun('the waist ease'),
	hipEase: noun('the hip ease'),
	sideMost: noun('the most taken in at the side'),
	waistDartTop: noun('the depth of the waist dart’s top'),
	armholeDrop: noun('the armhole drop'),
	neckAllow: noun('the neck allowance'),
	frontNeckDrop: noun('the front neck drop'),
	backNeckDepth: noun('the back neck depth'),
	shoulderDropBack: noun('the back shoulder drop'),
	shoulderDropFront: noun('the front shoulder drop'),
	hollowBack: noun('the back armhole hollow'),
	hollowFront: noun('the front armhole hollow'),
	dartBelow: noun('the dart depth'),
	dartShort: noun('the dart shortening'),
	seamAllowance: noun('the seam allowance'),
	hemAllowance: noun('the hem allowance'),
	edge: noun('the allowance of an edge'),
	cloth: noun('the width of the cloth')
};

/** What an allowance is called: by its method, or by its key where it is a standing one. */
export const allowanceNoun = (allowance: { readonly key: string; readonly noun?: Noun | undefined }): Noun =>
	allowance.noun ?? (STANDING as Readonly<Record<string, Noun>>)[allowance.key] ?? { name: allowance.key };

/** What a measurement is called, by its key; any other key is left as it is. */
export const measurementNoun = (key: string): Noun =>
	(MEASUREMENT_WORDS as Readonly<Record<string, MeasurementWords>>)[key]?.noun ?? { name: key };

/** What is cut outside one edge, by its name: `front.side`. */
const edgeAllowance = (edge: string): Noun => noun(`the allowance of ${edge}`);

/** A part of a whole: "the back's shoulder". */
export const partOf = (part: Noun, whole: Noun): Noun => ({
	...part,
	article: 'the',
	name: `${whole.name}'s ${part.name}`
});

/** Measurements, allowances and other things with a name, as nouns. */
export const nouns = (_voice: Voice) => ({
	measurements: MEASUREMENT_WORDS,
	standing: STANDING,
	allowance: allowanceNoun,
	measurement: measurementNoun,
	edgeAllowance,
	partOf,
	fromTo: ({ from, to }: { from: string; to: string }): Noun => ({ name: `${from} to ${to}` }),
	/** Within a sentence, at its beginning, and alone as a title. */
	the,
	The,
	title: ({ name }: Noun) => capital(name)
});
