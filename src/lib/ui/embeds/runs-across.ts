import type { Draft } from '#drafting/evaluate.ts';
import { endDirection, startDirection, type Path } from '#geometry/path.ts';
import { angleBetween, type Direction } from '#geometry/point.ts';

/** A line that runs on from front to back across the shoulder seam, and the corner that it makes there, in degrees. */
export interface RunAcross {
	readonly title: 'neckAcross' | 'armholeAcross';
	readonly corner: number;
	readonly within: boolean;
}

/** The sharpest corner that still runs on smoothly when sewn. Common practice, no source. */
const SHARPEST_DEGREES = 5;

/** The angle between a line's end and the shoulder at that end, in degrees. */
const angleAtShoulder = (line: Direction | undefined, shoulder: Direction | undefined): number =>
	line && shoulder ? (angleBetween(line, shoulder) * 180) / Math.PI : Number.NaN;

const ends = (
	draft: Draft,
	name: string,
	which: (path: Path) => Direction | undefined
): Direction | undefined => {
	const line = draft.lines[name];
	return line && which(line.path);
};

/**
 * How neck and armhole run across the shoulder when front and back are sewn: the angle that each makes
 * with its own shoulder, front and back together, is a straight angle where they run on smoothly.
 */
export const runsAcross = (front: Draft, back: Draft): readonly RunAcross[] => {
	const angle = (draft: Draft, line: string, which: (path: Path) => Direction | undefined): number =>
		angleAtShoulder(ends(draft, line, which), ends(draft, 'shoulder', startDirection));
	const run = (
		title: RunAcross['title'],
		line: string,
		which: (path: Path) => Direction | undefined
	): RunAcross => {
		const corner = Math.abs(angle(front, line, which) + angle(back, line, which) - 180);
		return { title, corner, within: corner <= SHARPEST_DEGREES };
	};
	return [run('neckAcross', 'neck', endDirection), run('armholeAcross', 'armhole', startDirection)];
};
