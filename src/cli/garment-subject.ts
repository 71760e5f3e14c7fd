import { BadInput } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { FORMATS, patternFile } from '#exports/files/pattern-file.ts';
import { patternJson } from '#exports/table/pattern-json.ts';
import type { Garment } from '#garment/garment.ts';
import { makePattern } from '#garment/pattern.ts';
import { toileOf } from '#garment/toile.ts';
import { readMaker } from './edge-allowances.ts';
import { patternTable } from './pattern-table.ts';
import { checkComplete, reasons } from './refusals.ts';
import { withCures } from './wear.ts';
import type { Subject } from './subject.ts';

/** A garment's pattern, as a command makes it. */
export const garmentSubject = (garment: Garment, speech: Speech): Subject => ({
	id: garment.id,
	measurements: garment.measurements,
	allowances: garment.allowances,
	formats: FORMATS,
	pieces: garment.pieces.map(({ key, number, name }) => ({ key, fileName: `${number} ${name}` })),
	toile: garment.toile ? () => garmentSubject(toileOf(garment, speech), speech) : undefined,
	read: (file) => readMaker(file, garment, speech),
	work: ({ body, edges }, place) => {
		checkComplete(garment, body, place);
		const choices = { allowances: {}, edges };
		const made = makePattern(garment, body, choices);
		if (made.kind === 'refused') throw new BadInput(place, reasons(made.refusals, body, speech));
		const own = speech.inUnit(body.unit);
		const wear = () => withCures(made.pattern.wear, garment, body, choices);
		return {
			json: () => patternJson(made.pattern, own, wear()),
			table: () => patternTable(garment, made.pattern, own, wear()),
			file: (request) =>
				patternFile({ garment, pattern: made.pattern, body, choices }, { ...request, speech: own })
		};
	}
});
