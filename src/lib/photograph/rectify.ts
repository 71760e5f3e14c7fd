import { mm, type Mm } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { flatnessOf, type Flatness } from './flatness.ts';
import { firstGuess, type Guess } from './first-guess.ts';
import { after, backward, normalising, type Homography } from './homography.ts';
import { leastSquares, slopes, type Fit } from './least-squares.ts';
import { times } from './matrix.ts';
import { pixelsApart, type PicturePoint } from './picture.ts';
import { lyingAt, type Lying, type Sightings } from './sightings.ts';
import { toPicture, toSheet, type View } from './view.ts';

/** How a sheet is seen in a picture, and how well that is known. */
export interface Rectified {
	readonly view: View;
	/** How each piece lies, in the order in which they were given. */
	readonly lying: readonly Lying[];
	/** How far the known places lie from where they should be seen: root mean square, on the sheet. */
	readonly residual: Mm;
	/** The same in the picture, in pixels. */
	readonly residualPixels: number;
	/** How many times larger it is than the errors of finding explain: above 1 the paper is not flat, or the places are not as they were said to be. */
	readonly strain: number;
	/** What the known places tell of how flat the paper lies. */
	readonly flatness: Flatness;
	/** How the view's error moves a place on the sheet that is seen there: the squares along x and y, and what they have in common. */
	readonly errorAt: (place: PicturePoint) => readonly [xx: number, xy: number, yy: number];
}

/** How much lenses of telephones bend a picture at its corner, one standard deviation. Assumption: with their own correction a few thousandths, without it 2 %. */
const USUAL_BEND = 0.01;
/** The same for what goes with the fourth power. Assumption: a fifth of it; where the first is undone by its own square instead of bent by it, 2 % leave 0.1 %. */
const USUAL_FURTHER = 0.002;
/** Beyond so many of its own errors a distance was not misread by a hair: it belongs to other places. */
const DISAGREE = 10;
/** Eight numbers of the homography, and two of the bend. */
const VIEW_NUMBERS = 10;
const LYING_NUMBERS = 3;
/** How much tighter than an observation the frame is held, which nothing observes. */
const HELD = 1e5;
/** How much a piece's own turn counts among the others', as an arm in shares of the unit. */
const OWN_ARM = 0.05;

/** Numbers about one in size: places in the picture and on the sheet are normalised, or a derivative would drown in the others. */
interface Scales {
	readonly onSheet: Homography;
	readonly fromPicture: Homography;
	/** Millimetres in one. */
	readonly unit: number;
}

const pieceAt = (numbers: readonly number[], i: number, unit: number): Lying => {
	const from = VIEW_NUMBERS + i * LYING_NUMBERS;
	return {
		x: (numbers[from] ?? 0) * unit,
		y: (numbers[from + 1] ?? 0) * unit,
		turn: numbers[from + 2] ?? 0
	};
};

const viewFrom = (numbers: readonly number[], { width, height }: Sightings, scales: Scales): View => {
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, bend = 0, further = 0] = numbers;
	const plane = after(scales.fromPicture, after([a, b, c, d, e, f, g, h, 1], scales.onSheet));
	return { plane, bend, bendFurther: further * USUAL_FURTHER, width, height };
};

const scalesOf = ({ width, height, pieces }: Sightings, { lying }: Guess): Scales => {
	const places = pieces.flatMap(({ seen }, i) =>
		seen.map(({ own }) => lyingAt(lying[i] ?? { x: 0, y: 0, turn: 0 }, own))
	);
	const onSheet = normalising(places.map(({ x, y }) => [x, y]));
	const half = Math.hypot(width, height) / 2;
	return { onSheet, fromPicture: [half, 0, width / 2, 0, half, height / 2, 0, 0, 1], unit: 1 / onSheet[0] };
};

const numbersOf = ({ plane, lying }: Guess, { onSheet, fromPicture, unit }: Scales): number[] => {
	const near = after(after(backward(fromPicture), plane), backward(onSheet));
	return [
		...near.slice(0, 8).map((each) => each / near[8]),
		0,
		0,
		...lying.flatMap(({ x, y, turn }) => [x / unit, y / unit, turn])
	];
};

/** What keeps the frame where the guess has it: the pieces together are neither shifted nor turned by the search. */
const frameHeld = (lying: readonly Lying[], guess: readonly Lying[], unit: number): readonly number[] => {
	const mean = (of: (i: number) => number): number =>
		lying.reduce((sum, _, i) => sum + of(i), 0) / Math.max(1, lying.length);
	const [x, y] = [mean((i) => guess[i]?.x ?? 0), mean((i) => guess[i]?.y ?? 0)];
	const moved = lying.map((each, i) => ({
		x: each.x - (guess[i]?.x ?? 0),
		y: each.y - (guess[i]?.y ?? 0),
		turn: each.turn - (guess[i]?.turn ?? 0)
	}));
	const arm = (i: number): readonly [number, number] => [(guess[i]?.x ?? 0) - x, (guess[i]?.y ?? 0) - y];
	// A piece by itself can turn only about its own middle.
	const own = (unit * OWN_ARM) ** 2;
	const turned = mean((i) => {
		const [dx, dy] = arm(i);
		return dx * (moved[i]?.y ?? 0) - dy * (moved[i]?.x ?? 0) + own * (moved[i]?.turn ?? 0);
	});
	const arms = mean((i) => arm(i)[0] ** 2 + arm(i)[1] ** 2 + own);
	return [
		(mean((i) => moved[i]?.x ?? 0) / unit) * HELD,
		(mean((i) => moved[i]?.y ?? 0) / unit) * HELD,
		(turned / arms) * HELD
	];
};

/** What is left of every observation for some numbers, each in its own standard deviation; first the real ones. */
const leftOf = (sightings: Sightings, guess: Guess, scales: Scales) => {
	const { pieces, distances } = sightings;
	return (numbers: readonly number[]): readonly number[] => {
		const view = viewFrom(numbers, sightings, scales);
		const lying = pieces.map((_, i) => pieceAt(numbers, i, scales.unit));
		const named = (name: string): Lying | undefined =>
			lying[pieces.findIndex((piece) => piece.name === name)];
		const seen = pieces.flatMap(({ seen: all, error }, i) =>
			all.flatMap(({ own, picture }) => {
				const should = toPicture(view, lyingAt(lying[i] ?? { x: 0, y: 0, turn: 0 }, own));
				return [(picture.u - should.u) / error, (picture.v - should.v) / error];
			})
		);
		const measured = distances.map(({ from, to, length, error }) => {
			const [a, b] = [named(from), named(to)];
			return a && b ? (Math.hypot(b.x - a.x, b.y - a.y) - length) / error : 0;
		});
		return [
			...seen,
			...measured,
			view.bend / USUAL_BEND,
			view.bendFurther / USUAL_FURTHER,
			...frameHeld(lying, guess.lying, scales.unit),
			// How a single point is turned means nothing.
			...lying.map(({ turn }, i) => (pieces[i]?.seen.length === 1 ? turn : 0))
		];
	};
};

/** How many more observations there are than numbers to be found: what is left can tell of nothing else. */
const spare = ({ pieces, distances }: Sightings): number => {
	const seen = pieces.reduce((sum, piece) => sum + piece.seen.length * 2, 0);
	const free = pieces.reduce((sum, piece) => sum + (piece.seen.length === 1 ? 2 : LYING_NUMBERS), 0);
	return seen + distances.length - (VIEW_NUMBERS - 2) - (free - LYING_NUMBERS);
};

/** How large a pixel is on the sheet about a place of the picture. */
export const pixelOnSheet = (view: View, { u, v }: PicturePoint): Mm => {
	const [here, right, below] = [
		{ u, v },
		{ u: u + 1, v },
		{ u, v: v + 1 }
	].map((each) => toSheet(view, each));
	const apart = (a: SheetPoint = at(0, 0), b: SheetPoint = at(0, 0)): number =>
		Math.hypot(b.x - a.x, b.y - a.y);
	return mm(Math.max(apart(here, right), apart(here, below)));
};

const errorFrom = (fit: Fit, sightings: Sightings, scales: Scales, factor: number): Rectified['errorAt'] => {
	const numbers = fit.numbers.slice(0, VIEW_NUMBERS);
	return (place) => {
		const rows = slopes((each) => {
			const { x, y } = toSheet(viewFrom(each, sightings, scales), place);
			return [x, y];
		}, numbers);
		const [x = [], y = []] = rows;
		const spread = fit.spread.slice(0, VIEW_NUMBERS).map((row) => row.slice(0, VIEW_NUMBERS));
		const dot = (a: readonly number[], b: readonly number[]): number =>
			times(spread, b).reduce((sum, each, i) => sum + each * (a[i] ?? 0), 0) * factor ** 2;
		return [dot(x, x), dot(x, y), dot(y, y)];
	};
};

/**
 * How the sheet is seen: the homography, the lens's bend, and how each piece lies in the plane, all from one least squares fit
 * over everything that was found and measured. Undefined where that does not tell it, or where distances contradict each other.
 */
export const rectify = (sightings: Sightings): Rectified | undefined => {
	const guess = firstGuess(sightings);
	if (!guess) return undefined;
	const scales = scalesOf(sightings, guess);
	const fit = leastSquares(leftOf(sightings, guess, scales), numbersOf(guess, scales));
	if (!fit) return undefined;
	const seenNumbers = sightings.pieces.reduce((count, { seen }) => count + seen.length * 2, 0);
	const distances = fit.left.slice(seenNumbers, seenNumbers + sightings.distances.length);
	if (distances.some((each) => Math.abs(each) > DISAGREE)) return undefined;
	const view = viewFrom(fit.numbers, sightings, scales);
	const lying = sightings.pieces.map((_, i) => pieceAt(fit.numbers, i, scales.unit));
	const off = sightings.pieces.flatMap(({ seen }, i) =>
		seen.map(({ own, picture }) => {
			const place = lyingAt(lying[i] ?? { x: 0, y: 0, turn: 0 }, own);
			return { pixels: pixelsApart(picture, toPicture(view, place)), size: pixelOnSheet(view, picture) };
		})
	);
	const rms = (each: readonly number[]): number =>
		Math.sqrt(each.reduce((sum, one) => sum + one * one, 0) / Math.max(1, each.length));
	const sum = fit.left
		.slice(0, seenNumbers + sightings.distances.length)
		.reduce((total, each) => total + each * each, 0);
	const strain = Math.sqrt(sum / Math.max(1, spare(sightings)));
	const places = sightings.pieces.flatMap(({ seen, error }, i) =>
		seen.map(({ own }) => ({ sheet: lyingAt(lying[i] ?? { x: 0, y: 0, turn: 0 }, own), error }))
	);
	return {
		view,
		lying,
		residual: mm(rms(off.map(({ pixels, size }) => pixels * size))),
		residualPixels: rms(off.map(({ pixels }) => pixels)),
		strain,
		flatness: flatnessOf(view, places, fit),
		errorAt: errorFrom(fit, sightings, scales, Math.max(1, strain))
	};
};
