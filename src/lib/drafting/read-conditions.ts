import { BadInput } from '#shared/bad-input.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import type { ConditionFile } from '#shared/method.ts';
import { oneOf, parseLength } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import { type Mm } from '#shared/units.ts';
import type { Condition, Dependence, LengthBounds, Measure } from './conditions.ts';
import type { Formula } from './formula/formula.ts';
import { parseFormula, type KnownNames } from './formula/parse.ts';

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
	for (const point of between) oneOf('point', point, known.points, place);
	return { way, between };
};

const readBounds = ({ atLeast, moreThan, atMost }: ConditionFile['need'], place: string): LengthBounds => {
	if (atLeast === undefined && moreThan === undefined && atMost === undefined)
		throw new BadInput(place, message('reading', 'needsBound'));
	const read = (text: string | undefined): Mm | undefined =>
		text === undefined ? undefined : parseLength(text, 'cm', place);
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
		for (const key of odds) oneOf<string>('measurement', key, MEASUREMENT_KEYS, where);
		return {
			...readDependence(dependence, known, where),
			name,
			measure: readMeasure(need, known, where),
			bounds: readBounds(need, where),
			odds,
			because
		};
	});

/** Every formula that a condition is worked from. */
export const conditionFormulas = ({ measure, when, unless }: Condition): readonly Formula[] => {
	const value = measure.way === 'value' ? measure.formula : undefined;
	return [value, when, unless].filter((formula) => formula !== undefined);
};
