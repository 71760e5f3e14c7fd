import type { StrokeKind } from './drawing.ts';

/** How a kind of line is drawn, in black only: told apart by width and by pattern. */
export interface LineStyle {
	/** In millimetres, of ISO 128's series (from memory): 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1. */
	readonly width: number;
	/** Dash, gap, dash, gap and on, in millimetres; empty for a line without gaps. */
	readonly dashes: readonly number[];
}

const style = (width: number, ...dashes: number[]): LineStyle => ({ width, dashes });

/** Patterns follow ISO 128's kinds of line: full, dashed, chain, double chain; lengths are set for reading at arm's length. */
export const LINE_STYLES: Readonly<Record<StrokeKind, LineStyle>> = {
	cutting: style(0.7),
	stitching: style(0.35, 4, 2),
	fold: style(0.5, 12, 2, 1, 2, 1, 2),
	grain: style(0.25),
	notch: style(0.5),
	mark: style(0.25, 12, 2, 1, 2),
	dart: style(0.35, 2, 1.5),
	drill: style(0.25),
	button: style(0.35),
	gather: style(0.25),
	wear: style(0.7, 6, 1.5),
	leader: style(0.18),
	line: style(0.35),
	level: style(0.18, 4, 2),
	traced: style(0.18, 0.4, 1.6),
	dots: style(0.25),
	heavyDots: style(0.5),
	corner: style(3),
	// The cutting lines of several sizes on one sheet, from the smallest: each by its own rhythm, so that no colour is needed.
	nest1: style(0.5, 1.2, 1.6),
	nest2: style(0.5, 5, 2.5),
	nest3: style(0.5, 7, 1.5, 2.5, 1.5),
	nest4: style(0.5),
	nest5: style(0.5, 7, 1.5, 2.5, 1.5, 2.5, 1.5),
	nest6: style(0.5, 14, 3),
	nest7: style(0.5, 2, 1, 2, 1, 2, 5),
	growth: style(0.18)
};
