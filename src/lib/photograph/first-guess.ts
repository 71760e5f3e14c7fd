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

/** From single points, of which the distances from two of them to all others are known: those two come first. */
const fromBase = (
	seen: readonly { readonly name: string; readonly picture: PicturePoint }[],
	lengthOf: (one: string, other: string) => number
): ReadonlyMap<string, SheetPoint> | undefined => {
	const [a, b, ...others] = seen;
	if (!a || !b) return undefined;
	const base = lengthOf(a.name, b.name);
	const places = new Map([
		[a.name, at(0, 0)],
		[b.name, at(base, 0)]
	]);
	for (const { name, picture } of others) {
		const [near, far] = [lengthOf(a.name, name), lengthOf(b.name, name)];
		const x = (near * near - far * far + base * base) / (2 * base);
		places.set(name, at(x, turnOf(a.picture, b.picture, picture) * Math.sqrt(near * near - x * x)));
	}
	return [...places.values()].every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))
		? places
		: undefined;
};

/** From four single points and five of their six distances, or all. */
const fromDistances = ({ pieces, distances }: Sightings): Guess | undefined => {
	const seen = pieces.flatMap(({ name, seen: [only] }) => (only ? [{ name, picture: only.picture }] : []));
	const lengthOf = (one: string, other: string): number =>
		distances.find(({ from, to }) => (from === one && to === other) || (from === other && to === one))
			?.length ?? NaN;
	for (const a of seen)
		for (const b of seen) {
			if (a === b) continue;
			const places = fromBase([a, b, ...seen.filter((each) => each !== a && each !== b)], lengthOf);
			const of = (name: string): SheetPoint => places?.get(name) ?? at(0, 0);
			const plane = places && homographyOf(seen.map(({ name, picture }) => ({ sheet: of(name), picture })));
			if (plane) return { plane, lying: seen.map(({ name }) => ({ x: of(name).x, y: of(name).y, turn: 0 })) };
		}
	return undefined;
};

/** A first idea of how the sheet is seen; undefined where too little was found, or the distances close no triangle. */
export const firstGuess = (sightings: Sightings): Guess | undefined =>
	fromPieces(sightings) ?? fromDistances(sightings);
