import { SAME_PLACE } from '#shared/tolerances.ts';
import { distance } from '#geometry/point.ts';
import type { Tool } from '../tool.svelte.ts';

/** The handles that were settled by typing: one that was typed where it stood is not asked for again. */
const settledHandles = new WeakMap<Tool, Set<string>>();

const settledOf = (tool: Tool): Set<string> => {
	const settled = settledHandles.get(tool) ?? new Set();
	settledHandles.set(tool, settled);
	return settled;
};
const keyOf = ({ work, stepName }: Tool, id: string): string =>
	[work.method.id, work.learner.current.id, stepName, id].join(' ');

/** Notes that a handle was placed by typing. */
export const settleHandle = (tool: Tool, id: string): void => {
	settledOf(tool).add(keyOf(tool, id));
};

/** Whether a handle still stands where it begins. */
const standsAtBeginning = (tool: Tool, id: string): boolean => {
	const [begin, place] = [tool.beginOf(id), tool.places[id]];
	return begin !== undefined && place !== undefined && distance(place, begin) <= SAME_PLACE;
};

/** Whether a handle of the curve at hand was given no place yet. */
export const isOpenHandle = (tool: Tool, id: string): boolean =>
	!settledOf(tool).has(keyOf(tool, id)) && standsAtBeginning(tool, id);

/** The first handle after the chosen one, and round again, that was given no place yet. */
export const nextOpenHandle = (tool: Tool): string | undefined => {
	const ids = tool.targets.map(({ id }) => id);
	const chosen = ids.indexOf(tool.target?.id ?? '');
	return [...ids.slice(chosen + 1), ...ids.slice(0, chosen)].find((id) => isOpenHandle(tool, id));
};
