import paper from 'paper/dist/paper-core.js';
import { isClockwise } from '../area.ts';
import { pathReversed, type Path } from '../path.ts';
import { outlineOf, paperOutline } from './outline.ts';

/**
 * A closed outline without the loops that it makes across itself: its outer boundary, of which the largest part is
 * kept, run the same way round. Curves stay curves. An outline that does not cross itself is returned as it is.
 * It takes about a tenth of a millisecond to see that there is no loop, and a few times that to take one out.
 */
export const withoutLoops = (outline: Path): Path => {
	const closed = paperOutline(outline);
	if (closed.getCrossings(closed).length === 0) return outline;
	const united = closed.unite(closed, { insert: false });
	const parts = united instanceof paper.CompoundPath ? united.children : [united];
	const largest = parts
		.filter((part) => part instanceof paper.Path)
		.reduce<paper.Path | undefined>(
			(best, part) => (best && Math.abs(best.area) >= Math.abs(part.area) ? best : part),
			undefined
		);
	const boundary = largest && outlineOf(largest);
	if (!boundary) return outline;
	return isClockwise(boundary) === isClockwise(outline) ? boundary : pathReversed(boundary);
};
