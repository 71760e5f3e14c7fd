import type { MeasurementKey } from '../measurements.ts';
import type { People } from '../plausible/people.ts';

/** Names the tables; what they are called and where they come from is said in `sizes` of each language. */
export const SIZE_TABLES = ['women', 'men', 'old'] as const;
export type SizeTableId = (typeof SIZE_TABLES)[number];

/** A table of sizes as its source has it. */
export interface SizeTable {
	/** By whose survey the lengths that it lacks are estimated. */
	readonly people: People;
	/** Which measurements it gives, and in what unit its source gives them. */
	readonly unit: 'cm' | 'in';
	readonly columns: readonly MeasurementKey[];
	/** What each size is called, and its measurements in the order of the columns. */
	readonly sizes: Readonly<Record<string, readonly number[]>>;
}

/**
 * Women, men: the body girths of EN 13402-3 (4 cm apart, then 5 or 6), **from memory**: the standard was not read again. It names a size by
 * its girths in centimetres; the numbers are those of the trade on the Continent (half the bust less 6, half the chest), from memory too,
 * which go on by twos where the girths go on by more than four.
 *
 * Old: I. Rosenfeld, The Practical Designer, New York 1911, lesson 142: one size, read off a scan. "Waist 2.5" is printed; 25 is meant.
 */
const TABLES: Readonly<Record<SizeTableId, SizeTable>> = {
	women: {
		people: 'women',
		unit: 'cm',
		columns: ['bust', 'waist', 'hip'],
		sizes: {
			'32': [76, 60, 84],
			'34': [80, 64, 88],
			'36': [84, 68, 92],
			'38': [88, 72, 96],
			'40': [92, 76, 100],
			'42': [96, 80, 104],
			'44': [100, 84, 108],
			'46': [104, 88, 112],
			'48': [110, 94, 117],
			'50': [116, 100, 122],
			'52': [122, 106, 127],
			'54': [128, 112, 132],
			'56': [134, 118, 137],
			'58': [140, 124, 142],
			'60': [146, 130, 147],
			'62': [152, 136, 152]
		}
	},
	men: {
		people: 'men',
		unit: 'cm',
		columns: ['bust', 'waist'],
		sizes: {
			'42': [84, 72],
			'44': [88, 76],
			'46': [92, 80],
			'48': [96, 84],
			'50': [100, 88],
			'52': [104, 92],
			'54': [108, 96],
			'56': [112, 100],
			'58': [118, 106],
			'60': [124, 112],
			'62': [130, 118],
			'64': [136, 124]
		}
	},
	old: {
		people: 'women',
		unit: 'in',
		columns: ['bust', 'waist', 'napeToWaist'],
		sizes: { '36': [39, 25, 15.5] }
	}
};

/** The table of this name. */
export const sizeTable = (id: SizeTableId): SizeTable => TABLES[id];
