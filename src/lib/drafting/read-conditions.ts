import { BadInput } from '#shared/bad-input.ts';
import { isMeasurementKey, MEASUREMENT_KEYS } from '#shared/measurements.ts';
import type { ConditionFile, MethodFile } from '#shared/method.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import type { Language } from '#shared/speech/language.ts';
import { readNoun } from '#shared/speech/noun.ts';
import { parseLength, UnreadableLength, type Mm } from '#shared/units.ts';
import type { ComparisonRule, Condition, Dependence, LengthBounds, Measure } from './conditions.ts';
import type { Formula } from './formula/formula.ts';
import { parseFormula, type KnownNames } from './formula/parse.ts';

/** Reads a length with its unit out of a method file. Throws BadInput at `place`. */
export const readQuantity = (text: string, place: string): Mm => {
	try {
		return parseLength(text, 'cm');
	} catch (error) {
		if (error instanceof UnreadableLength) throw new BadInput(place, error.message);
		throw error;
	}
};

const readDependence = (
	{ when, unless }: { when?: string | undefined; unless?: string | undefined },
	known: KnownNames,
	place: string
): Dependence => ({
	when: when === undefined ? undefined : parseFormula(when, `${place}: when`, known),
	unless: unless === undefined ? undefined : parseFormula(unless, `${place}: unless`, known)
});

const readMeasure = (need: ConditionFile['need'], known: KnownNames, place: string): Measure => {
	if ('value' in need) return { way: 'value', formula: parseFormula(need.value, `${place}: value`, known) };
	const [way, between] =
		'across' in need ? (['across', need.across] as const) : (['down', need.down] as const);
	for (const point of between) {
		if (!known.points.includes(point))
			throw new BadInput(place, `there is no point "${point}"${didYouMean(point, known.points)}`);
	}
	return { way, between };
};

const readBounds = ({ atLeast, moreThan, atMost }: ConditionFile['need'], place: string): LengthBounds => {
	if (atLeast === undefined && moreThan === undefined && atMost === undefined)
		throw new BadInput(place, 'a need says atLeast, moreThan or atMost');
	const read = (text: string | undefined): Mm | undefined =>
		text === undefined ? undefined : readQuantity(text, place);
	return { atLeast: read(atLeast), moreThan: read(moreThan), atMost: read(atMost) };
};

/** Reads the refusals or the warnings of a method file. Throws BadInput. */
export const readConditions = (
	files: readonly ConditionFile[],
	known: KnownNames,
	place: string
): readonly Condition[] =>
	files.map(({ name, need, odds, because, ...dependence }) => {
		const where = `${place}: ${name}`;
		for (const key of odds) {
			if (!isMeasurementKey(key))
				throw new BadInput(where, `there is no measurement "${key}"${didYouMean(key, MEASUREMENT_KEYS)}`);
		}
		return {
			...readDependence(dependence, known, where),
			name,
			measure: readMeasure(need, known, where),
			bounds: readBounds(need, where),
			odds,
			because
		};
	});

/** Reads the comparisons of a method file. Throws BadInput. */
export const readComparisons = (
	files: MethodFile['comparisons'],
	known: KnownNames,
	place: string,
	language: Language
): readonly ComparisonRule[] =>
	files.map(({ name, label, difference, within, ...dependence }) => {
		const where = `${place}: ${name}`;
		return {
			...readDependence(dependence, known, where),
			name,
			label: readNoun(label, language),
			difference: parseFormula(difference, `${where}: difference`, known),
			within: readQuantity(within, where)
		};
	});

/** Every formula that a condition or a comparison is worked from. */
export const conditionFormulas = (condition: Condition | ComparisonRule): readonly Formula[] => {
	const own = 'difference' in condition ? [condition.difference] : [];
	const value =
		'measure' in condition && condition.measure.way === 'value' ? [condition.measure.formula] : [];
	return [...own, ...value, condition.when, condition.unless].filter((formula) => formula !== undefined);
};
