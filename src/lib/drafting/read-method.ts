import { BLOCK_ALLOWANCES, checkAllowance, type Allowance } from '#shared/allowances.ts';
import { BadInput, shown } from '#shared/bad-input.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { methodFileSchema, type StepFile } from '#shared/method.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import { parseLength, UnreadableLength, type Mm } from '#shared/units.ts';
import type { z } from 'zod';
import { parseFormula, type KnownNames } from './formula/parse.ts';
import type { Method, RefusalRule } from './method.ts';
import { readStep, stepKeys, stepMakes, stepNeeds } from './steps/kinds.ts';
import type { FormulaReader, Step } from './steps/step-rules.ts';

type MethodFile = z.infer<typeof methodFileSchema>;

const quantity = (text: string, place: string): Mm => {
	try {
		return parseLength(text, 'cm');
	} catch (error) {
		if (error instanceof UnreadableLength) throw new BadInput(place, error.message);
		throw error;
	}
};

const readAllowances = (file: MethodFile, place: string): readonly Allowance[] => {
	const own = Object.entries(file.allowances).map(([key, { label, ...values }]): Allowance => {
		const where = `${place}: allowances.${key}`;
		if (BLOCK_ALLOWANCES.some((each) => each.key === key) || MEASUREMENT_KEYS.some((each) => each === key)) {
			throw new BadInput(where, 'this name is taken by another allowance or by a measurement');
		}
		const [least, most] = values.range.map((text) => quantity(text, where)) as [Mm, Mm];
		const allowance = {
			key,
			words: label,
			default: quantity(values.default, where),
			range: [least, most]
		} as const;
		checkAllowance(allowance, allowance.default, `${place}: allowances.`);
		return allowance;
	});
	return [...BLOCK_ALLOWANCES, ...own];
};

const stepPlace = (place: string, step: { readonly name: string }): string => `${place}: step ${step.name}`;

/** The method file's shape, or an error that names the step and the field. */
const parseFile = (input: unknown, place: string): MethodFile => {
	const parsed = methodFileSchema.safeParse(input);
	if (parsed.success) return parsed.data;
	const issue = parsed.error.issues[0];
	const path = issue?.path ?? [];
	const seen = path.reduce<unknown>(
		(value, part) =>
			value && typeof value === 'object' ? (value as Record<PropertyKey, unknown>)[part] : undefined,
		input
	);
	const steps = (input as { steps?: readonly { name?: unknown }[] } | null)?.steps;
	const step = path[0] === 'steps' && typeof path[1] === 'number' ? steps?.[path[1]] : undefined;
	const named = step
		? `step ${shown(step.name ?? Number(path[1]) + 1)}: ${path.slice(2).join('.')}`
		: path.join('.');
	throw new BadInput(
		`${place}: ${named || 'method'}`,
		`${issue?.message ?? 'not a method'}; seen: ${shown(seen)}`
	);
};

const namesOf = (file: MethodFile, allowances: readonly Allowance[], place: string): KnownNames => {
	const seen = new Set<string>();
	for (const step of file.steps) {
		if (seen.has(step.name)) throw new BadInput(stepPlace(place, step), 'another step has this name already');
		seen.add(step.name);
	}
	const made = (kind: 'point' | 'line'): string[] =>
		file.steps.filter((step) => stepMakes(step) === kind).map((step) => step.name);
	return { allowances: allowances.map((each) => each.key), points: made('point'), lines: made('line') };
};

const checkNeeds = (step: Step, known: KnownNames, place: string): void => {
	const names = [...known.points, ...known.lines];
	for (const need of stepNeeds(step)) {
		if (!names.includes(need)) {
			throw new BadInput(
				stepPlace(place, step),
				`it starts from "${need}", which no step makes${didYouMean(need, names)}`
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
			const circle = [...trail.slice(start), step.name].join(' needs ');
			throw new BadInput(stepPlace(place, step), `these steps go round in a circle: ${circle}`);
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

const readRefusals = (file: MethodFile, known: KnownNames, place: string): readonly RefusalRule[] =>
	file.refusals.map(({ need, odds, because }, i) => {
		const where = `${place}: refusals ${i + 1}`;
		const [way, between] =
			'across' in need ? (['across', need.across] as const) : (['down', need.down] as const);
		for (const point of between) {
			if (!known.points.includes(point))
				throw new BadInput(where, `there is no point "${point}"${didYouMean(point, known.points)}`);
		}
		for (const key of odds) {
			if (!MEASUREMENT_KEYS.some((each) => each === key)) {
				throw new BadInput(where, `there is no measurement "${key}"${didYouMean(key, MEASUREMENT_KEYS)}`);
			}
		}
		return { way, between, atLeast: quantity(need.atLeast, where), odds, because };
	});

/**
 * Reads a method from parsed YAML or JSON. `place` (the file's name) begins every error. Names that
 * no step makes, circles, unknown measurements and malformed formulas are all found here, before any
 * body is drafted. Throws BadInput.
 */
export const readMethod = (input: unknown, place: string): Method => {
	const file = parseFile(input, place);
	const allowances = readAllowances(file, place);
	const known = namesOf(file, allowances, place);
	const read = (step: StepFile): Step => {
		const formula: FormulaReader = (text, field, wanted) =>
			parseFormula(text, `${stepPlace(place, step)}: ${field}`, known, wanted);
		const done = readStep(step, formula);
		checkNeeds(done, known, place);
		return done;
	};
	const steps = inOrder(file.steps.map(read), place);
	const measured = new Set(steps.flatMap((step) => stepKeys(step, 'measurement')));
	for (const line of file.outline) {
		if (!known.lines.includes(line)) {
			throw new BadInput(`${place}: outline`, `there is no line "${line}"${didYouMean(line, known.lines)}`);
		}
	}
	return {
		id: file.id,
		name: file.name,
		steps,
		allowances,
		measurements: MEASUREMENT_KEYS.filter((key) => measured.has(key)),
		outline: file.outline,
		refusals: readRefusals(file, known, place)
	};
};
