import type { Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';

/** A draft as it is drawn: named points, and named lines of which levels are faint. */
export interface InkParts {
	readonly points: readonly { readonly name: string; readonly at: SheetPoint }[];
	readonly lines: readonly { readonly name: string; readonly path: Path; readonly faint: boolean }[];
}

/** What of a draft is drawn: all of it, or only the steps that are wanted. */
export const inkOf = (
	method: Method,
	{ points, lines }: Pick<Drafted, 'points' | 'lines'>,
	wanted: (name: string) => boolean = () => true
): InkParts => {
	const levels = new Set(method.steps.filter(({ kind }) => kind === 'level').map(({ name }) => name));
	return {
		points: Object.entries(points)
			.filter(([name]) => wanted(name))
			.map(([name, at]) => ({ name, at })),
		lines: Object.entries(lines)
			.filter(([name]) => wanted(name))
			.map(([name, { path }]) => ({ name, path, faint: levels.has(name) }))
	};
};
