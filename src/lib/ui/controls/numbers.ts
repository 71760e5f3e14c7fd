import { capital } from '#shared/speech/en/grammar.ts';
import { allowanceNoun, measurementNoun } from '#shared/speech/en/nouns.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { printLength, type Mm, type Unit } from '#shared/units.ts';
import type { Body } from '#shared/body.ts';
import type { GivenLength } from '#drafting/explain.ts';
import type { Method } from '#drafting/method.ts';

/** A number under its name. */
export interface NamedNumber {
	readonly words: string;
	readonly value: string;
}

/** Which numbers are shown. */
interface Wanted {
	readonly measurements: readonly MeasurementKey[];
	readonly allowances: readonly string[];
	readonly givens: readonly GivenLength[];
}

/** A body's measurements, its allowances or the usual ones, and lengths taken from the draft, each under its name. */
export const namedNumbers = (
	method: Method,
	body: Body,
	unit: Unit,
	{ measurements, allowances, givens }: Wanted
): readonly NamedNumber[] => {
	const named = ({ name }: Noun, length: Mm | undefined): NamedNumber => ({
		words: capital(name),
		value: length === undefined ? 'not measured' : printLength(length, unit)
	});
	return [
		...measurements.map((key) => named(measurementNoun(key), body.measurements[key])),
		...method.allowances
			.filter(({ key }) => allowances.includes(key))
			.map(({ key, noun, default: usual }) =>
				named(allowanceNoun({ key, noun }), body.allowances[key] ?? usual)
			),
		...givens.map(({ noun, length }) => named(noun, length))
	];
};
