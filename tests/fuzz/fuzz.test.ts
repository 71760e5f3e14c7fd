import { expect, it } from 'vitest';
import { fuzzed } from './fuzz.ts';
import { INPUTS } from './inputs.ts';

/** Milliseconds in which any input is read, with room for a busy machine. */
const HANG_MS = 2000;
/** Of each kind a thousandth of what `npm run fuzz` tries, and some more of the rare ones. */
const countOf = (ofAMillion: number): number => Math.max(60, ofAMillion / 1000);

it.each(INPUTS)('whatever is written, $name are read or refused, and hold nothing up', (input) => {
	const { faults, slow } = fuzzed(input, countOf(input.ofAMillion), 2028, HANG_MS);
	expect(faults).toEqual([]);
	expect(slow).toEqual([]);
});
