import { UNSPOKEN } from '../../tolerances.ts';
import { mm, type Mm } from '../../units.ts';
import type { overIn as englishOver, smallIn as englishSmall, wayOff as englishWay } from '../en/slight.ts';
import type { Voice } from '../voice.ts';

/** A small difference; less than is worth a number is «un pelo». */
export const smallIn: typeof englishSmall = (v, length) => v.small(length) ?? 'un pelo';

/** A size that is over its limit, never said as though it were just the limit. */
export const overIn: typeof englishOver = (v, size, limit) => {
	const said = smallIn(v, size);
	return limit !== undefined && size > limit && said === smallIn(v, limit) ? `algo más de ${said}` : said;
};

/** «9 mm demasiado hacia fuera y 2 mm demasiado abajo»: after «está». */
export const wayOff: typeof englishWay = (v, { across, down, limit }) => {
	const spoken = [
		{ length: across, ahead: 'demasiado hacia fuera', back: 'demasiado hacia dentro' },
		{ length: down, ahead: 'demasiado abajo', back: 'demasiado arriba' }
	].filter(({ length }) => Math.abs(length) >= UNSPOKEN);
	// What keeps its limit is not worth a word beside what does not.
	const over = spoken.filter(({ length }) => limit !== undefined && Math.abs(length) > limit);
	const told = over.length > 0 ? over : spoken;
	const words = told.map(({ length, ahead, back }) => {
		const size = overIn(v, mm(Math.abs(length)), told.length === 1 ? limit : undefined);
		return `${size} ${length > 0 ? ahead : back}`;
	});
	return v.list(words) || 'a un pelo de su sitio';
};

/** «13 cm hacia fuera», «13 cm hacia dentro»: how far out a place is, which no one says with a minus. */
export const farOut = (v: Voice, across: Mm): string =>
	`${v.length(mm(Math.abs(across)))} hacia ${across < 0 ? 'dentro' : 'fuera'}`;

/** «4 cm hacia abajo», «4 cm hacia arriba». */
export const farDown = (v: Voice, down: Mm): string =>
	`${v.length(mm(Math.abs(down)))} hacia ${down < 0 ? 'arriba' : 'abajo'}`;
