import type { Body } from '#shared/body.ts';
import { scopeOf, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { edgesOf } from './edges.ts';
import type { Garment } from './garment.ts';
import { wearReports, type WearReport } from './wear.ts';

/** Whether a garment's pieces are traced off drafts of this method: its checks are then those of such a draft. */
export const isTracedOff = (garment: Garment, method: Method): boolean =>
	Object.values(garment.uses).some(({ id }) => id === method.id);

/** A draft and all that it leans on. */
const withUsed = (draft: Draft): readonly Draft[] => [draft, ...Object.values(draft.uses).flatMap(withUsed)];

/** The wear checks of a garment that can be told by one of its drafts and those that it leans on. */
export const wearOfDraft = (garment: Garment, draft: Draft, body: Body): readonly WearReport[] => {
	const all = withUsed(draft);
	const drafts = Object.fromEntries(
		Object.entries(garment.uses).flatMap(([alias, { id }]) => {
			const found = all.find(({ method }) => method === id);
			return found ? [[alias, found] as const] : [];
		})
	);
	const scope = scopeOf(garment, body, { points: {}, lines: {}, uses: drafts });
	const edges = Object.fromEntries(
		garment.pieces.flatMap((rule) => {
			const own = drafts[rule.draft];
			return own ? [[rule.key, edgesOf(rule, own, scope, {})] as const] : [];
		})
	);
	return wearReports(garment, body, { drafts, edges }, scope);
};
