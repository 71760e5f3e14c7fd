import { BadInput, shown } from '#shared/bad-input.ts';
import { readLength } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import { mm, type Mm, type Unit } from '#shared/units.ts';
import { READING_ERROR, type Tape } from './tapes.ts';

/** What a tape said of one distance. */
export interface Read {
	/** The mean of all its readings. */
	readonly length: Mm;
	/** How many readings there are. */
	readonly times: number;
}

/** Two readings of one distance are further apart than this many errors of one only once in 500 times: 3.09 times the root of 2. */
const APART = 4.4;

/** Readings of one distance as they stand in one text: "38.4; 38.6". */
export const readingsIn = (text: string): readonly string[] =>
	text
		.split(';')
		.map((each) => each.trim())
		.filter((each) => each !== '');

/**
 * Reads what was written of one distance, once or several times.
 *
 * @param unit what a bare number is in
 * @param place what an error names
 * @throws BadInput for what is no length, or is nothing, and for readings that differ by more than the tape explains
 */
export const readTaking = (written: readonly unknown[], unit: Unit, place: string, tape: Tape): Read => {
	const lengths = written.map((each) => {
		const length = readLength(each, unit, place);
		if (length <= 0) throw new BadInput(place, message('input', 'notLength', { seen: shown(each) }));
		return length;
	});
	const by = mm(Math.max(...lengths) - Math.min(...lengths));
	if (by > APART * READING_ERROR[tape]) throw new BadInput(place, message('tape', 'apart', { by }));
	return { length: mm(lengths.reduce((sum, each) => sum + each, 0) / lengths.length), times: lengths.length };
};
