import { mm, px } from '#shared/units.ts';
import { pathSamples, type Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Tone } from './ink-of.ts';
import { toScreen, type ScreenPoint, type SheetView } from './view.ts';

/** A point's name and where it is written. */
export interface Label {
	readonly name: string;
	readonly at: ScreenPoint;
	readonly point: ScreenPoint;
	/** Whether it is so far off that a fine line has to lead to it. */
	readonly led: boolean;
	/** Whether it is left out: it would stand on other ink, and can be done without. */
	readonly left: boolean;
}

/**
 * How much a name is wanted. *needed*: always written, and before all others. *passing*: of a point that was
 * moved away, written where there is ample room. Any other is left out only where it would lie on other ink.
 */
type Want = 'needed' | 'usual' | 'passing';
const WANTS: readonly Want[] = ['needed', 'usual', 'passing'];

/** How far from its point a name's middle is written; and how far where that leaves it no room. */
const AWAY = 15;
const FURTHER = 30;
/** How near to other ink counts as crowded, and how near as no room at all: half the length of a short name, and a little air. */
const CROWDED = 40;
const NO_ROOM = 12;
/** How much room each name must have to be written, in pixels to the nearest other ink. */
const ROOM_WANTED: Readonly<Record<Want, number>> = { needed: 0, usual: 8, passing: 16 };
const NAME_SHARE = 0.7;
const turned = (degrees: readonly number[]): readonly number[] =>
	degrees.map((each) => (each * Math.PI) / 180);
/** The eight sides on which a name may stand, the preferred first; further away there are more. */
const SIDES = turned([-45, 0, 45, 135, 180, -135, -90, 90]);
const SIDES_FURTHER = turned(Array.from({ length: 16 }, (_, i) => -45 + i * 22.5));

const gap = (a: ScreenPoint, b: ScreenPoint): number => Math.hypot(a.left - b.left, a.top - b.top);

/** A point whose name is to be written. */
interface Named {
	readonly name: string;
	readonly at: SheetPoint;
	/** Always written where nothing else is said. */
	readonly want?: Want;
}

/** Writes each name on the side of its point that is the clearest of lines, points and other names; the most wanted names choose first. */
export const placeLabels = (
	points: readonly Named[],
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
	const write = ({ name, at, want = 'needed' }: Named): Label => {
		const point = toScreen(view, at);
		const near = [...ink, ...marks].filter(
			(other) => gap(other, point) < FURTHER + CROWDED && gap(other, point) > 0.5
		);
		const room = (side: ScreenPoint): number =>
			Math.min(
				CROWDED,
				...near.map((other) => gap(other, side)),
				// A name is as wide as the one that it comes near to.
				...written.map((other) => NAME_SHARE * gap(other, side))
			);
		const clearest = (angles: readonly number[], away: number): ScreenPoint =>
			angles
				.map((angle) => ({
					left: px(point.left + away * Math.cos(angle)),
					top: px(point.top + away * Math.sin(angle))
				}))
				.reduce((found, side) => (room(side) > room(found) + 0.5 ? side : found));
		const beside = clearest(SIDES, AWAY);
		const further = room(beside) < NO_ROOM ? clearest(SIDES_FURTHER, FURTHER) : beside;
		const best = room(further) > room(beside) ? further : beside;
		const left = room(best) < ROOM_WANTED[want];
		if (!left) written.push(best);
		return { name, at: best, point, led: best !== beside, left };
	};
	const labels = new Map(
		WANTS.flatMap((each) => points.filter(({ want = 'needed' }) => want === each)).map((point) => [
			point,
			write(point)
		])
	);
	return points.flatMap((point) => labels.get(point) ?? []);
};

type Toned<T> = readonly (T & { readonly name: string; readonly tone?: Tone })[];

/** What is drawn: named points and lines, in ink where no tone is said. */
export interface Inked {
	readonly points: Toned<{ readonly at: SheetPoint }>;
	readonly lines: Toned<{ readonly path: Path }>;
}

/** Pale lines lie under the ink, and names may stand on them. */
export const isPale = (tone: Tone | undefined): boolean => tone === 'before' || tone === 'traced';

/** Where the names of a drawn draft are written, those that are `needed` before all others, clear of what else is drawn `around`. */
export const inkLabels = (
	{ points, lines }: Inked,
	view: SheetView,
	needed: readonly string[] = [],
	around: readonly Path[] = []
): readonly Label[] =>
	placeLabels(
		points.map(({ name, at, tone }) => ({
			...{ name, at },
			want: needed.includes(name) ? 'needed' : tone === 'before' ? 'passing' : 'usual'
		})),
		[...lines.filter(({ tone }) => !isPale(tone)).map(({ path }) => path), ...around],
		view
	);
