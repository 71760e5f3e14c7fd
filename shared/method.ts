import { z } from 'zod';
import type { Noun } from './speech/noun.ts';

/**
 * A method file: the ordered steps of one draft, as a person writes them in YAML. Formulas are still
 * text here; src/lib/drafting reads them into trees.
 */

const pointName = z.string().regex(/^[A-Z][0-9]*$/, 'pointName');
const lineName = z
	.string()
	.regex(/^[a-z][A-Za-z0-9]*$/, 'lineName')
	.refine((name) => !(name in {}), 'takenName');
const label = z.string().min(1);
/** The text of a formula, told from other text so that the program knows which fields of a step hold one. */
export type FormulaText = string & { readonly __formula: true };
const formula = z.union([z.string(), z.number()]).transform((text) => String(text) as FormulaText);
/** A length with its unit, such as `1.5 cm`. */
const quantity = z.string().min(1);
const key = z.string().regex(/^[a-z][A-Za-z0-9]*$/);
const odds = z.tuple([key, key]);
/** What the drafter chooses: a length within its range, or one of a few named values, each a plain number with its label. */
const allowance = z.union([
	z.strictObject({ label, default: quantity, range: z.tuple([quantity, quantity]) }),
	z.strictObject({ label, default: key, choices: z.record(key, z.strictObject({ label, share: formula })) })
]);

const compass = z.enum(['up', 'down', 'across', 'in']);
/** A drawn line, or the straight way between two points. */
const course = z.union([lineName, z.tuple([pointName, pointName])]);
const heading = z.union([
	compass,
	z.literal('chord'),
	z.strictObject({ squareTo: course, toward: compass }),
	/** As a drawn line runs there. */
	z.strictObject({ along: course }),
	/** Half way between the directions of a line that ends there and of one that begins there: smooth across a join. */
	z.strictObject({ across: z.tuple([lineName, lineName]) }),
	/** As a line or way runs on once a dart is sewn: turned about the dart's tip as one leg's end is from the other's. */
	z.strictObject({ sewn: course, about: pointName, from: pointName, onto: pointName })
]);
const curvePoint = z.strictObject({ point: pointName, heading });
const curveRule = z.enum(['corner', 'thirds']);
/** What moves with something, by the names that it has afterwards: `U2: U1`. */
const carries = z.record(z.union([pointName, lineName]), z.union([pointName, lineName])).default({});

/** A step may depend on a formula: it is drafted only where that is more than nothing (`when`), or only where it is not (`unless`). */
const dependence = { when: formula.optional(), unless: formula.optional() };

/** A step of one kind: what every step has, and the fields of its own. */
const step = <K extends string, F extends z.ZodRawShape>(kind: K, name: z.ZodString, fields: F) =>
	z.strictObject({ kind: z.literal(kind), name, label, ...dependence, ...fields });

/** What the file of each kind holds. It stands here and not with the kind's rules: a browser needs those and reads no file. */
const steps = {
	corner: step('corner', pointName, {}),
	mark: step('mark', pointName, {
		from: pointName,
		go: compass,
		by: formula
	}),
	meeting: step('meeting', pointName, {
		down: pointName,
		across: pointName
	}),
	division: step('division', pointName, {
		from: pointName,
		to: pointName,
		at: formula
	}),
	along: step('along', pointName, {
		on: z.union([
			z.strictObject({ from: pointName, toward: pointName }),
			z.strictObject({ line: lineName, from: z.enum(['start', 'end']) }),
			z.strictObject({ from: pointName, as: course })
		]),
		by: formula,
		odds: odds.optional()
	}),
	swing: step('swing', pointName, {
		from: pointName,
		length: formula,
		level: formula,
		side: z.enum(['outward', 'inward']),
		odds: odds.optional()
	}),
	level: step('level', lineName, {
		from: pointName,
		reach: formula
	}),
	straight: step('straight', lineName, {
		through: z.array(pointName).min(2),
		/** It stands as soon as its points do: nobody has to draw it. */
		given: z.literal(true).optional()
	}),
	curve: step('curve', lineName, {
		rule: curveRule,
		through: z.array(curvePoint).min(2),
		/** It stands as soon as its points do: nobody has to draw it. */
		given: z.literal(true).optional()
	}),
	/** A part of the draft turned about a point: a dart closed (`onto`), or a slash opened by a width (`opening`). */
	turn: step('turn', pointName, {
		move: pointName,
		about: pointName,
		onto: pointName.optional(),
		/** How much of the way onto that point: 1 where none is named. */
		share: formula.prefault('1'),
		opening: formula.optional(),
		toward: compass.optional(),
		carries
	}),
	/** A part of the draft moved away whole, so that all of a slash opens alike. */
	spread: step('spread', pointName, {
		move: pointName,
		go: compass,
		by: formula,
		carries
	}),
	/** A part of the draft mirrored on a fold. */
	mirror: step('mirror', pointName, {
		move: pointName,
		fold: z.tuple([pointName, pointName]),
		carries
	}),
	/** Where a point comes to lie while a dart is folded shut about its point, one leg laid onto the other; it is not moved itself. */
	folded: step('folded', pointName, {
		point: pointName,
		about: pointName,
		from: pointName,
		onto: pointName
	}),
	/** Where a straight line, folded over on another where that is said, crosses what goes on from a point through a second. */
	crossing: step('crossing', pointName, {
		of: z.tuple([pointName, pointName]),
		over: z.tuple([pointName, pointName]).optional(),
		ray: z.tuple([pointName, pointName]),
		odds: odds.optional()
	}),
	/** A part of a drawn line: without so much at its start, or at its end. */
	section: step('section', lineName, {
		of: lineName,
		lessStart: formula.optional(),
		lessEnd: formula.optional()
	}),
	/** Drawn lines end to end as one. */
	chain: step('chain', lineName, {
		of: z.array(lineName).min(1)
	}),
	/** A line everywhere equally far from a drawn one, on the side toward which the middle is moved. */
	parallel: step('parallel', lineName, {
		of: lineName,
		by: formula,
		toward: compass,
		/** Where it may not run back on itself, as it does inside a bend that is tighter than it is far: the two at odds. */
		odds: odds.optional()
	}),
	/** Part of a circle about a point: `turn` is its share of the full turn, and it sets off `toward`. */
	arc: step('arc', lineName, {
		about: pointName,
		from: pointName,
		toward: compass,
		turn: formula
	}),
	/**
	 * A point that goes on from another until the curve drawn through it is as long as it must be: one seam
	 * trued to another. The way is straight, or round a centre.
	 */
	until: step('until', pointName, {
		from: pointName,
		go: compass,
		about: pointName.optional(),
		/** The least and the most that it may go. */
		within: z.tuple([quantity, quantity]),
		rule: curveRule,
		through: z.array(curvePoint).min(2),
		length: formula,
		odds: odds.optional()
	})
};

type StepSchema = (typeof steps)[keyof typeof steps];
/** One step of a method file; `kind` says which rule it follows. */
export const stepFileSchema = z.discriminatedUnion(
	'kind',
	Object.values(steps) as [StepSchema, ...StepSchema[]]
);

/** What is traced off another method's draft, by the names that it has here: `blockSide: side`. */
const traced = z.strictObject({
	from: key,
	points: z.union([z.array(pointName), z.record(pointName, pointName)]).default([]),
	lines: z.union([z.array(lineName), z.record(lineName, lineName)]).default([])
});

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
const condition = { name: key, need, ...dependence, odds, because: label };

/** A method file. */
export const methodFileSchema = z.strictObject({
	id: z.string().regex(/^[a-z][a-z0-9-]*$/),
	name: label,
	/** What other drafts call this one where they speak of its lines: "the back", in "the back's shoulder". */
	called: label.optional(),
	/** Other methods whose lines the formulas may name, each under a short name: `length(back.shoulder)`. */
	uses: z.record(key, z.string()).default({}),
	allowances: z.record(key, allowance).default({}),
	/** Formulas that others name, so that each is written once. One may name those before it. */
	amounts: z.record(key, formula).default({}),
	/** Whether exercises ask for its rules: those of the blocks, that every garment begins with. */
	practised: z.boolean().default(false),
	/** What stands on the sheet before the first step: traced off the drafts of other methods. */
	trace: z.array(traced).default([]),
	steps: z.array(stepFileSchema).min(1),
	outline: z.array(lineName).default([]),
	/** The line of the outline on whose other side the other half lies, where only half of a piece is drafted. */
	fold: lineName.optional(),
	/** A body that breaks one of these is not drafted. */
	refusals: z.array(z.strictObject(condition)).default([]),
	/** A body that breaks one of these is drafted, and the drafter is told. */
	warnings: z.array(z.strictObject(condition)).default([])
});

const words = z.record(z.string(), label).default({});
/** What a method is called in another language, everything by the name that it has in the method file. */
export const methodWordsSchema = z.strictObject({
	name: label.optional(),
	called: label.optional(),
	steps: words,
	allowances: words,
	/** The labels of named values, by their allowance and their name. */
	choices: z.record(z.string(), words).default({}),
	refusals: words,
	warnings: words
});
export type MethodWords = z.infer<typeof methodWordsSchema>;

/** A method file as parsed. */
export type MethodFile = z.infer<typeof methodFileSchema>;
/** A condition of a method file. */
export type ConditionFile = z.infer<typeof methodFileSchema>['refusals'][number];

/** A step that no file writes and no learner draws: what is traced off another draft. */
export interface TracedFile {
	readonly kind: 'traced';
	readonly name: string;
	readonly label: Noun;
	/** The point or line of the other draft, such as `block.N`. */
	readonly of: string;
	readonly when?: undefined;
	readonly unless?: undefined;
}
/** A step that no file writes and no learner draws: what a motion carries with it. */
export interface CarriedFile {
	readonly kind: 'carried';
	readonly name: string;
	readonly label: Noun;
	readonly of: string;
	/** The step of the motion: turn, spread or mirror. */
	readonly with: string;
	readonly motion: MotionFile;
	readonly when?: undefined;
	readonly unless?: undefined;
}
/** A motion told by points: turned about one, moved, or mirrored on a fold; `from` comes to lie at `to`. */
export type MotionFile =
	| { readonly kind: 'turn'; readonly about: string; readonly from: string; readonly to: string }
	| { readonly kind: 'spread'; readonly from: string; readonly to: string }
	| { readonly kind: 'mirror'; readonly fold: readonly [string, string] };

export type WrittenStep = z.infer<typeof stepFileSchema>;
export type StepFile = WrittenStep | TracedFile | CarriedFile;
/** The kinds of step that there are. */
export type StepKind = StepFile['kind'];
/** A step of one kind as it stands in the file. */
export type StepFileOf<K extends StepKind> = Extract<StepFile, { kind: K }>;
/** One of the four ways in which a drafter moves on the sheet. */
export type Compass = z.infer<typeof compass>;
export type HeadingFile = z.infer<typeof heading>;
/** A drawn line, or the straight way between two points. */
export type CourseFile = z.infer<typeof course>;
export type TraceFile = z.infer<typeof traced>;
