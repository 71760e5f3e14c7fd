import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { toScreen, type SheetView } from './view.ts';

const pair = (view: SheetView, point: SheetPoint): string => {
	const { left, top } = toScreen(view, point);
	return `${left.toFixed(2)} ${top.toFixed(2)}`;
};

/** A line of the sheet as SVG path data in screen pixels. */
export const screenPath = (view: SheetView, path: Path): string =>
	`M${pair(view, path[0].from)}` +
	path
		.map((segment) =>
			segment.kind === 'straight'
				? `L${pair(view, segment.to)}`
				: `C${pair(view, segment.leaving)} ${pair(view, segment.arriving)} ${pair(view, segment.to)}`
		)
		.join('');
