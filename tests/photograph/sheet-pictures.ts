import type { Chance } from '#practice/chance.ts';
import { at } from '#geometry/point.ts';
import { sharpened, type SharpMarker } from '#photograph/corners.ts';
import { cornersOf, printedAs } from '#photograph/marker-places.ts';
import { findMarkers } from '#photograph/markers.ts';
import type { Grey, PicturePoint } from '#photograph/picture.ts';
import { lyingAt, lyingOn, type Sightings } from '#photograph/sightings.ts';
import { toSheet, type View } from '#photograph/view.ts';
import { developed, pressed, seenBy, type Camera } from './camera.ts';
import { heldOver, type Condition } from './pictures.ts';
import { onTable, SHEET, type LaidMarker, type Place, type Scene } from './scene.ts';

/** A picture that was taken of a table, with the camera, which knows the truth. */
export interface Taken {
	readonly camera: Camera;
	readonly picture: Grey;
}

/** Takes a picture; JPEG works on all that is looked at closely. */
export const taken = (
	scene: Scene,
	markers: readonly LaidMarker[],
	condition: Condition,
	chance: Chance,
	size?: { width: number; height: number }
): Taken => {
	const camera = heldOver(condition, chance, size);
	const picture = developed(scene, camera, condition.film, chance);
	const middles = markers.map((marker) => seenBy(camera, onTable(marker, marker.side / 2, marker.side / 2)));
	const reach = (Math.max(0, ...markers.map(({ side }) => side)) * camera.width) / SHEET.width;
	if (middles.length > 0) pressed(picture, middles, reach, condition.film.quality);
	return { camera, picture };
};

/** Where the four corners of a laid marker are on the table, from its upper left one on, clockwise. */
const laidCorners = (marker: LaidMarker): readonly Place[] => {
	const { side } = marker;
	return [
		onTable(marker, 0, 0),
		onTable(marker, side, 0),
		onTable(marker, side, side),
		onTable(marker, 0, side)
	];
};

export const markersIn = (picture: Grey, count: number): readonly SharpMarker[] =>
	findMarkers(picture, (ids) => ids.size >= count).flatMap((marker) => sharpened(picture, marker) ?? []);

/** How far each corner was found from where the camera sees it, in pixels. */
export const cornerErrors = (
	found: readonly SharpMarker[],
	laid: readonly LaidMarker[],
	camera: Camera
): readonly number[] =>
	found.flatMap(({ id, corners }) => {
		const marker = laid.find((each) => each.id === id);
		if (!marker) throw new Error(`a marker that was not laid was found: ${String(id)}`);
		return laidCorners(marker).map((corner, i) => {
			const truth = seenBy(camera, corner);
			const own = corners[i] ?? { u: NaN, v: NaN };
			return Math.hypot(own.u - truth.u, own.v - truth.v);
		});
	});

/** What the program knows of these markers: their size, and no places. */
export const asCards = (
	{ width, height }: Pick<Grey, 'width' | 'height'>,
	found: readonly SharpMarker[]
): Sightings => ({
	width,
	height,
	distances: [],
	pieces: found.flatMap(({ id, corners }) => {
		const printed = printedAs(id);
		if (!printed) return [];
		const seen = cornersOf(printed.marker).flatMap((own, i) => {
			const picture = corners[i];
			return picture ? [{ own, picture }] : [];
		});
		return [{ name: String(id), error: 0.08, seen }];
	})
});

/** How far places of the sheet are found from where they are, in millimetres, once the found ones lie on the true ones as well as they can. */
export const placeErrors = (
	view: View,
	seen: readonly { readonly place: Place; readonly picture: PicturePoint }[]
): readonly number[] => {
	const pairs = seen.map(({ place, picture }) => ({
		own: toSheet(view, picture),
		sheet: at(place.x, place.y)
	}));
	const lying = lyingOn(pairs);
	return pairs.map(({ own, sheet }) => {
		const { x, y } = lyingAt(lying, own);
		return Math.hypot(x - sheet.x, y - sheet.y);
	});
};

/** Places all over the sheet. */
export const PLACES: readonly Place[] = Array.from({ length: 9 * 13 }, (_, i) => ({
	x: 77 + (i % 9) * 55,
	y: 70 + Math.floor(i / 9) * 58.5
}));

export const rms = (each: readonly number[]): number =>
	Math.sqrt(each.reduce((sum, one) => sum + one * one, 0) / each.length);

/** The value that a share of all lie below. */
export const below = (share: number, each: readonly number[]): number =>
	[...each].sort((a, b) => a - b)[Math.ceil(share * each.length) - 1] ?? NaN;

/** How far an idea of a corner is from it that is sharpened, in pixels: what is found in a picture made smaller. */
const ROUGHLY = 1;

/**
 * The markers alone of a picture, each in a part of it: what is measured at them comes out as in the whole, in a twentieth of the time.
 */
export const closeUps = (
	scene: Scene,
	markers: readonly LaidMarker[],
	camera: Camera,
	{ film }: Condition,
	chance: Chance
): readonly SharpMarker[] =>
	markers.flatMap((marker) => {
		const truth = laidCorners(marker).map((corner) => seenBy(camera, corner));
		const [us, vs] = [truth.map(({ u }) => u), truth.map(({ v }) => v)];
		const around = (Math.max(...us) - Math.min(...us)) / 5 + 16;
		const from = (each: readonly number[]): number =>
			Math.max(0, Math.floor((Math.min(...each) - around) / 8) * 8);
		const size = (each: readonly number[], start: number, most: number): number =>
			Math.min(most - start, Math.ceil((Math.max(...each) + around - start) / 8) * 8);
		const [left, top] = [from(us), from(vs)];
		const part = { left, top, width: size(us, left, camera.width), height: size(vs, top, camera.height) };
		const picture = developed(scene, camera, film, chance, part);
		const middle = { u: part.width / 2, v: part.height / 2 };
		pressed(picture, [middle], Math.max(part.width, part.height), film.quality);
		const corner = (i: number): PicturePoint => {
			const { u, v } = truth[i] ?? { u: NaN, v: NaN };
			return { u: u - left + ROUGHLY * chance.normal(), v: v - top + ROUGHLY * chance.normal() };
		};
		const found = sharpened(picture, {
			id: marker.id,
			corners: [corner(0), corner(1), corner(2), corner(3)]
		});
		if (!found) return [];
		const put = ({ u, v }: PicturePoint): PicturePoint => ({ u: u + left, v: v + top });
		const [a, b, c, d] = found.corners;
		return [{ ...found, corners: [put(a), put(b), put(c), put(d)] as const }];
	});
