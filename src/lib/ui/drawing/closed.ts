import { UNWRITTEN } from '#shared/tolerances.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { mirroring, type Motion } from '#geometry/motion.ts';
import { chained, pathEnd, pathStart, type Path } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';

/** The outline of a draft as one closed path; undefined while its lines do not close. */
export const closedOutline = (method: Method, { lines }: Pick<Drafted, 'lines'>): Path | undefined => {
	const drawn = method.outline.flatMap((name) => {
		const line = lines[name];
		return line ? [line.path] : [];
	});
	const outline = chained(drawn);
	return outline && distance(pathStart(outline), pathEnd(outline)) <= UNWRITTEN ? outline : undefined;
};

/** The motion onto the other half of the piece; undefined where the whole is drafted. */
export const ontoOtherHalf = (
	{ fold = '' }: Method,
	{ lines }: Pick<Drafted, 'lines'>
): Motion | undefined => {
	const line = lines[fold];
	return line && mirroring(pathStart(line.path), pathEnd(line.path));
};
