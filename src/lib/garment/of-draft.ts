import type { Body } from '#shared/body.ts';
import { scopeOf, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { chainsOf } from './chains.ts';
import { edgesOf } from './edges.ts';
import type { Garment } from './garment.ts';
import { seamReport, type SeamReport } from './seams.ts';
import { wearReports, type WearReport } from './wear.ts';

/** Whether a garment's pieces are traced off drafts of this method: its checks are then those of such a draft. */
export const isTracedOff = (garment: Garment, method: Method): boolean =>
	Object.values(garment.uses).some(({ id }) => id === method.id);

/** A draft and all that it leans on. */
const withUsed = (draft: Draft): readonly Draft[] => [draft, ...Object.values(draft.uses).flatMap(withUsed)];

/** What can be told of a garment by some of its drafts. */
export interface OfDraft {
	readonly seams: readonly SeamReport[];
	readonly wear: readonly WearReport[];
}

/** The seams and the wear checks of a garment that can be told by one of its drafts and those that it leans on. */
export const ofDraft = (garment: Garment, draft: Draft, body: Body): OfDraft => {
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
	const seams = garment.seams
		.filter(({ first, second }) => [...first, ...second].every(({ piece }) => piece in edges))
		.map((rule) => seamReport(rule, chainsOf(rule, edges, garment.seams), edges, scope));
	return { seams, wear: wearReports(garment, body, { drafts, edges }, scope) };
};
