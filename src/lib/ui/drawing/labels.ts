import { mm, px } from '#shared/units.ts';
import { pathSamples, type Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { toScreen, type ScreenPoint, type SheetView } from '../sheet/view.ts';

/** A point's name and where it is written. */
export interface Label {
	readonly name: string;
	readonly at: ScreenPoint;
	readonly point: ScreenPoint;
}

/** How far from its point a name's middle is written, and how near to other ink counts as crowded. */
const AWAY = 15;
const CROWDED = 40;
/** The eight sides on which a name may stand, the preferred first. */
const SIDES = [-45, 0, 45, 135, 180, -135, -90, 90].map((degrees) => (degrees * Math.PI) / 180);

const gap = (a: ScreenPoint, b: ScreenPoint): number => Math.hypot(a.left - b.left, a.top - b.top);

/** Writes each name on the side of its point that is the clearest of lines, points and other names. */
export const placeLabels = (
	points: readonly { readonly name: string; readonly at: SheetPoint }[],
	paths: readonly Path[],
	view: SheetView
): readonly Label[] => {
	const ink = paths.flatMap((path) =>
		path.flatMap((segment) => {
			const step = mm(6 / view.scale);
			const dense: Path =
				segment.kind === 'straight'
					? [{ ...segment, kind: 'cubic', leaving: segment.from, arriving: segment.to }]
					: [segment];
			return pathSamples(dense, step).map((sample) => toScreen(view, sample));
		})
	);
	const marks = points.map(({ at }) => toScreen(view, at));
	const written: ScreenPoint[] = [];
	return points.map(({ name, at }) => {
		const point = toScreen(view, at);
		const near = [...ink, ...marks].filter((other) => gap(other, point) < CROWDED && gap(other, point) > 0.5);
		const room = (side: ScreenPoint): number =>
			Math.min(CROWDED, ...[...near, ...written].map((other) => gap(other, side)));
		const sides = SIDES.map((angle) => ({
			left: px(point.left + AWAY * Math.cos(angle)),
			top: px(point.top + AWAY * Math.sin(angle))
		}));
		const best = sides.reduce((found, side) => (room(side) > room(found) + 0.5 ? side : found));
		written.push(best);
		return { name, at: best, point };
	});
};
