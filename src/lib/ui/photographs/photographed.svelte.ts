import { BadInput } from '#shared/bad-input.ts';
import { parseLength } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import { CHECK_LINE, type MarkedPaper } from '#photograph/marker-places.ts';
import type { Unit } from '#shared/units.ts';
import { readingOf } from '#photograph/reading.ts';
import { rectify } from '#photograph/rectify.ts';
import type { Sightings } from '#photograph/sightings.ts';
import { PictureReader } from './picture-reader.svelte.ts';

/** Printers stretch by a percent or two: a tenth is a slip of the pen. */
const STRETCH = 0.1;

/** A picture of a sheet, what was found in it, and how the sheet is seen. */
export class Photographed {
	readonly reader = new PictureReader();
	/** Which markers are used: it says how long their check line is. */
	sheet: MarkedPaper = $state('cards');
	/** What the check line measures over what it should. */
	scale = $state(1);
	/** Four points whose distances are known, where there are no markers. */
	four: Sightings | undefined = $state.raw();

	readonly looked = $derived(this.reader.stand.kind === 'looked' ? this.reader.stand : undefined);
	readonly reading = $derived(this.looked && readingOf(this.looked.looked, this.scale));
	readonly rectified = $derived(this.reading?.rectified ?? (this.four && rectify(this.four)));

	/** Keeps what the check line measures; nothing is what it should. Throws BadInput for what is no length near that. */
	measured(text: string, unit: Unit): void {
		const should = CHECK_LINE[this.sheet];
		const length = text === '' ? should : parseLength(text, unit);
		if (Math.abs(length / should - 1) > STRETCH) throw new BadInput('', message('photograph', 'notALength'));
		this.scale = length / should;
	}
}
