import { parseLength } from '#shared/reading.ts';
import type { Voice } from '#shared/speech/voice.ts';
import { mm, MM_PER, PRINTED_PARTS, type Mm } from '#shared/units.ts';

/** Two lengths nearer than this are written alike: a hundredth of a millimetre is less than a cutter can see. */
const ALIKE: Mm = mm(0.01);

/** A length as it stands in a field: in the coarsest parts of its unit that say it truly. */
export const writtenLength = (length: Mm, voice: Voice): string => {
	const written = PRINTED_PARTS[voice.unit].map((parts) => voice.bare(length, parts));
	return (
		written.find((text) => Math.abs(parseLength(text, voice.unit) - length) < ALIKE) ?? written.at(-1) ?? ''
	);
};

/** The step of a slider or an arrow key: half a centimetre is too coarse for a seam, a sixteenth of an inch fine enough. */
export const SLIDER_STEP: Readonly<Record<'cm' | 'in', Mm>> = { cm: mm(1), in: mm(MM_PER.in / 16) };
