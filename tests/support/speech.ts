import { checking as enChecking } from '#shared/speech/en/checking.ts';
import { first as enFirst } from '#shared/speech/en/first.ts';
import { later as enLater } from '#shared/speech/en/later.ts';
import { measuring as enMeasuring } from '#shared/speech/en/measuring.ts';
import { school as enSchool } from '#shared/speech/en/school.ts';
import { shell as enShell } from '#shared/speech/en/shell.ts';
import { checking as esChecking } from '#shared/speech/es/checking.ts';
import { first as esFirst } from '#shared/speech/es/first.ts';
import { later as esLater } from '#shared/speech/es/later.ts';
import { measuring as esMeasuring } from '#shared/speech/es/measuring.ts';
import { school as esSchool } from '#shared/speech/es/school.ts';
import { shell as esShell } from '#shared/speech/es/shell.ts';
import type { Language } from '#shared/speech/language.ts';
import { speechOf, type Speech } from '#shared/speech/speech.ts';
import type { Unit } from '#shared/units.ts';

const AREAS = {
	en: { ...enFirst, ...enLater, ...enShell, ...enSchool, ...enChecking, ...enMeasuring },
	es: { ...esFirst, ...esLater, ...esShell, ...esSchool, ...esChecking, ...esMeasuring }
} as const;

/** A language with everything that can be said in it, for tests. */
export const speechFor = (language: Language, unit: Unit = 'cm'): Speech =>
	speechOf({ language, areas: AREAS[language] }, unit);

/** English in centimetres. */
export const english: Speech = speechFor('en');
