import { SAME_PLACE } from '#shared/tolerances.ts';
import type { Mm } from '#shared/units.ts';
import type { Path } from './path.ts';
import { between, type SheetPoint } from './point.ts';
import { cubic, parameterAtLength, segmentLength, straight, type Segment } from './segment.ts';

/** The part of a cubic's four places up to t, by de Casteljau's construction; it is exact, and starts where the cubic starts. */
const upTo = (
	[a, b, c, d]: readonly [SheetPoint, SheetPoint, SheetPoint, SheetPoint],
	t: number
): readonly [SheetPoint, SheetPoint, SheetPoint, SheetPoint] => {
	const [ab, bc, cd] = [between(a, b, t), between(b, c, t), between(c, d, t)];
	const [abc, bcd] = [between(ab, bc, t), between(bc, cd, t)];
	return [a, ab, abc, between(abc, bcd, t)];
};

/** The part of a segment from parameter `from` to parameter `to`, which must grow; the whole of it is the segment itself. */
export const segmentPart = (segment: Segment, from: number, to: number): Segment => {
	if (from <= 0 && to >= 1) return segment;
	if (segment.kind === 'straight') {
		const start = from <= 0 ? segment.from : between(segment.from, segment.to, from);
		return straight(start, to >= 1 ? segment.to : between(segment.from, segment.to, to));
	}
	const { from: a, leaving: b, arriving: c, to: d } = segment;
	const head = to >= 1 ? ([a, b, c, d] as const) : upTo([a, b, c, d], to);
	if (from <= 0) return cubic(...head);
	const [h0, h1, h2, h3] = head;
	const tail = upTo([h3, h2, h1, h0], 1 - from / to);
	return cubic(tail[3], tail[2], tail[1], tail[0]);
};

/**
 * The part of a path between two lengths along it, exact: curves stay curves, and segments that lie
 * in it whole are the very same. Undefined where the part would leave the path or has no length. Lengths
 * are sums whose last digits are noise, so whatever is shorter than SAME_PLACE is forgiven at either end.
 */
export const pathSection = (path: Path, from: Mm, to: Mm): Path | undefined => {
	if (from < -SAME_PLACE) return undefined;
	const parts: Segment[] = [];
	let before = 0;
	for (const segment of path) {
		const length = segmentLength(segment);
		const [start, end] = [Math.max(from - before, 0), Math.min(to - before, length)];
		before += length;
		if (end - start <= SAME_PLACE) continue;
		const parameter = (along: number): number => {
			if (along <= SAME_PLACE) return 0;
			return along >= length - SAME_PLACE ? 1 : parameterAtLength(segment, along as Mm);
		};
		parts.push(segmentPart(segment, parameter(start), parameter(end)));
	}
	const [first, ...rest] = parts;
	return first && to <= before + SAME_PLACE ? [first, ...rest] : undefined;
};

/**
 * A position on a path: the number of its segment and, as a fraction, the parameter within that segment. 2.5 lies at the middle
 * parameter of the third segment, and the number of segments is the path's end.
 */
export type PathPosition = number;

/** Share of a segment below which a part of it is noise: a ten-millionth of a millimetre in a segment of a metre. */
const NOISE = 1e-10;

/** The part of a path between two positions on it; undefined where that has no length. */
export const pathPart = (path: Path, from: PathPosition, to: PathPosition): Path | undefined => {
	const [first, ...rest] = path.flatMap((segment, i) => {
		const [start, end] = [Math.max(from - i, 0), Math.min(to - i, 1)];
		return end - start > NOISE ? [segmentPart(segment, start, end)] : [];
	});
	return first && [first, ...rest];
};
