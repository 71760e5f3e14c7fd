import type { PicturePoint } from '#photograph/picture.ts';
import type { Looked } from '#photograph/reading.ts';

/** What the worker is asked for: to look at a picture, and then for crossings of lines in it. */
export type Asked =
	| { readonly kind: 'file'; readonly file: Blob }
	| { readonly kind: 'picture'; readonly bitmap: ImageBitmap }
	| { readonly kind: 'crossing'; readonly id: number; readonly at: PicturePoint; readonly near: number };

/** Why a file cannot be used. */
export type Refused = 'no-picture' | 'heic' | 'huge' | 'many-pixels' | 'small' | 'broken';

/** What the worker says. */
export type Said =
	| { readonly kind: 'progress'; readonly done: number; readonly of: number }
	| { readonly kind: 'looked'; readonly looked: Looked; readonly bitmap: ImageBitmap; readonly took: number }
	| { readonly kind: 'crossing'; readonly id: number; readonly found: PicturePoint | undefined }
	| { readonly kind: 'refused'; readonly why: Refused }
	| { readonly kind: 'our-fault'; readonly told: string };
