import { mm } from '#shared/units.ts';
import { pathEnd, type Path } from './path.ts';
import { directionTo, distance, moved, type SheetPoint } from './point.ts';
import { cubic, straight, type Segment } from './segment.ts';

/** A segment that ends elsewhere, a little away: a straight one is drawn anew, a curve brings its handle along. */
export const segmentEndingAt = (segment: Segment, to: SheetPoint): Segment => {
	if (segment.kind === 'straight') return straight(segment.from, to);
	const { from, leaving, arriving, to: before } = segment;
	const direction = directionTo(before, to);
	if (!direction) return segment;
	return cubic(from, leaving, moved(arriving, direction, mm(distance(before, to))), to);
};

/** A path that goes straight on from its end to a place. */
export const pathRunOn = (path: Path, to: SheetPoint): Path => [
	path[0],
	...path.slice(1),
	straight(pathEnd(path), to)
];
