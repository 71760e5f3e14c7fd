import type { PathMeeting } from '../meeting.ts';
import type { Path } from '../path.ts';
import { at } from '../point.ts';
import type { Segment } from '../segment.ts';
import { paperCurve } from './outline.ts';

/** The share of a segment at paper's parameter: of a straight piece, which paper has as a curve without handles, it is not t. */
const shareAt = ({ kind }: Segment, t: number): number => (kind === 'straight' ? t * t * (3 - 2 * t) : t);

/** Two curves that cross at a thousandth of a turn: paper may see that from one curve's side and not from the other's. */
const meetingsOf = (curve: paper.Curve, other: paper.Curve): readonly paper.CurveLocation[] => {
	const found = curve.getIntersections(other);
	return found.length > 0 ? found : other.getIntersections(curve);
};

/** Every place where two paths cross or touch, with its position on each; in order along the first. */
export const pathMeetings = (first: Path, second: Path): readonly PathMeeting[] => {
	const others = second.map((segment) => ({ segment, other: paperCurve(segment) }));
	const meetings = first.flatMap((segment, i) => {
		const curve = paperCurve(segment);
		return others.flatMap(({ segment: across, other }, j) =>
			meetingsOf(curve, other).map((location) => {
				// paper answers from the curve's side or the other's, as it went about it.
				const [here, there] =
					location.curve === curve ? [location, location.intersection] : [location.intersection, location];
				return {
					point: at(location.point.x, location.point.y),
					onFirst: i + shareAt(segment, here.time),
					onSecond: j + shareAt(across, there.time)
				};
			})
		);
	});
	return meetings.sort((a, b) => a.onFirst - b.onFirst);
};
