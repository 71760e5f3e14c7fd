import type { Allowance } from '#shared/allowances.ts';
import type { Caution, CornerRule, CutCount, EdgeKind, NotchStyle } from '#shared/garment.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Mm } from '#shared/units.ts';
import type { Dependence } from '#drafting/conditions.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Method } from '#drafting/method.ts';

/** A garment, read and checked. Plain data: it can be sent to a browser as it is. */
export interface Garment {
	readonly id: string;
	readonly name: string;
	readonly about: string;
	/** The methods of its drafts, by the short names that its formulas know them by. */
	readonly uses: Readonly<Record<string, Method>>;
	/** The allowances of all its drafts, and those of cutting. */
	readonly allowances: readonly Allowance[];
	readonly measurements: readonly MeasurementKey[];
	readonly pieces: readonly PieceRule[];
	readonly seams: readonly SeamRule[];
	readonly smooth: readonly SmoothRule[];
	readonly numbers: readonly NumberRule[];
	readonly wear: readonly WearRule[];
	/** How it is worn, from the top down; nothing where its file does not say. */
	readonly worn: readonly TierRule[];

	readonly girths: readonly GirthsRule[];
	readonly order: readonly string[];
	/** Whether it can be cut as a toile (toile.ts). */
	readonly toile: boolean;
	readonly cautions: readonly Caution[];
}

/** How an edge of a piece is made. */
export interface EdgeRule {
	readonly name: string;
	/** What it is called within a sentence ("the stand top edge"), and as a heading ("stand top"). */
	readonly noun: Noun;
	readonly title: string;
	readonly kind: EdgeKind;
	/** Lines of the draft, in turn; those that a body's draft does not have are passed over. */
	readonly lines: readonly string[];
	/** Lines that take their place where a body's draft has them. */
	readonly instead: readonly string[];
	readonly allowance: Formula;
	readonly corner?: CornerRule | undefined;
	readonly notch?: NotchStyle | undefined;
	readonly gathered?: boolean | undefined;
}

/** How a piece is made. */
export interface PieceRule {
	readonly key: string;
	readonly name: string;
	/** The number that is written on it, by the order of the file. */
	readonly number: number;
	readonly draft: string;
	readonly edges: readonly EdgeRule[];
	readonly grain: readonly [string, string];
	/** Where several sizes of it are laid on each other: a point of its draft, or where a line begins. */
	readonly nest?: string | undefined;
	readonly bias: boolean;
	readonly seamAtFold?: boolean | undefined;
	readonly notch: NotchStyle;
	readonly cut: readonly CutCount[];
	readonly marks: readonly { readonly line: string; readonly label: string }[];
	readonly drills: readonly (
		{ readonly point: string; readonly label: string } | { readonly end: string; readonly label: string }
	)[];
	readonly levels: readonly DrawnLevel[];
	readonly buttons: ButtonRule | undefined;
	readonly darts: readonly {
		readonly name: string;
		readonly legs: readonly [string, string];
		readonly tip: string;
	}[];
	readonly text: readonly string[];
}

/** A level that is drawn across a piece: of a point, or so far above it. */
export interface DrawnLevel {
	readonly point: string;
	readonly above: Formula | undefined;
	readonly label: string;
}

/** Buttons on the upright way from one point down to another, one of them at the level of a third. */
export interface ButtonRule {
	readonly on: readonly [string, string];
	readonly at: string;
	/** How far beyond the way, toward the edge, a buttonhole begins. */
	readonly beyond: Mm;
	readonly width: Formula;
	readonly hole: Formula;
}

/** An edge by its piece's key and its own name. */
export interface EdgeRef {
	readonly piece: string;
	readonly edge: string;
}

/** Two edges, or chains of edges, that are sewn together. */
export interface SeamRule {
	readonly name: string;
	readonly label: string;
	readonly first: readonly EdgeRef[];
	readonly second: readonly EdgeRef[];
	readonly turned: boolean;
	/** Whether the two are not sewn to each other, only as long as each other. */
	readonly compared?: boolean | undefined;
	/** Whether the second is caught in the first's seam, and may end before it does. */
	readonly caught?: boolean | undefined;
	readonly within: Mm;
	readonly ease: Formula | undefined;
	readonly notches: readonly number[];
	readonly runs: { readonly start?: string | undefined; readonly end?: string | undefined };
}

/** Two neighbouring edges without a corner between them. */
export interface SmoothRule {
	readonly label: string;
	readonly first: EdgeRef;
	readonly second: EdgeRef;
}

/** A number that the garment reports: a length, or how many times one is as long as another. */
export interface NumberRule {
	readonly name: string;
	readonly label: string;
	readonly kind: 'length' | 'ratio';
	readonly formula: Formula;
	/** Millimetres for a length. */
	readonly atLeast: number | undefined;
	readonly atMost: number | undefined;
	readonly because: string | undefined;
}

/** Girths beside each other: of the body, and of the cloth that goes round it. */
export interface GirthsRule {
	readonly name: string;
	readonly label: string;
	readonly rows: readonly {
		readonly label: string;
		readonly of: 'body' | 'cloth';
		readonly formula: Formula;
	}[];
}

/** What a wear check's number is. An angle is in degrees. */
export type WearKind = 'length' | 'angle' | 'ratio';

/** Where on a piece something is to be seen: at the level of a point, between two points, or along lines of its draft. */
export type PlaceRule = { readonly piece: string } & (
	| { readonly level: string }
	| { readonly points: readonly [string, string] }
	| { readonly lines: readonly string[] }
);

/** What the finished garment must be to the body that wears it. */
export interface WearRule extends Dependence {
	readonly name: string;
	readonly label: string;
	readonly kind: WearKind;
	/** The measurement over which its number is the room. */
	readonly over?: MeasurementKey | undefined;
	readonly formula: Formula;
	/** Millimetres, degrees, or a plain number. */
	readonly least: number | undefined;
	readonly most: number | undefined;
	/** What it means to be below the least, and above the most. */
	readonly low: string | undefined;
	readonly high: string | undefined;
	/** Allowances, or two that move together, by which it can be put right, in the order in which they are tried. */
	readonly cures: readonly (readonly string[])[];
	/** The two measurements that disagree where no allowance goes far enough. */
	readonly odds: readonly [MeasurementKey, MeasurementKey] | undefined;
	readonly at: PlaceRule | undefined;
}

/** A level of a panel: where it lies at the centre and at the side. */
export interface LevelRule {
	/** Undefined: where the edges across at it end. */
	readonly side?: string | undefined;
	/** Undefined: square across from the side. */
	readonly centre?: string | undefined;
	/** Edges of the panel's first piece that lead down the side to it from the level above. */
	readonly edges: readonly string[];
	/** Edges of that piece that run across at it, from the centre out. */
	readonly across: readonly string[];
}

/** One side of a tier, front or back: the half that is drafted. */
export interface PanelRule {
	/** Drawn one after the other; levels and edges are those of the first. */
	readonly pieces: readonly string[];
	readonly levels: readonly LevelRule[];
	/** Points of the centre line between which there is a zip, and a slit. */
	readonly zip?: readonly [string, string] | undefined;
	readonly slit?: readonly [string, string] | undefined;
	/** The end of the shoulder, where a sleeve begins. */
	readonly shoulder?: string | undefined;
}

/** A part of a garment that goes round the body. The first hangs as it lies on the sheet, each further one from the one above it. */
export interface TierRule {
	/** What the body measures at each level. */
	readonly girths: readonly MeasurementKey[];
	readonly front: PanelRule;
	readonly back: PanelRule;
	/** The neck edges of front and back, between which one sees in. */
	readonly neck?: readonly [EdgeRef, EdgeRef] | undefined;
	/** A band above its first level, and how deep it is when finished. */
	readonly band?: Formula | undefined;
	readonly sleeve?:
		| {
				readonly piece: string;
				/** The top of its cap and its foot. */
				readonly middle: readonly [string, string];
				readonly seam: string;
				readonly hem: string;
		  }
		| undefined;
}
