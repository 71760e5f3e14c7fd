import type { Unit } from '../units.ts';
import { first } from './en/first.ts';
import { later } from './en/later.ts';
import { shell } from './en/shell.ts';
import { speechOf, type Speech } from './speech.ts';

const MADE = new Map<Unit, Speech>();

/** English, for callers that are not handed a speech yet. It goes when the last of them is. */
export const englishIn = (unit: Unit): Speech => {
	const made = MADE.get(unit) ?? speechOf({ language: 'en', areas: { ...first, ...later, ...shell } }, unit);
	MADE.set(unit, made);
	return made;
};
