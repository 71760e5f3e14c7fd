import type { MeasurementKey } from './measurements.ts';

/** What is measured, by how surely a tape can be read there. */
export type ReadingKind = 'largeGirth' | 'smallGirth' | 'length';

const GIRTHS: Readonly<Partial<Record<MeasurementKey, ReadingKind>>> = {
	bust: 'largeGirth',
	waist: 'largeGirth',
	hip: 'largeGirth',
	upperBust: 'largeGirth',
	underBust: 'largeGirth',
	neck: 'smallGirth',
	upperArm: 'smallGirth',
	wrist: 'smallGirth'
};

/** Which kind of reading a measurement is. */
export const readingKind = (key: MeasurementKey): ReadingKind => GIRTHS[key] ?? 'length';
