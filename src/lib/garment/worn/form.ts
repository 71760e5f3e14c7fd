import { at, type SheetPoint } from '#geometry/point.ts';
import { widthAt, type Panel, type PanelPlace } from './panel.ts';
import { hanging, halfWidth, seenAcross } from './section.ts';

/** Steps in which a side is followed down a span. */
const STEPS = 12;
/** How soon cloth that is gathered at a level lets go of it: the higher, the sooner. Chosen by eye. */
const LETS_GO = 2;
/** A side that runs out falls at least so steeply: this share of its length goes down. */
const LEAST_FALL = 0.3;
/** How far the middle of a waist is seen below its sides, as a share of its half width: one looks down on it a little. Chosen by eye. */
const DIP = 0.09;

/** How many times as wide as the shoulders the underarms are seen at most: what is fuller stands forward there. Chosen by eye. */
const WIDEST = 1.1;

/** How wide a tier is seen at a level, and what lies there. All in millimetres of a quarter round but `half`. */
interface SeenLevel {
	/** The cloth's own quarter, the mean of front and back. */
	readonly own: number;
	/** What of it is seen: drawn in by gathers, or fallen into folds. */
	readonly seen: number;
	readonly half: number;
	readonly gathered: boolean;
}

/** Half widths down one span, at equal steps. */
type Halves = readonly number[];

/** How a tier is seen: its levels, and its half widths between them, alike from the front and the back. */
export interface Form {
	readonly levels: readonly SeenLevel[];
	readonly spans: readonly Halves[];
}

const mean = (panels: readonly Panel[], of: (panel: Panel) => number): number =>
	panels.reduce((sum, panel) => sum + of(panel), 0) / panels.length;

/**
 * The form of a tier round a body whose girths are these at its levels. Gathered levels are drawn in to the body; `gathered` says that the
 * first is, since it is sewn to what is. `shoulders`: half their width, where the tier hangs from them.
 */
export const formOf = (
	panels: readonly Panel[],
	girths: readonly number[],
	gathered: boolean,
	shoulders = Infinity
): Form => {
	const first = panels[0];
	/** What share of a half width is seen so far down the first span: at its top that which does not stand forward. */
	let beside = 1;
	const widthOf = (quarter: number, down: number): number =>
		halfWidth(quarter) * (beside + (1 - beside) * down);
	const levels = (first?.levels ?? []).map((level, i): SeenLevel => {
		const own = mean(panels, (panel) => panel.levels[i]?.width ?? 0);
		const body = (girths[i] ?? 0) / 4;
		const isGathered = level.gathered || (i === 0 && gathered);
		const seen = isGathered ? Math.min(own, body) : hanging(own, body);
		if (i === 0) beside = Math.min(1, (WIDEST * shoulders) / halfWidth(seen));
		return { own, seen, half: widthOf(seen, Math.min(1, i)), gathered: isGathered };
	});
	const spans = levels.slice(1).map((lower, i): Halves => {
		const upper = levels[i] ?? lower;
		const [from = 0, to = from] = [girths[i], girths[i + 1]];
		return Array.from({ length: STEPS + 1 }, (_, step) => {
			const down = step / STEPS;
			const own = mean(panels, (panel) => {
				const span = panel.spans[i];
				return span ? widthAt(panel, span, down) : 0;
			});
			const free = hanging(own, (from + (to - from) * down) / 4) / own;
			// What gathers draw in is let go over the span.
			const held = (level: SeenLevel, away: number): number =>
				level.gathered ? (level.seen / hanging(level.own, level.seen) - 1) * (1 - away) ** LETS_GO : 0;
			return widthOf(own * free * (1 + held(upper, down) + held(lower, 1 - down)), Math.min(1, i + down));
		}).map((half, step) => (step === 0 ? upper.half : step === STEPS ? lower.half : half));
	});
	return { levels, spans };
};

/** Where the centre and the side of a panel lie from its first level down. */
interface Fall {
	readonly centre: readonly number[];
	readonly side: readonly (readonly number[])[];
}

/** A panel as it is seen on a form: puts every place of it where it is seen, from the middle outward and down. */
export interface Seen {
	readonly panel: Panel;
	readonly form: Form;
	readonly put: (place: PanelPlace) => SheetPoint;
	/** Where a level is seen so far out. */
	readonly level: (index: number, out: number) => SheetPoint;
	/** The heights of centre and side at the last level. */
	readonly foot: readonly [number, number];
}

const between = (values: readonly number[], share: number): number => {
	const at = Math.min(1, Math.max(0, share)) * (values.length - 1);
	const i = Math.min(values.length - 2, Math.floor(at));
	const [from = 0, to = from] = [values[i], values[i + 1]];
	return from + (to - from) * (at - i);
};

/** Lengths down the centre and down the side are the panel's own: where the side runs out or in, it falls the less. */
const fallOf = (panel: Panel, { spans }: Form, [centre, side]: readonly [number, number]): Fall => {
	const centres = [centre];
	let height = side;
	const sides = panel.spans.map(({ sideLength, centreLength }, i) => {
		centres.push((centres[i] ?? centre) + centreLength);
		const [halves, step] = [spans[i] ?? [], sideLength / STEPS];
		const heights = [height];
		for (let k = 1; k <= STEPS; k++) {
			const out = (halves[k] ?? 0) - (halves[k - 1] ?? 0);
			height += Math.sqrt(Math.max(step * step - out * out, (LEAST_FALL * step) ** 2));
			heights.push(height);
		}
		return heights;
	});
	return { centre: centres, side: sides };
};

/** Where a tier that hangs from the waist begins. */
const atWaist = ({ levels }: Form): readonly [number, number] => [0, -DIP * (levels[0]?.half ?? 0)];

/**
 * A panel on its form. What lies above the first level keeps its own height; below, lengths down the centre and down the side are its
 * own, and what lies between is put by shares. `from` is where its first level hangs, by the heights of centre and side.
 */
export const seenOn = (
	panel: Panel,
	form: Form,
	from: readonly [number, number] | 'shoulder' | 'waist'
): Seen => {
	const top = panel.levels[0];
	const own: readonly [number, number] = [top?.centre.y ?? 0, top?.side.y ?? 0];
	const start = from === 'shoulder' ? own : from === 'waist' ? atWaist(form) : from;
	const fall = fallOf(panel, form, start);
	const put = ({ span, down, out, above = 0 }: PanelPlace): SheetPoint => {
		const half = between(form.spans[span] ?? [], down);
		const across = seenAcross(out);
		const [upper = 0, lower = upper] = [fall.centre[span], fall.centre[span + 1]];
		const centre = upper + (lower - upper) * down;
		const side = between(fall.side[span] ?? [], down);
		return at(half * across, centre + (side - centre) * across * across - above);
	};
	const level = (index: number, out: number): SheetPoint =>
		index === 0 ? put({ span: 0, down: 0, out }) : put({ span: index - 1, down: 1, out });
	return { panel, form, put, level, foot: [fall.centre.at(-1) ?? 0, fall.side.at(-1)?.at(-1) ?? 0] };
};
