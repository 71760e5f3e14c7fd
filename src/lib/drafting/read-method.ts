import {
	BLOCK_ALLOWANCES,
	checkAllowance,
	namedChoice,
	type Allowance,
	type Choice
} from '#shared/allowances.ts';
import { BadInput, cut, shown } from '#shared/bad-input.ts';
import { oneOf, parseLength, parsed, unknownName } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import { MEASUREMENT_KEYS, type MeasurementKey } from '#shared/measurements.ts';
import {
	methodFileSchema,
	methodWordsSchema,
	type MethodFile,
	type MethodWords,
	type StepFile
} from '#shared/method.ts';
import type { Language } from '#shared/speech/language.ts';
import { readNoun } from '#shared/speech/noun.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { type Mm } from '#shared/units.ts';
import { formulaKeys, type Formula } from './formula/formula.ts';
import { allowanceNames, parseFormula, type KnownNames } from './formula/parse.ts';
import { NUMBERS_ONLY } from './formula/sum.ts';
import { numberOf } from './formula/value.ts';
import type { Method } from './method.ts';
import { conditionFormulas, readConditions } from './read-conditions.ts';
import { dependenceFormulas, readStep, stepKeys, stepMakes, stepNeeds } from './steps/kinds.ts';
import { readTraced, withCarried } from './read-given.ts';
import type { FormulaReader, Step } from './steps/step-rules.ts';

/** Formulas of plain numbers may name nothing. */
const NO_NAMES: KnownNames = { allowances: [], points: [], lines: [] };

/** A method's own allowance, whose default is one that may be chosen. */
const readOwn = (
	key: string,
	file: MethodFile['allowances'][string],
	place: string,
	language: Language
): Allowance => {
	const where = `${place}: allowances.${key}`;
	const own = { key, noun: readNoun(file.label, language) };
	if (!('choices' in file)) {
		const [least, most] = file.range.map((text) => parseLength(text, 'cm', where)) as [Mm, Mm];
		const allowance = {
			...own,
			default: parseLength(file.default, 'cm', where),
			range: [least, most]
		} as const;
		checkAllowance(allowance, allowance.default, `${place}: allowances.`);
		return allowance;
	}
	const choices = Object.entries(file.choices).map(([name, { label, share }]): Choice => {
		const formula = parseFormula(share, `${where}.choices.${name}`, NO_NAMES, 'share');
		return { name, label, share: numberOf(formula, NUMBERS_ONLY) };
	});
	const usual = namedChoice({ ...own, default: 0, choices }, file.default, `${place}: allowances.`);
	return { ...own, default: usual, choices };
};

/** The block's allowances, those of the methods that are used, and a method's own. */
const readAllowances = (
	file: MethodFile,
	uses: Readonly<Record<string, Method>>,
	place: string,
	language: Language
): readonly Allowance[] => {
	const own = Object.entries(file.allowances).map(([key, each]): Allowance => {
		const where = `${place}: allowances.${key}`;
		if (BLOCK_ALLOWANCES.some((each) => each.key === key) || MEASUREMENT_KEYS.some((each) => each === key)) {
			throw new BadInput(where, message('reading', 'takenAllowance'));
		}
		return readOwn(key, each, place, language);
	});
	const inherited = Object.values(uses).flatMap(({ allowances }) => allowances);
	const taken = own.find(({ key }) => inherited.some((each) => each.key === key));
	if (taken)
		throw new BadInput(`${place}: allowances.${taken.key}`, message('reading', 'inheritedAllowance'));
	return [...new Map([...BLOCK_ALLOWANCES, ...inherited, ...own].map((each) => [each.key, each])).values()];
};

const stepPlace = (place: string, step: { readonly name: string }): string => `${place}: step ${step.name}`;

const allowanceIn = (
	key: string,
	file: MethodFile['allowances'][string],
	words: MethodWords
): MethodFile['allowances'][string] => {
	const label = words.allowances[key] ?? file.label;
	if (!('choices' in file)) return { ...file, label };
	const choices = Object.entries(file.choices).map(([name, each]) => [
		name,
		{ ...each, label: words.choices[key]?.[name] ?? each.label }
	]);
	return { ...file, label, choices: Object.fromEntries(choices) as typeof file.choices };
};

/** A method file with what it is called in another language in the place of its English; what has no such name keeps it. */
const inWords = (file: MethodFile, words: MethodWords): MethodFile => ({
	...file,
	name: words.name ?? file.name,
	called: words.called ?? file.called,
	steps: file.steps.map((step) => ({ ...step, label: words.steps[step.name] ?? step.label })),
	allowances: Object.fromEntries(
		Object.entries(file.allowances).map(([key, each]) => [key, allowanceIn(key, each, words)])
	),
	refusals: file.refusals.map((each) => ({
		...each,
		because: words.refusals[each.name] ?? each.because
	})),
	warnings: file.warnings.map((each) => ({
		...each,
		because: words.warnings[each.name] ?? each.because
	}))
});

/** A language, and what a method is called in it, where that is not the method file's own. */
export interface Told {
	readonly language: Language;
	/** The section `method` of a file of words as parsed, not yet checked, and the place that errors about it name. */
	readonly words?: { readonly place: string; readonly content: unknown } | undefined;
}

const readWords = ({ place, content }: NonNullable<Told['words']>): MethodWords =>
	parsed(methodWordsSchema, content, `${place}: `, 'method');

/** The method file's shape, or an error that names the step and the field. */
const parseFile = (input: unknown, place: string): MethodFile => {
	const steps = (input as { steps?: readonly ({ name?: unknown } | null)[] } | null)?.steps;
	return parsed(methodFileSchema, input, `${place}: `, 'method', (path) => {
		const [field, index, ...rest] = path;
		const step = field === 'steps' && typeof index === 'number' ? steps?.[index] : undefined;
		return step
			? `step ${shown(step.name ?? Number(index) + 1)}: ${rest.join('.')}`
			: path.map(String).join('.');
	});
};

const namesOf = (
	steps: readonly (StepFile | Step)[],
	allowances: readonly Allowance[],
	uses: Readonly<Record<string, Method>>,
	place: string
): KnownNames => {
	const seen = new Set<string>();
	for (const step of steps) {
		if (seen.has(step.name)) throw new BadInput(stepPlace(place, step), message('reading', 'twoSteps'));
		seen.add(step.name);
	}
	const made = (kind: 'point' | 'line'): string[] => [
		...steps.filter((step) => stepMakes(step) === kind).map(({ name }) => name),
		...Object.entries(uses).flatMap(([alias, used]) =>
			used.steps.filter((step) => stepMakes(step) === kind).map(({ name }) => `${alias}.${name}`)
		)
	];
	return {
		...allowanceNames(allowances),
		points: made('point'),
		lines: made('line')
	};
};

/** The named formulas of a method; one may name those before it. Throws BadInput for a name that is taken. */
const readAmounts = (
	amounts: MethodFile['amounts'],
	known: KnownNames,
	place: string
): Readonly<Record<string, Formula>> => {
	const read: Record<string, Formula> = {};
	for (const [key, text] of Object.entries(amounts)) {
		const where = `${place}: amounts.${key}`;
		if (known.allowances.includes(key) || MEASUREMENT_KEYS.some((each) => each === key))
			throw new BadInput(where, message('reading', 'takenAllowance'));
		read[key] = parseFormula(text, where, { ...known, amounts: read });
	}
	return read;
};

const checkNeeds = (step: Step, known: KnownNames, place: string): void => {
	const names = [...known.points, ...known.lines];
	for (const need of stepNeeds(step)) {
		if (!names.includes(need)) {
			throw new BadInput(
				stepPlace(place, step),
				message('reading', 'noSource', { need: cut(need), near: nearestName(need, names) })
			);
		}
	}
};

/** Puts each step after what it needs, keeping the file's order otherwise; a circle of steps is an error that shows it. */
const inOrder = (steps: readonly Step[], place: string): readonly Step[] => {
	const ordered: Step[] = [];
	const done = new Set<string>();
	const visit = (step: Step, trail: readonly string[]): void => {
		if (done.has(step.name)) return;
		const start = trail.indexOf(step.name);
		if (start >= 0) {
			const names = [...trail.slice(start), step.name];
			throw new BadInput(stepPlace(place, step), message('reading', 'stepsInCircle', { names }));
		}
		for (const need of stepNeeds(step)) {
			const other = steps.find((each) => each.name === need);
			if (other) visit(other, [...trail, step.name]);
		}
		done.add(step.name);
		ordered.push(step);
	};
	for (const step of steps) visit(step, []);
	return ordered;
};

/** Finds another method by its id, for one that uses it. */
export type FindMethod = (id: string) => Method | undefined;

/** The methods that a method or a garment uses, by the short names that it has for them. Throws BadInput for one that is not there. */
export const readUses = (
	uses: MethodFile['uses'],
	place: string,
	find: FindMethod
): Readonly<Record<string, Method>> =>
	Object.fromEntries(
		Object.entries(uses).map(([alias, id]) => {
			const method = find(id);
			if (!method) throw new BadInput(`${place}: uses.${alias}`, unknownName('method', id, []));
			return [alias, method];
		})
	);

/** The measurements that a method's steps and conditions name, and those of the methods it uses. */
const measurementsOf = (
	steps: readonly Step[],
	formulas: readonly Formula[],
	uses: Readonly<Record<string, Method>>
): readonly MeasurementKey[] => {
	const named = new Set([
		...steps.flatMap((step) => stepKeys(step, 'measurement')),
		...[...steps.flatMap(dependenceFormulas), ...formulas].flatMap((formula) =>
			formulaKeys(formula, 'measurement')
		),
		...Object.values(uses).flatMap(({ measurements }) => measurements)
	]);
	return MEASUREMENT_KEYS.filter((key) => named.has(key));
};

/**
 * Reads a method from parsed YAML or JSON. `place` (the file's name) begins every error; `find` gives
 * the methods that it uses. Names that no step makes, circles, unknown measurements and malformed
 * formulas are all found here, before any body is drafted. Names are read for one language. Throws BadInput.
 */
export const readMethod = (
	input: unknown,
	place: string,
	find: FindMethod = () => undefined,
	{ language, words }: Told = { language: 'en' }
): Method => {
	const written = parseFile(input, place);
	const file = words ? inWords(written, readWords(words)) : written;
	const uses = readUses(file.uses, place, find);
	const allowances = readAllowances(file, uses, place, language);
	const traced = readTraced(file.trace, uses, place);
	const own = withCarried(file.steps, traced, place, language);
	const names = namesOf([...traced, ...own], allowances, uses, place);
	const known = { ...names, amounts: readAmounts(file.amounts, names, place) };
	const read = (step: StepFile): Step => {
		const at = (field: string): string => `${stepPlace(place, step)}: ${field}`;
		const formula: FormulaReader = Object.assign(
			(text: string, field: string, wanted?: 'length' | 'share') =>
				parseFormula(text, at(field), known, wanted),
			{ quantity: (text: string, field: string) => parseLength(text, 'cm', at(field)) }
		);
		const done = readStep(step, formula, language);
		checkNeeds(done, known, place);
		return done;
	};
	const steps = inOrder([...traced, ...own.map(read)], place);
	for (const line of file.outline) oneOf('line', line, known.lines, `${place}: outline`);
	if (file.fold !== undefined) oneOf('line', file.fold, file.outline, `${place}: fold`);
	const refusals = readConditions(file.refusals, known, `${place}: refusals`);
	const warnings = readConditions(file.warnings, known, `${place}: warnings`);
	const formulas = [...refusals, ...warnings].flatMap(conditionFormulas);
	return {
		id: file.id,
		name: file.name,
		called: file.called === undefined ? { name: file.name } : readNoun(file.called, language),
		steps,
		allowances,
		measurements: measurementsOf(steps, formulas, uses),
		outline: file.outline,
		fold: file.fold,
		refusals,
		warnings,
		uses,
		twins: [],
		practised: file.practised
	};
};
