import { describe, expect, it } from 'vitest';
import { pathMeetings } from '#geometry/kernel/meetings.ts';
import { meetingOfEnds, type PathMeeting } from '#geometry/meeting.ts';
import { parallelPath } from '#geometry/parallel.ts';
import { pathReversed, polyline, type Path } from '#geometry/path.ts';
import { distance, at, type SheetPoint } from '#geometry/point.ts';
import { cubic, segmentPoint, straight } from '#geometry/segment.ts';
import { mm } from '#shared/units.ts';
import { expectPlace } from './close.ts';

const placeAt = (path: Path, position: number): SheetPoint => {
	const index = Math.min(Math.floor(position), path.length - 1);
	const segment = path[index];
	if (!segment) throw new Error(`there is no ${position} on the path`);
	return segmentPoint(segment, position - index);
};

/** Expects the positions of a meeting to be where it says that it is. */
const expectPositions = (meeting: PathMeeting | undefined, first: Path, second: Path): void => {
	if (!meeting) throw new Error('they meet');
	expect(distance(placeAt(first, meeting.onFirst), meeting.point)).toBeLessThan(1e-5);
	expect(distance(placeAt(second, meeting.onSecond), meeting.point)).toBeLessThan(1e-5);
};

describe('pathMeetings', () => {
	it('of straight paths gives the share of each', () => {
		const [first, second] = [polyline(at(0, 0), at(10, 0), at(10, 40)), polyline(at(0, 30), at(50, 30))];
		const [met, ...more] = pathMeetings(first, second);
		expect(more).toEqual([]);
		expectPlace(met?.point, 10, 30);
		expect(met?.onFirst).toBeCloseTo(1.75, 9);
		expect(met?.onSecond).toBeCloseTo(0.2, 9);
	});

	it('of a level and the parabola y = 4 - 4 ((x - 5) / 5)², in order, whichever comes first', () => {
		const arch: Path = [cubic(at(0, 0), at(10 / 3, 16 / 3), at(20 / 3, 16 / 3), at(10, 0))];
		const level = polyline(at(-1, 3), at(11, 3));
		const [one, other, ...more] = pathMeetings(arch, level);
		expect(more).toEqual([]);
		expectPlace(one?.point, 2.5, 3, 6);
		expectPlace(other?.point, 7.5, 3, 6);
		expectPositions(one, arch, level);
		expectPositions(other, arch, level);
		const turned = pathMeetings(level, arch);
		expect(turned).toHaveLength(2);
		for (const meeting of turned) expectPositions(meeting, level, arch);
	});

	it('is empty where paths only come near', () => {
		expect(pathMeetings(polyline(at(0, 0), at(9, 0)), polyline(at(0, 0.001), at(9, 0.001)))).toEqual([]);
	});
});

describe('meetingOfEnds', () => {
	/** Two curves that are one curve bent by `angle` at (100, 0), and their parallels on the hollow side. */
	const bent = (angle: number): readonly [Path, Path] => {
		const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
		const before: Path = [cubic(at(0, 12), at(30, 4), at(60, 0), at(100, 0))];
		const after: Path = [
			cubic(at(100, 0), at(100 + 40 * cos, 40 * sin), at(180, 40 * sin + 3), at(220, 40 * sin + 15))
		];
		return [parallelPath(before, mm(10)), pathReversed(parallelPath(after, mm(10)))];
	};

	it('finds crossings at any small angle', () => {
		for (const angle of [0.1, 0.01, 0.0077, 0.001, 0.0005]) {
			const [first, second] = bent(angle);
			const met = meetingOfEnds(first, second);
			expectPositions(met, first, second);
			// Both lines were 10 tan(angle / 2) too long, as beside a corner of two straight lines.
			const over = distance(met?.point ?? at(0, 0), first.at(-1)?.to ?? at(0, 0));
			expect(over / (10 * Math.tan(angle / 2))).toBeCloseTo(1, 1);
		}
	});

	it('of straight lines is where they cross', () => {
		const met = meetingOfEnds([straight(at(0, 0), at(10, 0))], [straight(at(4, 9), at(4, -1))]);
		expectPlace(met?.point, 4, 0);
		expect(met?.onFirst).toBeCloseTo(0.4, 9);
		expect(met?.onSecond).toBeCloseTo(0.9, 9);
	});

	it('is not there where they do not cross, or are parallel', () => {
		expect(meetingOfEnds(polyline(at(0, 0), at(10, 0)), polyline(at(14, 9), at(14, -1)))).toBeUndefined();
		expect(meetingOfEnds(polyline(at(0, 0), at(10, 0)), polyline(at(0, 1), at(10, 1)))).toBeUndefined();
	});
});
