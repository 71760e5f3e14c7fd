import leven from 'leven';
import { renamed } from './renamed.ts';

/** Longer than any name is: comparing letters takes as long as both names multiplied. */
const LONGEST_NAME = 60;

/** The known name nearest to an unknown one, or that of what is now called otherwise; undefined where none is near enough to be a slip. */
export const nearestName = (unknown: string, known: Iterable<string>): string | undefined => {
	if (unknown.length > LONGEST_NAME) return undefined;
	const names = [...known];
	const now = renamed(unknown);
	if (now !== undefined && names.includes(now)) return now;
	const limit = Math.max(2, Math.ceil(unknown.length / 2));
	const near = names
		.map((name) => ({ name, distance: leven(unknown.toLowerCase(), name.toLowerCase()) }))
		.filter(({ distance }) => distance <= limit);
	return near.sort((a, b) => a.distance - b.distance)[0]?.name;
};
