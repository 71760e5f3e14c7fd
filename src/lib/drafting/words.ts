import { offsetIn } from '#shared/speech/en/ways.ts';
import { mm, type Unit } from '#shared/units.ts';
import { voiceOf } from '#shared/speech/voice.ts';
import type { SheetPoint } from '#geometry/point.ts';

/** English, for callers that are not handed a speech yet. */

export { WAYS as COMPASS_WORDS } from '#shared/speech/en/ways.ts';
export { capital as capitalised } from '#shared/speech/en/grammar.ts';

/** "A, B and C". */
export const listed = (names: readonly string[]): string => voiceOf('en', 'mm').list(names);

/** The way from one place to another in the drafter's terms. */
export const offsetWords = (from: SheetPoint, to: SheetPoint, unit: Unit): string =>
	offsetIn(voiceOf('en', unit), { across: mm(to.x - from.x), down: mm(to.y - from.y) });
