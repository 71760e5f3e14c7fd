import { z } from 'zod';
import { CLOTHS } from './cloths.ts';
import { MEASUREMENT_KEYS } from './measurements.ts';

/**
 * A garment file: which lines of which drafts are the edges of which pieces, what is sewn to what, and what
 * a cutter and a sewer have to know. Formulas are still text here; src/lib/garment reads them.
 */

const key = z
	.string()
	.regex(/^[a-z][A-Za-z0-9]*$/, 'pieceName')
	.refine((name) => !(name in {}), 'takenName');
const label = z.string().min(1);
const formula = z.union([z.string(), z.number()]).transform(String);
const quantity = z.string().min(1);
const pointName = z.string().regex(/^[A-Z][0-9]*$/);

/** What an edge is to the sewer: sewn to another, laid on the fold of the cloth, turned up, or left open and bound or turned in. */
export const EDGE_KINDS = ['seam', 'fold', 'hem', 'opening', 'dart'] as const;
/** How the cutting line goes round the corner between an edge and the next. */
export const CORNER_RULES = ['mitre', 'square', 'turn-up', 'trim'] as const;

/** A front's notches are single and a back's double. */
export const NOTCH_STYLES = ['single', 'double'] as const;

const edge = z.strictObject({
	name: key,
	/** What it is called, where its name does not say it. */
	label: label.optional(),
	kind: z.enum(EDGE_KINDS),
	/** Lines of the piece's draft, in turn; those that a body's draft does not have are passed over. */
	lines: z.array(key).min(1),
	/** Lines that take their place where a body's draft has them: what was trued. */
	instead: z.array(key).default([]),
	/** How far outside the stitching line it is cut; by its kind where nothing is said. */
	allowance: formula.optional(),
	/** How its notches look where that differs from the piece's: a sleeve's back cap is double. */
	notch: z.enum(NOTCH_STYLES).optional(),
	/** Whether it is gathered up before, or as, it is sewn. */
	gathered: z.boolean().optional(),
	corner: z.enum(CORNER_RULES).optional()
});

const dart = z.strictObject({ name: label, legs: z.tuple([key, key]), tip: pointName });

/**
 * Buttons down an upright way of two points, marked on both halves of the garment, one of them at the level of a third. Their
 * buttonholes lie across, begun so far beyond the way.
 */
const buttons = z.strictObject({
	on: z.tuple([pointName, pointName]),
	at: pointName,
	beyond: quantity,
	/** How wide a button is, and how long its buttonhole. */
	width: formula,
	hole: formula
});

/** A point that is marked on a piece: one of its draft by name, or the end of a line. */
const drill = z.union([z.strictObject({ point: pointName, label }), z.strictObject({ end: key, label })]);

const piece = z.strictObject({
	/** The short name that seams know it by. */
	key,
	name: label,
	/** The short name of the draft that it is traced off. */
	draft: key,
	edges: z.array(edge).min(3),
	/** The grain line runs as this straight way does; on the bias it is at 45 degrees to it. */
	grain: z.tuple([pointName, pointName]),
	/** Where several sizes of it are laid on each other: a point of its draft, or where a line begins; where the grain line does, if nothing is said. */
	nest: z.union([pointName, key]).optional(),
	bias: z.boolean().default(false),
	/** Whether it may have a seam in place of its fold, where the cloth is too narrow for it. */
	seamAtFold: z.boolean().optional(),
	/** Notches of a front are single and of a back double, so that the two cannot be mistaken. */
	notch: z.enum(NOTCH_STYLES),
	cut: z.array(z.strictObject({ in: z.enum(CLOTHS), count: z.number().int().positive() })).min(1),
	/** Lines that are drawn on the piece, such as the centre front. */
	marks: z.array(z.strictObject({ line: key, label })).default([]),
	/** Points that are marked on the piece, such as the bust point. */
	drills: z.array(drill).default([]),
	/** Levels that are drawn across the piece: of a point, or so far above it. */
	levels: z
		.array(z.strictObject({ name: key, point: pointName, above: formula.optional(), label }))
		.default([]),
	darts: z.array(dart).default([]),
	buttons: buttons.optional(),
	text: z.array(label).default([])
});

/** An edge of a piece: `front.side`. */
const edgeName = z.string().regex(/^[a-z][A-Za-z0-9]*\.[a-z][A-Za-z0-9]*$/, 'edgeName');
const side = z.array(edgeName).min(1);

const seam = z.strictObject({
	name: key,
	label,
	first: side,
	second: side,
	/** The second runs the other way: its end is sewn to the first's beginning. */
	turned: z.boolean().default(false),
	/** Not sewn to each other, only as long as each other. */
	compared: z.boolean().optional(),
	/** The second is caught in the first's seam from where it begins, and may end before it does. */
	caught: z.boolean().optional(),
	within: quantity,
	/** How much longer the second is to be, eased in. */
	ease: formula.optional(),
	/** Where notches lie, as shares of the first's length. */
	notches: z.array(z.number().gt(0).lt(1)).default([0.5]),
	/** What runs on across the seam's beginning and end, and must have no corner there. */
	runs: z.strictObject({ start: label.optional(), end: label.optional() }).default({})
});

const number = z.strictObject({
	name: key,
	label,
	/** A length, or a plain number: how many times one length is as long as another. */
	kind: z.enum(['length', 'ratio']),
	formula,
	atLeast: z.string().optional(),
	atMost: z.string().optional(),
	/** What a number out of bounds means. */
	because: label.optional()
});

/** Where on a piece a wear check is made: at the level of a point, at a point, on the way between two, or along lines of its draft. */
const wearPlace = z.union([
	z.strictObject({ piece: key, level: pointName }),
	z.strictObject({ piece: key, points: z.tuple([pointName, pointName]) }),
	z.strictObject({ piece: key, lines: z.array(key).min(1) })
]);

/**
 * What the finished garment must be to the body: a number worked from drafted lines and measurements, the least and the most that it
 * may be, and what too little or too much means to whoever wears it. A measurement in it that was not taken is asked for.
 */
const wear = z.strictObject({
	name: key,
	label,
	/** A length; an angle in degrees; or a plain number: what share one length is of another. */
	kind: z.enum(['length', 'angle', 'ratio']),
	/** The measurement over which its number is the room: with it, the number is what the finished garment measures there. */
	over: z.enum(MEASUREMENT_KEYS).optional(),
	number: formula,
	/** Lengths that its number names, such as what is needed to pass over the bust. */
	lengths: z.record(key, quantity).default({}),
	least: z.string().optional(),
	most: z.string().optional(),
	/** What it means to be below the least, and above the most. */
	low: label.optional(),
	high: label.optional(),
	when: formula.optional(),
	unless: formula.optional(),
	/** The allowances that put it right, the first that does: one, or two that move together. */
	cure: z.array(z.union([key, z.tuple([key, key])])).default([]),
	/** The two measurements that disagree where no allowance goes far enough. */
	odds: z.tuple([z.enum(MEASUREMENT_KEYS), z.enum(MEASUREMENT_KEYS)]).optional(),
	at: wearPlace.optional()
});

const wornPanel = z.strictObject({
	/** Drawn one after the other; the first has the levels. */
	pieces: z.array(key).min(1),
	levels: z
		.array(
			z.strictObject({
				/** Where the edges across at it end, where nothing is said. */
				side: pointName.optional(),
				/** Square across from the side where nothing is said. */
				centre: pointName.optional(),
				/** Edges that lead down the side to it, and edges that run across at it from the centre out. */
				edges: z.array(key).default([]),
				across: z.array(key).default([])
			})
		)
		.min(2),
	/** On the centre line, the ends of a zip and of a slit. */
	zip: z.tuple([pointName, pointName]).optional(),
	slit: z.tuple([pointName, pointName]).optional(),
	/** The end of the shoulder, where a sleeve begins. */
	shoulder: pointName.optional()
});

/** A part of the garment that goes round the body, by levels from its top down; each further one hangs from the one above. */
const wornTier = z.strictObject({
	/** What the body measures at each level. */
	girths: z.array(z.enum(MEASUREMENT_KEYS)).min(2),
	front: wornPanel,
	back: wornPanel,
	/** The neck edges of front and back. */
	neck: z.tuple([edgeName, edgeName]).optional(),
	/** How deep a finished band above it is. */
	band: formula.optional(),
	sleeve: z
		.strictObject({ piece: key, middle: z.tuple([pointName, pointName]), seam: key, hem: key })
		.optional()
});

/** A picture of girths beside each other: of the body, and of the cloth that goes round it. */
const girths = z.strictObject({
	name: key,
	label,
	/** The others are told by how much they differ from the first. */
	rows: z
		.array(
			z.strictObject({
				name: key,
				label,
				of: z.enum(['body', 'cloth']),
				number: formula,
				/** Lengths that its number names. */
				lengths: z.record(key, quantity).default({})
			})
		)
		.min(2)
});

/** A caution that is shown wherever it applies; the words are the program's own. */
export const CAUTIONS = ['tools', 'iron', 'wash', 'toile', 'children'] as const;

/** A garment file. */
export const garmentFileSchema = z.strictObject({
	id: z.string().regex(/^[a-z][a-z0-9-]*$/),
	name: label,
	about: label,
	/** Methods by the short names that pieces and formulas know their drafts by. */
	uses: z.record(key, z.string()),
	pieces: z.array(piece).min(1),
	seams: z.array(seam).default([]),
	/** Two neighbouring edges of a piece between which the outline has no corner: `front.neckline`, `front.standTop`. */
	smooth: z.array(z.strictObject({ label, first: edgeName, second: edgeName })).default([]),
	numbers: z.array(number).default([]),
	wear: z.array(wear).default([]),
	/** How it is worn, for a drawing of it from the front and the back. */
	worn: z.array(wornTier).default([]),
	girths: z.array(girths).default([]),
	/** The order of sewing. */
	order: z.array(label).min(1),
	/** Whether it can be cut in cheap cloth to be tried on: it opens, so that it can be put on unfinished. */
	toile: z.boolean().default(false),
	cautions: z.array(z.enum(CAUTIONS)).min(1)
});

/** What another language calls all this, by the same names; lists in the garment's own order. What is not there is said in English. */
export const garmentWordsSchema = z
	.strictObject({
		name: label,
		about: label,
		pieces: z.record(
			key,
			z
				.strictObject({
					name: label,
					edges: z.record(key, label),
					marks: z.record(key, label),
					drills: z.record(z.union([pointName, key]), label),
					darts: z.array(label),
					text: z.array(label)
				})
				.partial()
		),
		seams: z.record(key, z.strictObject({ label, runs: seam.shape.runs }).partial()),
		smooth: z.array(label),
		numbers: z.record(key, z.strictObject({ label, because: label }).partial()),
		wear: z.record(key, z.strictObject({ label, low: label, high: label }).partial()),
		girths: z.record(key, z.strictObject({ label, rows: z.record(key, label) }).partial()),
		order: z.array(label)
	})
	.partial();

/** A garment file as parsed. */
export type GarmentFile = z.infer<typeof garmentFileSchema>;
export type GarmentWords = z.infer<typeof garmentWordsSchema>;
export type CutCount = GarmentFile['pieces'][number]['cut'][number];
export type NotchStyle = (typeof NOTCH_STYLES)[number];
/** A run of edges: by its label, or a piece's edge (in words) that meets its fold. */
export type RunName = { readonly label: string } | { readonly piece: string; readonly edge: string };
export type EdgeKind = (typeof EDGE_KINDS)[number];
export type CornerRule = (typeof CORNER_RULES)[number];
export type { Cloth } from './cloths.ts';
export type Caution = (typeof CAUTIONS)[number];
