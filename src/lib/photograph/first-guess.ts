import { at, type SheetPoint } from '#geometry/point.ts';
import { backward, homographyOf, sheetAt, type Homography } from './homography.ts';
import { lyingAt, lyingOn, type Lying, type Piece, type Sightings } from './sightings.ts';
import type { PicturePoint } from './picture.ts';

/** A first idea of how the sheet is seen, and how each piece lies on it. */
export interface Guess {
	readonly plane: Homography;
	readonly lying: readonly Lying[];
}

/** How much of the picture a piece takes up, in square pixels, by the rectangle about it. */
const roomOf = ({ seen }: Piece): number => {
	const us = seen.map(({ picture }) => picture.u);
	const vs = seen.map(({ picture }) => picture.v);
	return (Math.max(...us) - Math.min(...us)) * (Math.max(...vs) - Math.min(...vs));
};

/** From the piece that tells most: how it is seen says how the others lie, and all of them then how the sheet is seen. */
const fromPieces = ({ pieces }: Sightings): Guess | undefined => {
	const wide = pieces.filter(({ seen }) => seen.length >= 4);
	const [first] = [...wide].sort((a, b) => roomOf(b) - roomOf(a));
	let plane = first && homographyOf(first.seen.map(({ own, picture }) => ({ sheet: own, picture })));
	if (!plane) return undefined;
	let lying: readonly Lying[] = [];
	// One piece alone sees far ones roughly; each round straightens what the one before has bent.
	for (let round = 0; round < 4; round++) {
		const back = backward(plane);
		lying = pieces.map((piece) =>
			piece === first
				? { x: 0, y: 0, turn: 0 }
				: lyingOn(piece.seen.map(({ own, picture }) => ({ own, sheet: sheetAt(back, picture) })))
		);
		const all = pieces.flatMap((piece, i) =>
			piece.seen.map(({ own, picture }) => ({
				sheet: lyingAt(lying[i] ?? { x: 0, y: 0, turn: 0 }, own),
				picture
			}))
		);
		plane = homographyOf(all) ?? plane;
	}
	return { plane, lying };
};

/** Whether three places turn from x toward y. */
const turnOf = (a: PicturePoint, b: PicturePoint, c: PicturePoint): number =>
	Math.sign((b.u - a.u) * (c.v - a.v) - (b.v - a.v) * (c.u - a.u));

/** From four single points and the distances from the first two to all others. */
const fromDistances = ({ pieces, distances }: Sightings): Guess | undefined => {
	const seen = pieces.flatMap(({ name, seen: [only] }) => (only ? [{ name, picture: only.picture }] : []));
	const [a, b, ...others] = seen;
	if (!a || !b) return undefined;
	const lengthOf = (one: string, other: string): number =>
		distances.find(({ from, to }) => (from === one && to === other) || (from === other && to === one))
			?.length ?? NaN;
	const base = lengthOf(a.name, b.name);
	const places: readonly SheetPoint[] = [
		at(0, 0),
		at(base, 0),
		...others.map(({ name, picture }) => {
			const [near, far] = [lengthOf(a.name, name), lengthOf(b.name, name)];
			const x = (near * near - far * far + base * base) / (2 * base);
			return at(x, turnOf(a.picture, b.picture, picture) * Math.sqrt(near * near - x * x));
		})
	];
	if (!places.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))) return undefined;
	const plane = homographyOf(seen.map(({ picture }, i) => ({ sheet: places[i] ?? at(0, 0), picture })));
	return plane && { plane, lying: places.map(({ x, y }) => ({ x, y, turn: 0 })) };
};

/** A first idea of how the sheet is seen; undefined where too little was found, or the distances close no triangle. */
export const firstGuess = (sightings: Sightings): Guess | undefined =>
	fromPieces(sightings) ?? fromDistances(sightings);
