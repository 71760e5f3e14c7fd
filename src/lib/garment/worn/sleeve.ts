import { mm, type Mm } from '#shared/units.ts';
import { rootBetween } from '#geometry/root.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import type { Garment, TierRule } from '../garment.ts';
import type { Seen } from './form.ts';
import { placeOn, type Made, type Places } from './panel.ts';
import { halfWidth } from './section.ts';
import type { WornLayer } from './worn.ts';

type SleeveRule = NonNullable<TierRule['sleeve']>;

/** Angles from hanging straight down between which an arm is drawn, in radians. Chosen by eye. */
const [CLOSE, OUT] = [0.12, 1.1];
/** The share of a sleeve's length over which it turns from the shoulder's way to the arm's. */
const TURNS = 0.22;
const STEPS = 24;

/** The length of a sleeve, from the top of its cap to its foot; nothing where the body has none. */
export const sleeveLength = (garment: Garment, { piece, middle }: SleeveRule, { drafts }: Made): Mm => {
	const points = drafts[garment.pieces.find(({ key }) => key === piece)?.draft ?? '']?.points;
	const [top, foot] = middle.map((name) => points?.[name]);
	return top && foot ? distance(top, foot) : mm(0);
};

/** The outer edge of a sleeve so long: over the shoulder, then down the arm at an angle from straight down. */
const outerEdge = (from: SheetPoint, length: number, angle: number, slope: number): Places => {
	const places = [from];
	for (let i = 0; i < STEPS; i++) {
		const turned = Math.min(1, (i + 0.5) / STEPS / TURNS);
		const way = slope + (Math.PI / 2 - angle - slope) * turned * (2 - turned);
		const last = places.at(-1) ?? from;
		places.push(at(last.x + (Math.cos(way) * length) / STEPS, last.y + (Math.sin(way) * length) / STEPS));
	}
	return places;
};

/**
 * The sleeves of a view. A sleeve's outer edge is as long as its pattern from cap to wrist, its wrist a round section seen from the side.
 * How far the arm is lifted follows from the cap: so far that the seam under the arm has its own length from the underarm to the wrist, as
 * a low cap lifts a sleeve and a high one lets it hang; within what still looks like a garment that hangs.
 */
export const seenSleeve = (
	{ sleeve }: TierRule,
	{ panel, put, level }: Seen,
	made: Made,
	garment: Garment
): readonly WornLayer[] => {
	const tip = panel.draft.points[panel.rule.shoulder ?? ''];
	if (!sleeve || !tip) return [];
	const edge = (name: string): Mm =>
		made.edges[sleeve.piece]?.find((each) => each.name === name)?.length ?? mm(0);
	const length = sleeveLength(garment, sleeve, made);
	const [shoulder, underarm] = [put(placeOn(panel, tip)), level(0, 1)];
	const wide = 2 * halfWidth(edge(sleeve.hem) / 4);
	const SLOPE = 0.45;
	const drawn = (angle: number): { outer: Places; inner: SheetPoint } => {
		const outer = outerEdge(shoulder, length, angle, SLOPE);
		const foot = outer.at(-1) ?? shoulder;
		return { outer, inner: at(foot.x - wide * Math.cos(angle), foot.y + wide * Math.sin(angle)) };
	};
	const short = (angle: number): number => distance(underarm, drawn(angle).inner) - edge(sleeve.seam);
	const angle =
		rootBetween(short, CLOSE, OUT, 0.1) ?? (Math.abs(short(CLOSE)) < Math.abs(short(OUT)) ? CLOSE : OUT);
	const { outer, inner } = drawn(angle);
	const foot = outer.at(-1) ?? shoulder;
	// Under the bodice, which is drawn over it, the cloth goes on to where its armhole lies.
	const within = at(shoulder.x * 0.7, (shoulder.y + underarm.y) / 2);
	const flip = (places: Places): Places => places.map(({ x, y }) => at(-x, y));
	const half = (turn: (places: Places) => Places): WornLayer => ({
		side: 'outside',
		cloth: turn([...outer, inner, underarm, within]),
		lines: [outer, [foot, inner], [inner, underarm]].map((places) => ({
			kind: 'outline',
			places: turn(places)
		})),
		buttons: []
	});
	return [half((places) => places), half(flip)];
};
