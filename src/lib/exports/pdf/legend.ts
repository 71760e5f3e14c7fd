import { mm } from '#shared/units.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { buttonStrokes } from '#garment/buttons.ts';
import { arcPath } from '#geometry/arc.ts';
import { polyline, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { radians } from '#shared/units.ts';
import type { Drawing, Stroke, StrokeKind } from '../drawing/drawing.ts';
import { alignmentMark } from './page-words.ts';
import type { TextRow } from './text-pages.ts';

/** How long a sample of a line is, and how high a row of the legend, in millimetres. */
const LONG = 26;
const HIGH = mm(8);

const line = polyline(at(0, 0), at(LONG, 0));
const upright = (x: number): Path => polyline(at(x, -3), at(x, 3));
const ring = (x: number, radius: number): Path => arcPath(at(x, 0), at(x + radius, 0), radians(2 * Math.PI));
const arrow = (tip: number, back: number): Path =>
	polyline(at(tip + back, -1.6), at(tip, 0), at(tip + back, 1.6));

/** What each kind of line looks like, as it is drawn on the pieces. */
const SAMPLES = {
	cutting: [line],
	stitching: [line],
	fold: [line],
	grain: [line, arrow(0, 5), arrow(LONG, -5)],
	notch: [upright(6), upright(16), upright(20)],
	mark: [line],
	dart: [polyline(at(0, -3), at(LONG, 0), at(0, 3))],
	drill: [polyline(at(9, 0), at(17, 0)), polyline(at(13, -4), at(13, 4)), ring(13, 2.5)],
	button: buttonStrokes({ at: [at(6, 0)], holes: [polyline(at(14, 0), at(24, 0))] }),
	gather: [
		polyline(at(0, 1.5), at(4, -1.5), at(8, 1.5), at(12, -1.5), at(16, 1.5), at(20, -1.5), at(24, 1.5))
	],
	wear: [line, arrow(0, 5), arrow(LONG, -5)]
} as const satisfies Partial<Record<StrokeKind, readonly Path[]>>;

type Shown = keyof typeof SAMPLES;
const SHOWN = Object.keys(SAMPLES) as readonly Shown[];

const SHARES = [0.2, 0.8] as const;

/** What the lines and marks mean: those that some drawings have, and the marks of the pages themselves. */
export const legend = (drawings: readonly Drawing[], { words: { paper } }: Speech): readonly TextRow[] => {
	const used = new Set(drawings.flatMap(({ strokes }) => strokes.map(({ kind }) => kind)));
	const row = (text: string, sample: readonly Stroke[]): TextRow => ({
		kind: 'row',
		cells: ['', text],
		shares: SHARES,
		sample,
		high: HIGH
	});
	return [
		...SHOWN.filter((kind) => used.has(kind)).map((kind) =>
			row(
				paper.lineMeans({ kind }),
				SAMPLES[kind].map((path) => ({ kind, path }))
			)
		),
		row(
			paper.pageMark,
			alignmentMark(at(13, 0)).map((stroke) => ({ kind: 'leader' as const, ...stroke }))
		)
	];
};
