import type { Draft } from '#drafting/evaluate.ts';
import { chanceOf } from '#practice/chance.ts';
import { flattened } from '#geometry/flatten.ts';
import { pathLength, pointAtLength, type Path } from '#geometry/path.ts';
import { mm } from '#shared/units.ts';
import type { PicturePoint } from '#photograph/picture.ts';
import { developed, jpegOf, seenBy } from './camera.ts';
import { GOOD, heldOver, type Condition } from './pictures.ts';
import { cornerMarkers, sceneOf, type LaidMarker, type Place } from './scene.ts';

/** A draft as it was drawn on paper: some points elsewhere than they should be, the whole somewhere on the sheet. */
export interface PaperDraft {
	readonly draft: Draft;
	/** How far some points were drawn from their places, by their names, in the draft's own millimetres. */
	readonly off?: Readonly<Record<string, readonly [x: number, y: number]>>;
	/** Whether it is the other side's. */
	readonly mirrored?: boolean;
	readonly markers?: readonly LaidMarker[];
}

/** A picture's file, and where in it the points are. */
export interface Photographed {
	readonly file: Buffer;
	readonly width: number;
	readonly height: number;
	readonly points: Readonly<Record<string, PicturePoint>>;
	/** Where any place of the sheet is seen. */
	readonly seen: (place: Place) => PicturePoint;
	/** Where a share of the way along a line of the draft is seen. */
	readonly along: (path: Path, share: number) => PicturePoint;
}

const TURN = 0.06;

/** Photographs a draft on paper. */
export const photographed = (
	{ draft, off = {}, mirrored = false, markers = cornerMarkers(70, 0, [0.05, -0.03, 0.04, 0.1]) }: PaperDraft,
	size = { width: 3000, height: 4000 },
	condition: Condition = GOOD
): Photographed => {
	const lines = Object.values(draft.lines).map(({ path }) => flattened(path, mm(0.05)));
	const all = [...lines.flat(), ...Object.values(draft.points)];
	const middle = (axis: 'x' | 'y'): number =>
		(Math.min(...all.map((each) => each[axis])) + Math.max(...all.map((each) => each[axis]))) / 2;
	const [cx, cy] = [middle('x'), middle('y')];
	const onSheet = ({ x, y }: Place): Place => {
		const [dx, dy] = [(x - cx) * (mirrored ? -1 : 1), y - cy];
		return {
			x: 297 + dx * Math.cos(TURN) - dy * Math.sin(TURN),
			y: 420 + dx * Math.sin(TURN) + dy * Math.cos(TURN)
		};
	};
	const drawn = Object.entries(draft.points).map(([name, { x, y }]) => {
		const [right, down] = off[name] ?? [0, 0];
		return [name, onSheet({ x: x + right, y: y + down })] as const;
	});
	const crosses = drawn.flatMap(([, { x, y }]) => [
		[
			{ x: x - 5, y: y - 3 },
			{ x: x + 5, y: y + 3 }
		],
		[
			{ x: x + 3, y: y - 5 },
			{ x: x - 3, y: y + 5 }
		]
	]);
	const scene = sceneOf(markers, [...lines.map((line) => line.map(onSheet)), ...crosses], { perMm: 6 });
	const camera = heldOver(condition, chanceOf(11, 'paper'), size);
	const picture = developed(scene, camera, condition.film, chanceOf(12, 'paper'));
	return {
		...size,
		file: Buffer.from(jpegOf(picture, condition.film.quality)),
		points: Object.fromEntries(drawn.map(([name, place]) => [name, seenBy(camera, place)])),
		seen: (place) => seenBy(camera, place),
		along: (path, share) => {
			const place = pointAtLength(path, mm(pathLength(path) * share));
			if (!place) throw new Error('a share of the way is on it');
			return seenBy(camera, onSheet(place));
		}
	};
};
