import { z } from 'zod';

/**
 * A method file: the ordered steps of one draft, as a person writes them in YAML. Formulas are still
 * text here; src/lib/drafting reads them into trees.
 */

const pointName = z
	.string()
	.regex(/^[A-Z][0-9]*$/, 'a point is named by one capital letter, with a number after it if need be');
const lineName = z
	.string()
	.regex(/^[a-z][A-Za-z0-9]*$/, 'a line is named in small letters, such as shoulder or armholeLevel')
	.refine((name) => !(name in {}), 'this name means something else to the program; choose another');
const label = z.string().min(1);
const formula = z.union([z.string(), z.number()]).transform(String);
/** A length with its unit, such as `1.5 cm`. */
const quantity = z.string().min(1);
const key = z.string().regex(/^[a-z][A-Za-z0-9]*$/);
const odds = z.tuple([key, key]);

const compass = z.enum(['up', 'down', 'across', 'in']);
const heading = z.union([
	compass,
	z.literal('chord'),
	z.strictObject({ squareTo: lineName, toward: z.enum(['up', 'down', 'across', 'in']) })
]);
const curvePoint = z.strictObject({ point: pointName, heading });

/** A step may depend on a formula: it is drafted only where that is more than nothing (`when`), or only where it is not (`unless`). */
const dependence = { when: formula.optional(), unless: formula.optional() };

const steps = {
	corner: z.strictObject({ kind: z.literal('corner'), name: pointName, label, ...dependence }),
	mark: z.strictObject({
		kind: z.literal('mark'),
		name: pointName,
		label,
		...dependence,
		from: pointName,
		go: compass,
		by: formula
	}),
	meeting: z.strictObject({
		kind: z.literal('meeting'),
		name: pointName,
		label,
		...dependence,
		down: pointName,
		across: pointName
	}),
	division: z.strictObject({
		kind: z.literal('division'),
		name: pointName,
		label,
		...dependence,
		from: pointName,
		to: pointName,
		at: formula
	}),
	along: z.strictObject({
		kind: z.literal('along'),
		name: pointName,
		label,
		...dependence,
		on: z.union([
			z.strictObject({ from: pointName, toward: pointName }),
			z.strictObject({ line: lineName, from: z.enum(['start', 'end']) })
		]),
		by: formula,
		odds: odds.optional()
	}),
	swing: z.strictObject({
		kind: z.literal('swing'),
		name: pointName,
		label,
		...dependence,
		from: pointName,
		length: formula,
		level: formula,
		side: z.enum(['outward', 'inward']),
		odds: odds.optional()
	}),
	level: z.strictObject({
		kind: z.literal('level'),
		name: lineName,
		label,
		...dependence,
		from: pointName,
		reach: formula
	}),
	straight: z.strictObject({
		kind: z.literal('straight'),
		name: lineName,
		label,
		...dependence,
		through: z.array(pointName).min(2)
	}),
	curve: z.strictObject({
		kind: z.literal('curve'),
		name: lineName,
		label,
		...dependence,
		rule: z.enum(['corner', 'thirds']),
		through: z.array(curvePoint).min(2)
	})
};

/** One step of a method file; `kind` says which rule it follows. */
export const stepFileSchema = z.discriminatedUnion('kind', [
	steps.corner,
	steps.mark,
	steps.meeting,
	steps.division,
	steps.along,
	steps.swing,
	steps.level,
	steps.straight,
	steps.curve
]);

const pair = z.tuple([pointName, pointName]);
/** The bounds of what is measured; at least one is given. */
const bounds = {
	atLeast: quantity.optional(),
	moreThan: quantity.optional(),
	atMost: quantity.optional()
};
/** What is measured: how far one point lies across or down from another, or the value of a formula. */
const need = z.union([
	z.strictObject({ across: pair, ...bounds }),
	z.strictObject({ down: pair, ...bounds }),
	z.strictObject({ value: formula, ...bounds })
]);
/** A condition, and the two measurements that are at odds where it does not hold. */
const condition = { need, ...dependence, odds, because: label };
/** Two lengths that should agree when the garment is sewn; `difference` says how far they do not. */
const comparison = z.strictObject({
	name: lineName,
	label,
	difference: formula,
	within: quantity,
	...dependence
});

/** A method file. */
export const methodFileSchema = z.strictObject({
	id: z.string().regex(/^[a-z][a-z0-9-]*$/),
	name: label,
	/** Other methods whose lines the formulas may name, each under a short name: `length(back.shoulder)`. */
	uses: z.record(key, z.string()).default({}),
	allowances: z
		.record(key, z.strictObject({ label, default: quantity, range: z.tuple([quantity, quantity]) }))
		.default({}),
	steps: z.array(stepFileSchema).min(1),
	outline: z.array(lineName).default([]),
	/** A body that breaks one of these is not drafted. */
	refusals: z.array(z.strictObject(condition)).default([]),
	/** A body that breaks one of these is drafted, and the drafter is told. */
	warnings: z.array(z.strictObject(condition)).default([]),
	comparisons: z.array(comparison).default([])
});

/** A method file as parsed. */
export type MethodFile = z.infer<typeof methodFileSchema>;
/** A condition of a method file. */
export type ConditionFile = z.infer<typeof methodFileSchema>['refusals'][number];

export type StepFile = z.infer<typeof stepFileSchema>;
/** The kinds of step that there are. */
export type StepKind = StepFile['kind'];
/** A step of one kind as it stands in the file. */
export type StepFileOf<K extends StepKind> = Extract<StepFile, { kind: K }>;
/** One of the four ways in which a drafter moves on the sheet. */
export type Compass = z.infer<typeof compass>;
export type HeadingFile = z.infer<typeof heading>;
