import type { LinePlacement } from '#shared/placement.ts';
import { TOLERANCES, widened, type Tolerances } from '#shared/tolerances.ts';
import { mm } from '#shared/units.ts';
import type { Verdict } from '#shared/verdict.ts';
import type { Path } from '#geometry/path.ts';
import { judged, judgeMeasured } from './check.ts';
import { endFindings, turnedTo, wayFindings } from './check-line.ts';
import { pathOfPlacement } from './placed.ts';

/**
 * What the checker says of an edge of a paper piece, as it was measured, against the edge that the pattern has there: where its
 * ends lie, how far it strays, and how long it is. It may have been measured from either end.
 */
export const checkEdge = (
	measured: LinePlacement,
	right: Path,
	allowed: Tolerances = TOLERANCES.normal
): Verdict => {
	const drawn = turnedTo(pathOfPlacement(measured), right);
	return judgeMeasured(mm(measured.error ?? 0), (by) => {
		const wider = widened(allowed, by);
		return judged([...endFindings(drawn, right, wider), ...wayFindings(drawn, right, wider)]);
	});
};
