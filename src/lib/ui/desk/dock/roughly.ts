import { MM_PER, mm, type Mm, type Unit } from '#shared/units.ts';

/** What a length is rounded to, from which size on: so coarsely that it tells where to look and not what to put. */
const STEPS: Readonly<Record<'cm' | 'in', readonly (readonly [from: number, to: number])[]>> = {
	cm: [
		[100, 50],
		[30, 10],
		[0, 5]
	],
	in: [
		[4 * MM_PER.in, 2 * MM_PER.in],
		[MM_PER.in, MM_PER.in / 2],
		[0, MM_PER.in / 4]
	]
};

/** A length as one would say it from across the room: to 5 cm, below 10 cm to 1 cm; in inches to 2, below 4 to a half. */
export const roughly = (length: Mm, unit: Unit): Mm => {
	const step = STEPS[unit === 'in' ? 'in' : 'cm'].find(([from]) => length >= from)?.[1] ?? 1;
	return mm(Math.max(1, Math.round(length / step)) * step);
};
