import type { Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { movedAway, pointsDrawnOn } from '#drafting/moved.ts';
import { stepInk } from '#drafting/steps/kinds.ts';

/**
 * How strongly a line or a point is drawn: in ink; *level*, dotted; *traced* off the draft before, pale; or pale
 * and broken where it lay *before* it was moved.
 */
export type Tone = 'ink' | 'level' | 'traced' | 'before';

/** A draft as it is drawn: named points and named lines, each in its tone. */
export interface InkParts {
	readonly points: readonly { readonly name: string; readonly at: SheetPoint; readonly tone: Tone }[];
	readonly lines: readonly { readonly name: string; readonly path: Path; readonly tone: Tone }[];
}

/**
 * The tone of each name of a method. What is traced is inked where it stays an edge of the finished piece, or
 * where a line of its own runs through it; of what was moved the newest copy is inked, and the places where it lay before are pale.
 */
const toneIn = (method: Method, drafted: Drafted, leaving: readonly string[]): ((name: string) => Tone) => {
	const away = movedAway(method, drafted);
	const kept = new Set([...method.outline, ...pointsDrawnOn(method, drafted)]);
	const inks = new Map(method.steps.map((step) => [step.name, stepInk(step)]));
	return (name) => {
		if (away.has(name) || leaving.includes(name)) return 'before';
		const ink = inks.get(name);
		return ink === undefined || ink === 'line' || (ink === 'traced' && kept.has(name)) ? 'ink' : ink;
	};
};

/** What of a draft is drawn: all of it, or only the steps that are wanted. `leaving` are names that are just being moved away. */
export const inkOf = (
	method: Method,
	{ points, lines }: Pick<Drafted, 'points' | 'lines'>,
	wanted: (name: string) => boolean = () => true,
	leaving: readonly string[] = []
): InkParts => {
	const only = <T>(all: Readonly<Record<string, T>>): Record<string, T> =>
		Object.fromEntries(Object.entries(all).filter(([name]) => wanted(name)));
	const drawn = { points: only(points), lines: only(lines) };
	const toneOf = toneIn(method, drawn, leaving);
	return {
		points: Object.entries(drawn.points).map(([name, at]) => ({ name, at, tone: toneOf(name) })),
		lines: Object.entries(drawn.lines).map(([name, { path }]) => ({ name, path, tone: toneOf(name) }))
	};
};
