import { mm } from '#shared/units.ts';
import { planPages } from './page-plan.ts';
import { OVERLAP, PAGE_MARGIN, type Paper } from './tiles.ts';
import { arranged } from '../drawing/arrange.ts';
import type { Drawing } from '../drawing/drawing.ts';

/** Widest sheet that is tried, in pages: a floor's width of A4. */
const MOST_COLUMNS = 8;
/** White that a print keeps round everything, on both sides. */
const AROUND = 6;

/** Pieces arranged on a sheet as many pages wide as takes the fewest pages of the paper; of equals the narrower. */
export const onFewestPages = (drawings: readonly Drawing[], paper: Paper): readonly Drawing[] => {
	const page = paper.width - 2 * PAGE_MARGIN;
	let best: { readonly sheet: readonly Drawing[]; readonly pages: number } | undefined;
	for (let columns = 1; columns <= MOST_COLUMNS; columns++) {
		const sheet = arranged(drawings, mm(page + (columns - 1) * (page - OVERLAP) - AROUND));
		const pages = planPages(sheet, paper).tiles.length;
		if (!best || pages < best.pages) best = { sheet, pages };
	}
	return best?.sheet ?? [];
};
