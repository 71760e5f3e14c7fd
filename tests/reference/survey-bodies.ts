import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';

/** Ten measurements in centimetres. */
export interface Figure {
	readonly bust: number;
	readonly waist: number;
	readonly hip: number;
	readonly neck: number;
	readonly shoulderWidth: number;
	readonly backLength: number;
	readonly waistToHip: number;
	readonly frontLength: number;
	readonly bustHeight: number;
	readonly bustSpan: number;
}

/** Which of the survey's samples. */
export type Sample = 'women' | 'men';
/** A person of the survey as the file has it, in centimetres. */
export type SurveyRow = Readonly<Record<string, string>>;

/** How much longer the tape lies across the back than the caliper's straight breadth between the shoulder points, in cm. */
const TAPE_OVER_CALIPER = 2;
/** How much higher the side neck point lies than the nape, in cm. */
const SIDE_NECK_OVER_NAPE = 2;
/** The block's neck allowance and front neck drop, in cm: with a sixth of the neck they are the front neck's depth. */
const FRONT_NECK_ALLOWANCES = 2;

/** A person of the survey by the ten measurements; what stands in for what is told in its README. */
export const figureOf = (row: SurveyRow): Figure => {
	const cm = (column: string): number => {
		const value = Number(row[column]);
		if (!(value > 0)) throw new Error(`the survey has no ${column} in ${JSON.stringify(row)}`);
		return value;
	};
	return {
		bust: cm('bust'),
		waist: cm('waist_natural'),
		hip: cm('hip'),
		neck: cm('neck_base'),
		shoulderWidth: cm('biacromial') + TAPE_OVER_CALIPER,
		backLength: cm('back_waist_natural') + SIDE_NECK_OVER_NAPE,
		waistToHip: cm('natural_waist_to_hip'),
		frontLength: cm('front_waist_natural_from_front_neck') + cm('neck_base') / 6 + FRONT_NECK_ALLOWANCES,
		bustHeight: cm('neck_to_bustpoint'),
		bustSpan: cm('bustpoint_span')
	};
};

/** The 300 women, or the 300 men, of shared/survey, in the order of the file. */
export const surveyRows = (sample: Sample): readonly SurveyRow[] => {
	const file = fileURLToPath(new URL(`../../shared/survey/${sample}-1988-sample.csv`, import.meta.url));
	return parse(readFileSync(file, 'utf8'), { columns: true });
};

/** The 300 women of shared/survey, in the order of the file. */
export const surveyFigures = (): readonly Figure[] => surveyRows('women').map(figureOf);
