import type { MeasurementKey } from '#shared/measurements.ts';

/**
 * Which measurements are taken for which. Common practice, no source: teachers'
 * experience of what stands next to what on a learner's list and on the body.
 */

/** How often one is taken for the other: `often` where both are said or taken in one breath, `seldom` where only the place is alike. */
export interface Neighbour {
	readonly key: MeasurementKey;
	readonly how: 'often' | 'seldom';
}

const often = (...keys: readonly MeasurementKey[]): readonly Neighbour[] =>
	keys.map((key) => ({ key, how: 'often' }));
const seldom = (...keys: readonly MeasurementKey[]): readonly Neighbour[] =>
	keys.map((key) => ({ key, how: 'seldom' }));

/** For each measurement that a draft needs, those that are taken for it. */
export const MEASUREMENT_NEIGHBOURS: Readonly<Partial<Record<MeasurementKey, readonly Neighbour[]>>> = {
	// Three girths under one another on every list.
	bust: often('waist', 'hip'),
	waist: often('bust', 'hip'),
	hip: often('waist', 'bust'),
	// The other short numbers at the top of the body.
	neck: seldom('shoulderWidth'),
	// Both run across, shoulder to shoulder and bust point to bust point.
	shoulderWidth: [...often('bustSpan'), ...seldom('neck')],
	bustSpan: often('shoulderWidth'),
	// The lengths from the side neck point downward.
	backLength: [...often('frontLength'), ...seldom('bustHeight', 'waistToHip')],
	frontLength: often('backLength', 'bustHeight'),
	bustHeight: [...often('frontLength'), ...seldom('backLength')],
	waistToHip: seldom('backLength', 'bustHeight')
};

/** The ease that goes with each girth: who takes the wrong girth takes its ease with it, or keeps the right one. */
export const EASE_OF: Readonly<Partial<Record<MeasurementKey, string>>> = {
	bust: 'bustEase',
	waist: 'waistEase',
	hip: 'hipEase'
};
