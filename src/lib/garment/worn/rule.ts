import type { MeasurementKey } from '#shared/measurements.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { EdgeRef } from '../garment.ts';

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
	/** Points of the centre line between which it is buttoned, and one at the level of the bust. */
	readonly buttons?: { readonly top: string; readonly bust: string; readonly foot: string } | undefined;
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
