import type { Body } from '#shared/body.ts';
import type { Language } from '#shared/speech/language.ts';
import type { Unit } from '#shared/units.ts';
import type { Method } from '#drafting/method.ts';
import type { ClassSheet } from '#exports/pdf/class-sheets.ts';
import type { Format, ScaleName } from '#exports/files/pattern-file.ts';
import type { Tile } from '#exports/sheets/tiles.ts';
import type { NestFormat } from '#exports/files/nested-file.ts';
import type { Garment } from '#garment/garment.ts';
import type { SizedBody } from '#garment/nested.ts';
import type { Choices } from '#garment/pattern.ts';
import type { Path } from '#geometry/path.ts';
import type { MarkerSheet } from '#photograph/marker-places.ts';

/** The language and the unit in which what is made speaks. */
interface Spoken {
	readonly language: Language;
	readonly unit: Unit;
}

/** Which pattern is meant, and how it lies on paper. Plain data: it is sent to the worker as it is. */
export interface LaidPattern extends Spoken {
	readonly garment: Garment;
	readonly body: Body;
	readonly choices: Choices;
	/** The keys of the pieces that are wanted. */
	readonly pieces: readonly string[];
	/** A paper's id. */
	readonly paper: string;
	readonly scale: ScaleName;
}

/** Asks for the pages of a pattern without making them. */
export interface PlanJob extends LaidPattern {
	readonly kind: 'plan';
}

/** Asks for a pattern as one file, or as a file for each piece. */
export interface PatternJob extends LaidPattern {
	readonly kind: 'pattern';
	readonly format: Format;
	readonly each: boolean;
	readonly date: Date;
}

/** The sheets that can be made of a draft. */
export const DRAFT_SHEETS = ['draft', 'worksheet', 'rules', 'tape', 'drawing', 'picture'] as const;
export type DraftSheet = (typeof DRAFT_SHEETS)[number];

/** Asks for a draft on paper, for the bare grid with what is to be drawn on it, for its rules with one body's numbers, for the distances that check it, or for a drawing, as it is or to make a picture of. */
export interface DraftJob extends Spoken {
	readonly kind: 'draft';
	readonly sheet: DraftSheet;
	readonly method: Method;
	readonly body: Body;
	readonly paper: string;
	readonly scale: ScaleName;
	/** Whether a worksheet shows the worked numbers. */
	readonly worked: boolean;
	readonly date: Date;
}

/** Asks for the sheets of a whole class in one file: each draft for each of its bodies. */
export interface ClassJob extends Spoken {
	readonly kind: 'class';
	readonly name: string;
	readonly works: readonly { readonly method: Method; readonly body: Body }[];
	readonly sheets: readonly ClassSheet[];
	readonly paper: string;
	readonly scale: ScaleName;
	readonly date: Date;
}

/** Asks for a pattern in several sizes on one sheet. */
export interface NestJob extends Omit<LaidPattern, 'body'> {
	readonly kind: 'nest';
	readonly bodies: readonly SizedBody[];
	readonly format: NestFormat;
	readonly date: Date;
}

/** Asks for a sheet of markers, which are laid beside what is photographed. */
export interface MarkersJob extends Spoken {
	readonly kind: 'markers';
	readonly sheet: MarkerSheet;
	readonly paper: string;
	readonly date: Date;
}

export type Job = NestJob | PlanJob | PatternJob | DraftJob | ClassJob | MarkersJob;

/** A file, ready to be saved. */
export interface MadeFile {
	readonly name: string;
	readonly content: Blob;
}

/** The pages of a pattern before they are made. */
export interface Pages {
	/** Every page of the sheet, with those that are left out. */
	readonly every: readonly Tile[];
	/** The names of the pages without ink, which are left out. */
	readonly blank: readonly string[];
	/** What is cut, as it lies on the sheet. */
	readonly lines: readonly Path[];
}

/** What the worker says of a job: how far it is, and one answer at the end. */
export type Said =
	| { readonly kind: 'progress'; readonly done: number; readonly of: number }
	| { readonly kind: 'files'; readonly files: readonly MadeFile[] }
	| { readonly kind: 'pages'; readonly pages: Pages }
	/** Why it cannot be had, in plain words. */
	| { readonly kind: 'refused'; readonly words: string }
	/** What would have done it did not come. */
	| { readonly kind: 'not-loaded' }
	| { readonly kind: 'our-fault'; readonly told: string };
