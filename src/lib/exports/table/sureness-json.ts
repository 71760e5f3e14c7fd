import type { MeasurementKey } from '#shared/measurements.ts';
import type { Mm } from '#shared/units.ts';
import type { Method } from '#drafting/method.ts';
import type { DraftSureness, Sureness } from '#drafting/sureness/how-sure.ts';
import { COVERAGE } from '#drafting/sureness/spread.ts';
import { placeJson, rounded } from './json-numbers.ts';

const sureJson = ({ reach, oval, by, bends, there }: Sureness): object => ({
	within: rounded(reach),
	oval: { length: rounded(oval.length), width: rounded(oval.width), turn: rounded(oval.turn) },
	by: Object.fromEntries(by.map(({ key, share }) => [key, rounded(share)])),
	tried: bends,
	there: rounded(there)
});

/** How sure everything of a draft is, as one line of JSON: millimetres, and radians for the turn of an oval from across toward down. */
export const surenessJson = (
	method: Method,
	body: string,
	{ points, lines, drafted }: DraftSureness,
	errorOf: (key: MeasurementKey) => Mm
): string =>
	JSON.stringify({
		method: method.id,
		body,
		unit: 'mm',
		coverage: COVERAGE,
		readingErrors: Object.fromEntries(method.measurements.map((key) => [key, rounded(errorOf(key))])),
		drafted: rounded(drafted),
		points: Object.fromEntries(Object.entries(points).map(([name, sure]) => [name, sureJson(sure)])),
		lines: Object.fromEntries(
			Object.entries(lines).map(([name, { length, along }]) => [
				name,
				{
					length: sureJson(length),
					along: along.map(({ at, share, sureness }) => ({
						at: placeJson(at),
						share: rounded(share),
						...sureJson(sureness)
					}))
				}
			])
		)
	});
