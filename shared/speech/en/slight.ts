import { UNSPOKEN } from '../../tolerances.ts';
import { mm, type Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';

/** How far and which way a place lies from where it should; `limit` is how far it might have lain. */
export interface Off {
	readonly across: Mm;
	readonly down: Mm;
	readonly limit?: Mm | undefined;
}

/** A small difference; less than is worth a number is a hair. */
export const smallIn = (v: Voice, length: Mm): string => v.small(length) ?? 'a hair';

/** A size that is over its limit, never said as though it were just the limit. */
export const overIn = (v: Voice, size: Mm, limit: Mm | undefined): string => {
	const said = smallIn(v, size);
	return limit !== undefined && size > limit && said === smallIn(v, limit) ? `a little over ${said}` : said;
};

/** "9 mm too far out, 2 mm too low". */
export const wayOff = (v: Voice, { across, down, limit }: Off): string => {
	const spoken = [
		{ length: across, ahead: 'too far out', back: 'too far in' },
		{ length: down, ahead: 'too low', back: 'too high' }
	].filter(({ length }) => Math.abs(length) >= UNSPOKEN);
	// What keeps its limit is not worth a word beside what does not.
	const over = spoken.filter(({ length }) => limit !== undefined && Math.abs(length) > limit);
	const told = over.length > 0 ? over : spoken;
	const words = told.map(({ length, ahead, back }) => {
		const size = overIn(v, mm(Math.abs(length)), told.length === 1 ? limit : undefined);
		return `${size} ${length > 0 ? ahead : back}`;
	});
	return words.join(', ') || 'a hair off';
};
