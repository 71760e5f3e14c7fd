import type { MeasurementKey } from '../measurements.ts';

/** What stands in for a measurement: shares of the survey's columns, so many centimetres more, and how far that may be out. */
export interface StandIn {
	readonly columns: Readonly<Record<string, number>>;
	readonly more: number;
	/** Standard deviation of what the tape would have read about what stands in for it, in cm. Common practice, no source. */
	readonly loose: number;
}

/** Measurements of which the survey took something. */
export type SurveyedKey = Exclude<MeasurementKey, 'acrossChest'>;

/** How much longer the tape lies across the back than the caliper's straight breadth, in cm. */
const TAPE_OVER_CALIPER = 2;
/** How much higher the side neck point lies than the nape, in cm. */
const SIDE_NECK_OVER_NAPE = 2;
/** With a sixth of the neck these two allowances of the block, in cm, are how deep the front neck lies. */
const NECK_ALLOWANCE_AND_DROP = 2;
/** How much longer the way from the waist over the hip to the floor is than the waist's height, in cm. */
const WAY_OVER_HIP = 1;

const column = (name: string, more = 0, loose = 0): StandIn => ({ columns: { [name]: 1 }, more, loose });

/** The survey did not take all that a draft needs. shared/survey/README.md says why each of these stands in. */
export const STAND_INS: Readonly<Record<SurveyedKey, StandIn>> = {
	bust: column('bust'),
	waist: column('waist_natural'),
	hip: column('hip'),
	neck: column('neck_base'),
	shoulderWidth: column('biacromial', TAPE_OVER_CALIPER, 0.6),
	backLength: column('back_waist_natural', SIDE_NECK_OVER_NAPE, 0.5),
	waistToHip: column('natural_waist_to_hip'),
	frontLength: {
		columns: { front_waist_natural_from_front_neck: 1, neck_base: 1 / 6 },
		more: NECK_ALLOWANCE_AND_DROP,
		loose: 0.8
	},
	bustHeight: column('neck_to_bustpoint'),
	bustSpan: column('bustpoint_span'),
	napeToWaist: column('back_waist_natural'),
	shoulderLength: column('shoulder_length'),
	shoulderDrop: { columns: { side_neck_height: 1, acromion_height: -1 }, more: 0, loose: 0 },
	acrossBack: column('back_width_fold'),
	scyeDepth: column('scye_depth'),
	upperBust: column('upper_bust'),
	underBust: column('under_bust'),
	upperArm: column('upper_arm'),
	armLength: column('sleeve_outseam', 0, 0.6),
	wrist: column('wrist'),
	sideWaistToFloor: column('waist_height_natural', WAY_OVER_HIP, 0.5)
};

export const SURVEYED_KEYS = Object.keys(STAND_INS) as readonly SurveyedKey[];

/** Measurements that stand in the survey only as something like them. */
export const LIKENESSES: readonly SurveyedKey[] = SURVEYED_KEYS.filter((key) => STAND_INS[key].loose > 0);

/** Whether the survey took a measurement, or something like it. */
export const isSurveyed = (key: MeasurementKey): key is SurveyedKey => Object.hasOwn(STAND_INS, key);
