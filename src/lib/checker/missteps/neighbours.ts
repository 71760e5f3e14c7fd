import type { MeasurementKey } from '#shared/measurements.ts';

/**
 * Which measurements and allowances are taken for which. Common practice, no source: teachers'
 * experience of what stands next to what on a learner's list and on the body.
 */

/** How often one is taken for the other: `often` where both are said or taken in one breath, `seldom` where only the place is alike. */
export interface Neighbour<Key extends string> {
	readonly key: Key;
	readonly how: 'often' | 'seldom';
}

const often = <Key extends string>(...keys: readonly Key[]): readonly Neighbour<Key>[] =>
	keys.map((key) => ({ key, how: 'often' }));
const seldom = <Key extends string>(...keys: readonly Key[]): readonly Neighbour<Key>[] =>
	keys.map((key) => ({ key, how: 'seldom' }));

/** For each measurement that a draft needs, those that are taken for it. */
export const MEASUREMENT_NEIGHBOURS: Readonly<
	Partial<Record<MeasurementKey, readonly Neighbour<MeasurementKey>[]>>
> = {
	// Three girths under one another on every list.
	bust: often('waist', 'hip'),
	waist: often('bust', 'hip'),
	hip: often('waist', 'bust'),
	// The other short numbers at the top of the body.
	neck: seldom('shoulderWidth'),
	// Both run across, shoulder to shoulder and bust point to bust point.
	shoulderWidth: [...often<MeasurementKey>('bustSpan'), ...seldom<MeasurementKey>('neck')],
	bustSpan: often('shoulderWidth'),
	// The lengths from the side neck point downward.
	backLength: [
		...often<MeasurementKey>('frontLength'),
		...seldom<MeasurementKey>('bustHeight', 'waistToHip')
	],
	frontLength: often('backLength', 'bustHeight'),
	bustHeight: [...often<MeasurementKey>('frontLength'), ...seldom<MeasurementKey>('backLength')],
	waistToHip: seldom('backLength', 'bustHeight')
};

/** For each allowance of the block, and what stands in its place, those that are taken for it: front for back, and the next girth's ease. */
export const ALLOWANCE_NEIGHBOURS: Readonly<Record<string, readonly Neighbour<string>[]>> = {
	shoulderDropBack: often('shoulderDropFront'),
	shoulderDropFront: often('shoulderDropBack'),
	hollowBack: often('hollowFront'),
	hollowFront: often('hollowBack'),
	bustEase: seldom('waistEase', 'hipEase'),
	waistEase: seldom('bustEase', 'hipEase'),
	hipEase: seldom('waistEase', 'bustEase'),
	// The ease that the same waist has on the block.
	bandEase: often('waistEase'),
	backNeckDepth: seldom('frontNeckDrop', 'neckAllow'),
	frontNeckDrop: seldom('backNeckDepth'),
	neckAllow: seldom('backNeckDepth'),
	// Both lengths along the dart.
	dartBelow: seldom('dartShort'),
	dartShort: seldom('dartBelow')
};

/** The ease that goes with each girth: who takes the wrong girth takes its ease with it, or keeps the right one. */
export const EASE_OF: Readonly<Partial<Record<MeasurementKey, string>>> = {
	bust: 'bustEase',
	waist: 'waistEase',
	hip: 'hipEase'
};
