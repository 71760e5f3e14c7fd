import { at } from '#geometry/point.ts';
import type { Form, Seen } from './form.ts';
import type { Places } from './panel.ts';

/** What a gather and a fold take up, in millimetres of a quarter round: how many are drawn. Chosen by eye. */
const [GATHER, FOLD] = [9, 60];
const [MOST_GATHERS, MOST_FOLDS] = [22, 9];
/** The longest gather, the deepest wave of a hem, in millimetres, and how far up a fold runs as a share of what hangs. */
const [LONGEST, DEEPEST, HIGHEST] = [130, 13, 0.75];
/** Shares that look unordered and are the same each time: the golden section's multiples. */
const unordered = (i: number): number => (i * 0.618034) % 1;

/** How many folds the hem of a half falls into, and how deep its waves are. */
const hemFolds = ({ levels }: Form): { readonly count: number; readonly depth: number } => {
	const hem = levels.at(-1);
	const taken = hem && !hem.gathered ? hem.own - hem.seen : 0;
	const count = Math.min(MOST_FOLDS, Math.round(taken / FOLD));
	return { count, depth: count === 0 ? 0 : DEEPEST * Math.min(1, taken / count / (2 * FOLD) + 0.4) };
};

/** How far below the even hem its wave is seen so far out: nothing at the centre and the side, and above it between. */
export const hemHeight = (form: Form, out: number): number => {
	const { count, depth } = hemFolds(form);
	return count === 0 ? 0 : (-depth * (1 - Math.cos(2 * Math.PI * count * out))) / 2;
};

/** The gathers and folds of half a panel. */
export const clothLines = ({
	form,
	put,
	level,
	panel
}: Seen): readonly { readonly kind: 'gather' | 'fold'; readonly places: Places }[] => {
	const last = form.levels.length - 1;
	const down = (span: number, out: number, from: number, to: number): Places =>
		Array.from({ length: 6 }, (_, i) => put({ span, down: from + ((to - from) * i) / 5, out }));
	const gathers = form.levels.flatMap((each, index) => {
		if (!each.gathered) return [];
		const count = Math.min(MOST_GATHERS, Math.round((each.own - each.seen) / GATHER));
		const span = index === 0 ? 0 : index - 1;
		const whole = panel.spans[span]?.centreLength ?? LONGEST;
		return Array.from({ length: count }, (_, i) => {
			const out = (i + 0.5) / count;
			const reach = Math.min(0.8, (LONGEST * (0.25 + 0.75 * unordered(i + 1) ** 2)) / whole);
			return {
				kind: 'gather' as const,
				places: index === 0 ? down(span, out, 0, reach) : down(span, out, 1 - reach * 0.5, 1)
			};
		});
	});
	const { count } = hemFolds(form);
	const folds = Array.from({ length: count }, (_, i) => {
		const out = (i + 0.5) / count;
		const reach = HIGHEST * (0.45 + 0.55 * unordered(i + 2));
		const foot = level(last, out);
		const places = down(last - 1, out, 1 - reach, 1);
		return {
			kind: 'fold' as const,
			places: [...places.slice(0, -1), at(foot.x, foot.y + hemHeight(form, out))]
		};
	});
	return [...gathers, ...folds];
};
