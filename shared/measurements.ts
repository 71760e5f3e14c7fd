/** The ten body measurements that drafts are worked from, in the order in which they are taken. */
export const NEEDED_KEYS = [
	'bust',
	'waist',
	'hip',
	'neck',
	'shoulderWidth',
	'backLength',
	'waistToHip',
	'frontLength',
	'bustHeight',
	'bustSpan'
] as const;
export type NeededKey = (typeof NEEDED_KEYS)[number];

/** Measurements that may be taken as well: each makes a draft surer, and no draft needs one. Terms: the vocabulary of ISO 8559-1, from memory. */
export const FURTHER_KEYS = [
	'napeToWaist',
	'shoulderLength',
	'shoulderDrop',
	'acrossBack',
	'acrossChest',
	'scyeDepth',
	'upperBust',
	'underBust',
	'upperArm',
	'armLength',
	'wrist',
	'sideWaistToFloor'
] as const;

/** Every measurement: those that are needed, then those that may be taken as well. What they are called stands in the `nouns` of each language. */
export const MEASUREMENT_KEYS = [...NEEDED_KEYS, ...FURTHER_KEYS] as const;
export type MeasurementKey = (typeof MEASUREMENT_KEYS)[number];

/** Whether a text is the key of a measurement. */
export const isMeasurementKey = (key: string): key is MeasurementKey =>
	MEASUREMENT_KEYS.some((each) => each === key);

/**
 * Measurements by the name that they had. `backWidth` was taken from shoulder point to shoulder point; the trade and
 * ISO 8559-1 keep that name for the width between the armholes.
 */
const FORMER: Readonly<Record<string, MeasurementKey>> = { backWidth: 'shoulderWidth' };

/** The key of a measurement now, by any key that it has had; any other key is left as it is. */
export const measurementNow = (key: string): string =>
	(Object.hasOwn(FORMER, key) ? FORMER[key] : key) ?? key;

/** The former keys that stand in some data. */
export const formerKeys = (data: object): readonly string[] =>
	Object.keys(data).filter((key) => measurementNow(key) !== key);

/** Those of some measurements that were not taken of a body. */
export const notTaken = (
	keys: readonly MeasurementKey[],
	{ measurements }: { readonly measurements: Readonly<Partial<Record<MeasurementKey, unknown>>> }
): readonly MeasurementKey[] => keys.filter((key) => measurements[key] === undefined);

export const SUPPOSED = ['estimated', 'workedOut'] as const;
/** How a measurement came about that no tape took: estimated from all others, or worked out from one of them. */
export type Supposed = (typeof SUPPOSED)[number];
