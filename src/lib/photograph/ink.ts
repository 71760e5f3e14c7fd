import { lightAt, pixelsApart, type Grey, type PicturePoint } from './picture.ts';

/** A straight dark line near a place: all (u, v) where u cos + v sin = off, about that place. */
interface InkLine {
	readonly angle: number;
	readonly off: number;
	readonly dark: number;
}

/** How many ways a line may run that are tried at first. */
const WAYS = 36;
/** How much darker than the paper about it a line must be, of 255. */
const DARKER = 12;
/** How far from its middle a line darkens the paper, in pixels. */
const LINE_WIDTH = 2.5;
/** Two lines that cross at less than this are one thick line. */
const LEAST_ANGLE = Math.PI / 9;

/** How much darker each pixel about a place is than the paper there, as the light of the brighter half has it. */
const darkness = (
	grey: Grey,
	{ u, v }: PicturePoint,
	reach: number
): ((du: number, dv: number) => number) => {
	const around: number[] = [];
	for (let dv = -reach; dv <= reach; dv++)
		for (let du = -reach; du <= reach; du++) around.push(lightAt(grey, { u: u + du, v: v + dv }));
	around.sort((a, b) => a - b);
	const paper = around[Math.floor(around.length * 0.7)] ?? 255;
	return (du, dv) => Math.max(0, paper - lightAt(grey, { u: u + du, v: v + dv }));
};

/** How dark a line is along its way within a circle: the median, so that what crosses it, or an end of it, does not count for it. */
const alongLine = (
	dark: (du: number, dv: number) => number,
	angle: number,
	off: number,
	reach: number
): number => {
	const half = Math.sqrt(Math.max(0, reach * reach - off * off));
	const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
	const values: number[] = [];
	for (let along = -half; along <= half; along += 1) {
		const much = dark(off * cos - along * sin, off * sin + along * cos);
		if (!Number.isNaN(much)) values.push(much);
	}
	if (values.length < reach) return 0;
	values.sort((a, b) => a - b);
	// A line may end at its crossing: then only half of its way is dark.
	return values[Math.floor(values.length * 0.6)] ?? 0;
};

/** Makes a line's place and way finer, by looking about it in smaller and smaller steps. */
const finer = (dark: (du: number, dv: number) => number, line: InkLine, reach: number): InkLine => {
	let best = line;
	/** The mean over the way: it changes evenly, and the median in steps. */
	const strength = (angle: number, off: number): number => {
		const half = Math.sqrt(Math.max(0, reach * reach - off * off));
		const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
		let sum = 0;
		for (let along = -half; along <= half; along += 0.7)
			sum += Math.min(line.dark * 1.5, dark(off * cos - along * sin, off * sin + along * cos) || 0);
		return sum;
	};
	let [stepAngle, stepOff] = [Math.PI / WAYS / 2, 0.5];
	let most = strength(best.angle, best.off);
	for (let round = 0; round < 7; round++) {
		for (const [i, j] of [
			[-1, 0],
			[1, 0],
			[0, -1],
			[0, 1],
			[-1, -1],
			[1, 1],
			[-1, 1],
			[1, -1]
		] as const) {
			const next = { ...best, angle: best.angle + i * stepAngle, off: best.off + j * stepOff };
			const much = strength(next.angle, next.off);
			if (much > most) [best, most] = [next, much];
		}
		[stepAngle, stepOff] = [stepAngle / 1.6, stepOff / 1.6];
	}
	return best;
};

const angleApart = (a: number, b: number): number => {
	const apart = Math.abs(a - b) % Math.PI;
	return Math.min(apart, Math.PI - apart);
};

const crossingOf = (a: InkLine, b: InkLine): PicturePoint => {
	const det = Math.cos(a.angle) * Math.sin(b.angle) - Math.sin(a.angle) * Math.cos(b.angle);
	return {
		u: (a.off * Math.sin(b.angle) - b.off * Math.sin(a.angle)) / det,
		v: (Math.cos(a.angle) * b.off - Math.cos(b.angle) * a.off) / det
	};
};

/**
 * Where two drawn lines cross near a tapped place, to a part of a pixel; undefined where there are not two that are clearly
 * lines, or where they cross further away than `near`. `near` is in pixels, and so is how far the lines are followed.
 */
export const inkCrossing = (grey: Grey, tapped: PicturePoint, near: number): PicturePoint | undefined => {
	const reach = Math.max(8, Math.round(near * 1.8));
	const dark = darkness(grey, tapped, reach);
	const found: InkLine[] = [];
	for (let way = 0; way < WAYS; way++)
		for (let off = -near; off <= near; off += 1) {
			const angle = (way * Math.PI) / WAYS;
			const much = alongLine(dark, angle, off, reach);
			if (much > DARKER) found.push({ angle, off, dark: much });
		}
	found.sort((a, b) => b.dark - a.dark);
	const [first] = found;
	if (!first) return undefined;
	const one = finer(dark, first, reach);
	/** What the first line has darkened tells nothing of a second. */
	const beside = (du: number, dv: number): number =>
		Math.abs(du * Math.cos(one.angle) + dv * Math.sin(one.angle) - one.off) < LINE_WIDTH ? NaN : dark(du, dv);
	const [second] = found
		.filter(({ angle }) => angleApart(angle, one.angle) > LEAST_ANGLE)
		.map((line) => ({ ...line, dark: alongLine(beside, line.angle, line.off, reach) }))
		.filter((line) => line.dark > Math.max(DARKER, 0.4 * first.dark))
		.sort((a, b) => b.dark - a.dark);
	if (!second) return undefined;
	const place = crossingOf(one, finer(beside, second, reach));
	return pixelsApart(place, { u: 0, v: 0 }) <= near
		? { u: tapped.u + place.u, v: tapped.v + place.v }
		: undefined;
};
