import jpeg from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { chanceOf } from '#practice/chance.ts';
import { at } from '#geometry/point.ts';
import { findMarkers } from '#photograph/markers.ts';
import { rectify, type Rectified } from '#photograph/rectify.ts';
import type { Sightings } from '#photograph/sightings.ts';
import { toSheet } from '#photograph/view.ts';
import { developed, jpegOf, pressed, seenBy, type Camera } from './camera.ts';
import { CONDITIONS, GOOD, heldOver, type Condition } from './pictures.ts';
import { cornerMarkers, paintLine, sceneOf, SHEET, type Place } from './scene.ts';
import {
	asCards,
	below,
	closeUps,
	cornerErrors,
	markersIn,
	PLACES,
	placeErrors,
	rms,
	taken
} from './sheet-pictures.ts';

/** A quarter of the usual pixels, so that a sample takes seconds: `npm run measure:photograph` measures at the full size. */
const SMALL = { width: 1500, height: 2000 };
const MARKERS = cornerMarkers(40, 8, [0.05, -0.03, 0.04, 0.1]);
const SCENE = sceneOf(MARKERS, [], { perMm: 5 });

const known = (each: Rectified | undefined): Rectified => {
	if (!each) throw new Error('the sheet was not found');
	return each;
};

const inBoth = (camera: Camera, places: readonly Place[] = PLACES) =>
	places.map((place) => ({ place, picture: seenBy(camera, place) }));

const named = (name: string): Condition => CONDITIONS.find((each) => each.name === name) ?? GOOD;

describe('a picture of a sheet with four markers that lie anywhere', () => {
	it.each(['good', 'lens 2 %', 'noise'])(
		'%s: is read to a small part of a pixel and of a millimetre',
		(name) => {
			const { picture, camera } = taken(SCENE, MARKERS, named(name), chanceOf(3, name), SMALL);
			const found = markersIn(picture, 4);
			expect(found.map(({ id }) => id)).toEqual(MARKERS.map(({ id }) => id));
			// The goal for the markers, at any size of picture.
			expect(rms(cornerErrors(found, MARKERS, camera))).toBeLessThan(0.1);
			const read = known(rectify(asCards(picture, found)));
			// The goal for places at the full size; a pixel is 0.48 mm here.
			expect(below(0.95, placeErrors(read.view, inBoth(camera)))).toBeLessThan(0.5);
			expect(read.strain).toBeLessThan(1.5);
		}
	);

	it('has its true size where a file does not count light evenly, as cameras do not: black seems wider there', () => {
		// 2.2 is the power of common files (IEC 61966-2-1, near enough).
		const film = { ...GOOD.film, gamma: 2.2 };
		const camera = heldOver(GOOD, chanceOf(6, 'gamma'));
		const found = closeUps(SCENE, MARKERS, camera, { ...GOOD, film }, chanceOf(6, 'gamma film'));
		expect(rms(cornerErrors(found, MARKERS, camera))).toBeLessThan(0.1);
		const read = known(rectify(asCards(camera, found)));
		expect(below(0.95, placeErrors(read.view, inBoth(camera)))).toBeLessThan(0.2);
	});

	it('that bulges says so by what is left over', () => {
		const { picture } = taken(SCENE, MARKERS, { ...GOOD, bulge: 6 }, chanceOf(5, 'bulge'), SMALL);
		expect(known(rectify(asCards(picture, markersIn(picture, 4)))).strain).toBeGreaterThan(1.5);
	});

	it('says how far off a place may be: as far as it is when the corners stray by what they are said to', () => {
		const chance = chanceOf(7, 'errors');
		const ERROR = 0.3;
		const squares: number[] = [];
		let expected = 0;
		const camera = heldOver(named('tilt to 25°'), chance);
		const place = { x: 500, y: 100 };
		for (let n = 0; n < 60; n++) {
			const stray = ({ u, v }: { u: number; v: number }) => ({
				u: u + chance.normal() * ERROR,
				v: v + chance.normal() * ERROR
			});
			// All markers are on one paper, so that its own millimetres are those of the table.
			const seen = MARKERS.flatMap(({ x, y, side }) =>
				[at(x, y), at(x + side, y), at(x + side, y + side), at(x, y + side)].map((own) => ({
					own,
					picture: stray(seenBy(camera, own))
				}))
			);
			const all: Sightings = {
				width: camera.width,
				height: camera.height,
				distances: [],
				pieces: [{ name: 'one', error: ERROR, seen }]
			};
			const read = known(rectify(all));
			const pixel = seenBy(camera, place);
			const [xx, , yy] = read.errorAt(pixel);
			expected = xx + yy;
			const found = toSheet(read.view, pixel);
			squares.push((found.x - place.x) ** 2 + (found.y - place.y) ** 2);
		}
		const seenError = squares.reduce((sum, each) => sum + each, 0) / squares.length;
		expect(seenError / expected).toBeGreaterThan(0.5);
		expect(seenError / expected).toBeLessThan(2);
	});
});

describe('a picture without markers', () => {
	const FOUR = [
		['a', 40, 50],
		['b', 550, 60],
		['c', 540, 800],
		['d', 50, 790]
	] as const;
	const lengthsOf = (pairs: readonly (readonly [number, number])[], off: number): Sightings['distances'] =>
		pairs.map(([i, j]) => {
			const [from, fromX, fromY] = FOUR[i] ?? FOUR[0];
			const [to, toX, toY] = FOUR[j] ?? FOUR[0];
			return { from, to, length: mm(Math.hypot(toX - fromX, toY - fromY) + off), error: mm(1) };
		});
	const sightings = (camera: Camera, distances: Sightings['distances']): Sightings => ({
		width: camera.width,
		height: camera.height,
		distances,
		pieces: FOUR.map(([name, x, y]) => ({
			name,
			error: 1,
			seen: [{ own: at(0, 0), picture: seenBy(camera, { x, y }) }]
		}))
	});
	const ALL = [
		[0, 1],
		[1, 2],
		[2, 3],
		[3, 0],
		[0, 2],
		[1, 3]
	] as const;

	it('is read from four places and what is measured between them: six distances, or any five', () => {
		const camera = heldOver({ ...GOOD, bend: 0 }, chanceOf(1, 'four'));
		for (const pairs of [ALL, ...ALL.map((left) => ALL.filter((pair) => pair !== left))]) {
			const read = known(rectify(sightings(camera, lengthsOf(pairs, 0))));
			expect(below(1, placeErrors(read.view, inBoth(camera)))).toBeLessThan(0.01);
			// Tapping and the tape are told of: some millimetres in all.
			const [xx, , yy] = read.errorAt(seenBy(camera, { x: 300, y: 400 }));
			expect(Math.sqrt(xx + yy)).toBeGreaterThan(0.3);
			expect(Math.sqrt(xx + yy)).toBeLessThan(4);
		}
	});

	it('is not read from distances that close no triangle, nor from too few', () => {
		const camera = heldOver(GOOD, chanceOf(1, 'four'));
		const [first, ...others] = lengthsOf(ALL, 0);
		if (!first) throw new Error('there are six');
		const wrong = [{ ...first, length: mm(5000) }, ...others];
		expect(rectify(sightings(camera, wrong))).toBeUndefined();
		expect(rectify(sightings(camera, others.slice(0, 2)))).toBeUndefined();
	});
});

describe('the camera of these tests', () => {
	it('presses parts of a picture as JPEG presses the whole', () => {
		const size = { width: 240, height: 320 };
		const picture = developed(
			SCENE,
			heldOver(GOOD, chanceOf(2, 'whole'), size),
			GOOD.film,
			chanceOf(2, 'film')
		);
		const whole = jpeg.decode(jpegOf(picture, 80), { useTArray: true });
		pressed(picture, [{ u: 100, v: 120 }], 40, 80);
		for (let v = 90; v < 150; v++)
			for (let u = 70; u < 130; u++)
				expect(picture.light[v * size.width + u]).toBe(whole.data[(v * size.width + u) * 4]);
	});

	it('shows a place in the pixel where it says that it sees it', () => {
		// Nothing of the program takes part: a dot is painted, and the middle of the dark is where the dot was.
		const scene = sceneOf([], [], { perMm: 5 });
		const dot = { x: 410, y: 290 };
		paintLine(scene, [dot, { x: dot.x + 0.001, y: dot.y }], 8, 20);
		const condition = { ...named('lens 2 %'), film: { ...GOOD.film, noise: 0, uneven: 0 } };
		const camera = heldOver(condition, chanceOf(4, 'dot'), SMALL);
		const { width, light } = developed(scene, camera, condition.film, chanceOf(4, 'dot film'));
		const truth = seenBy(camera, dot);
		let [sum, u, v] = [0, 0, 0];
		for (let row = Math.floor(truth.v) - 25; row < truth.v + 25; row++)
			for (let column = Math.floor(truth.u) - 25; column < truth.u + 25; column++) {
				const dark = Math.max(0, 170 - (light[row * width + column] ?? 0));
				sum += dark;
				u += dark * (column + 0.5);
				v += dark * (row + 0.5);
			}
		expect(u / sum - truth.u).toBeCloseTo(0, 1);
		expect(v / sum - truth.v).toBeCloseTo(0, 1);
	});
});

describe('a picture without anything of ours', () => {
	it('has no markers, though there are lines and lettering enough', () => {
		const chance = chanceOf(9, 'scribble');
		const lines = Array.from({ length: 60 }, () => {
			const [x, y] = [chance.fraction() * SHEET.width, chance.fraction() * SHEET.height];
			const side = 10 + 30 * chance.fraction();
			return [
				{ x, y },
				{ x: x + side, y },
				{ x: x + side, y: y + side },
				{ x, y: y + side },
				{ x, y }
			];
		});
		const { picture } = taken(sceneOf([], lines, { perMm: 5 }), [], GOOD, chance, SMALL);
		expect(findMarkers(picture, () => false)).toEqual([]);
	});
});
