import { radians } from '#shared/units.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { polyline, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { draftLineKind, drawnNow, namePlaces, POINT_NAME_SIZE, type DraftLineKind } from './draft-lines.ts';
import type { Drawing, Stroke } from './drawing.ts';

/** How a draft's lines are drawn: its outline as strong as what is cut. */
const KINDS: Readonly<Record<DraftLineKind, Stroke['kind']>> = {
	outline: 'cutting',
	level: 'level',
	traced: 'traced',
	line: 'line'
};

/** Half the length of the small cross that marks a point, in millimetres. */
const CROSS = 1;

const cross = ({ x, y }: SheetPoint): readonly Path[] => [
	polyline(at(x - CROSS, y), at(x + CROSS, y)),
	polyline(at(x, y - CROSS), at(x, y + CROSS))
];

/** A draft at true scale: its outline, its other lines and levels, and its points with their names. */
export const draftDrawing = (method: Method, draft: Draft): Drawing => {
	const { points, lines } = drawnNow(method, draft);
	const places = namePlaces(points);
	return {
		name: method.name,
		strokes: [
			...Object.entries(lines).map(([name, { path }]): Stroke => ({
				kind: KINDS[draftLineKind(method, name)],
				path
			})),
			...Object.values(points).flatMap((point) =>
				cross(point).map((path): Stroke => ({ kind: 'line', path }))
			)
		],
		words: Object.entries(places).map(([text, place]) => ({
			text,
			at: place,
			middle: false,
			size: POINT_NAME_SIZE,
			turn: radians(0)
		}))
	};
};
