import { describe, expect, it } from 'vitest';
import { mm, radians } from '#shared/units.ts';
import { chanceOf } from '#practice/chance.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { polyline } from '#geometry/path.ts';
import { at, distance } from '#geometry/point.ts';
import { aligned } from '#photograph/aligned.ts';
import { inkCrossing } from '#photograph/ink.ts';
import { greyOf } from '#photograph/picture.ts';
import { lookedAt, readingOf, type Reading } from '#photograph/reading.ts';
import { standingOf } from '#photograph/standing.ts';
import { errorOf } from '#photograph/sureness.ts';
import { lineDifference, lineThrough } from '#photograph/tapped-line.ts';
import { toSheet } from '#photograph/view.ts';
import { pathSeen } from '#photograph/warped.ts';
import { seenBy } from './camera.ts';
import { GOOD, type Condition } from './pictures.ts';
import { cornerMarkers, sceneOf, type LaidMarker, type Place, type Scene } from './scene.ts';
import { below, PLACES, taken } from './sheet-pictures.ts';

const SMALL = { width: 1500, height: 2000 };
const CARDS = cornerMarkers(70, 0, [0.05, -0.03, 0.04, 0.1]);
/** Crosses as a pencil draws them, at places that are no round numbers. */
const CROSSES: readonly Place[] = Array.from({ length: 12 }, (_, i) => ({
	x: 130.3 + (i % 3) * 160.7,
	y: 150.9 + Math.floor(i / 3) * 170.3
}));
const crossLines = ({ x, y }: Place): readonly (readonly Place[])[] => [
	[
		{ x: x - 9, y: y - 1 },
		{ x: x + 9, y: y + 1 }
	],
	[
		{ x: x + 2, y: y - 9 },
		{ x: x - 2, y: y + 9 }
	]
];
const SCENE = sceneOf(CARDS, CROSSES.flatMap(crossLines), { perMm: 5 });

const seen = (
	scene: Scene,
	laid: readonly LaidMarker[],
	condition: Condition,
	seed: number,
	size: { width: number; height: number } = SMALL
) => {
	const { picture, camera } = taken(scene, laid, condition, chanceOf(seed, 'reading', condition.name), size);
	return {
		picture,
		camera,
		reading: readingOf(
			lookedAt(picture, () => undefined),
			1
		)
	};
};

const read = (reading: Reading | undefined): Reading => {
	if (!reading) throw new Error('the picture was not read');
	return reading;
};

describe('a picture with cards at the corners', () => {
	const { picture, camera, reading } = seen(SCENE, CARDS, GOOD, 1);

	it('is read without a warning but that its pixels are large', () => {
		expect(read(reading).warnings).toEqual(['coarse']);
		expect(read(reading).rectified.residual).toBeLessThan(0.05);
	});

	it('offers the crossing of two pencil lines near a tap, to a third of a pixel', () => {
		const chance = chanceOf(4, 'taps');
		const off = CROSSES.map((place) => {
			const truth = seenBy(camera, place);
			const tap = { u: truth.u + 2.5 * chance.normal(), v: truth.v + 2.5 * chance.normal() };
			const found = inkCrossing(picture, tap, 10);
			return found ? Math.hypot(found.u - truth.u, found.v - truth.v) : Infinity;
		});
		expect(below(0.9, off)).toBeLessThan(0.34);
	});

	it('offers nothing on bare paper, nor on a line that nothing crosses', () => {
		expect(inkCrossing(picture, seenBy(camera, { x: 210, y: 235 }), 10)).toBeUndefined();
		const [cross] = CROSSES;
		if (!cross) throw new Error('there are crosses');
		expect(inkCrossing(picture, seenBy(camera, { x: cross.x + 7.5, y: cross.y + 0.83 }), 5)).toBeUndefined();
	});

	it('knows where the camera stood', () => {
		const { view } = read(reading).rectified;
		const { foot, high } = standingOf(view);
		expect(Math.abs(high / -camera.at[2] - 1)).toBeLessThan(0.03);
		const below = toSheet(view, seenBy(camera, { x: camera.at[0], y: camera.at[1] }));
		expect(distance(foot, below)).toBeLessThan(60);
	});

	it('says of each place how far it may be off, and 95 of 100 are no further', () => {
		const { rectified } = read(reading);
		const chance = chanceOf(8, 'stray');
		const pairs = PLACES.map((place) => {
			const { u, v } = seenBy(camera, place);
			const tap = { u: u + chance.normal(), v: v + chance.normal() };
			return {
				found: toSheet(rectified.view, tap),
				right: at(place.x, place.y),
				error: errorOf(rectified, tap)
			};
		});
		const motion = aligned(pairs.map((each) => ({ ...each, weight: 1 })))?.motion;
		if (!motion) throw new Error('they are many');
		const shares = pairs.map(({ found, right, error }) => distance(movedBy(motion, found), right) / error);
		expect(below(0.95, shares)).toBeLessThan(1);
		expect(below(0.5, shares)).toBeGreaterThan(0.2);
	});

	it('shows the draft where it lies, to a tenth of a pixel', () => {
		const { rectified } = read(reading);
		const corner = toSheet(rectified.view, seenBy(camera, { x: 200, y: 200 }));
		const [first, last] = pathSeen(rectified.view, polyline(at(0, 0), at(40, 0)), movedTo(corner));
		const truth = seenBy(camera, { x: 200, y: 200 });
		expect(first?.u).toBeCloseTo(truth.u, 1);
		expect(first?.v).toBeCloseTo(truth.v, 1);
		expect(last).toBeDefined();
	});
});

const movedTo = ({ x, y }: { x: number; y: number }) => ({ a: 1, b: 0, c: 0, d: 1, e: x, f: y });

describe('a picture that could be better says why', () => {
	it('blurred', () => {
		const blurred = { ...GOOD, film: { ...GOOD.film, blur: 4 } };
		expect(read(seen(SCENE, CARDS, blurred, 2).reading).warnings).toContain('blur');
	});

	it('of paper that bulges', () => {
		expect(read(seen(SCENE, CARDS, { ...GOOD, bulge: 8 }, 3).reading).warnings).toContain('bulge');
	});

	it('with its markers in one corner', () => {
		const near = CARDS.map((card, i) => ({
			...card,
			x: 30 + (i % 2) * 100,
			y: 30 + Math.floor(i / 2) * 100
		}));
		const { reading } = seen(sceneOf(near, [], { perMm: 5 }), near, GOOD, 4);
		expect(read(reading).warnings).toContain('one-corner');
	});

	it('with two markers alone', () => {
		const two = CARDS.slice(0, 2);
		expect(read(seen(sceneOf(two, [], { perMm: 5 }), two, GOOD, 5).reading).warnings).toContain('few');
	});

	it('without markers is not read', () => {
		expect(seen(sceneOf([], [], { perMm: 5 }), [], GOOD, 6).reading).toBeUndefined();
	});

	it('of a screen: the white swings with its dots', () => {
		// Dots of 0.6 mm, dark between them: two and a half of the picture's pixels.
		const scene = sceneOf(CARDS, [], { perMm: 8 });
		const { light, across } = scene.dots;
		for (let i = 0; i < light.length; i++) {
			const [column, row] = [i % across, Math.floor(i / across)];
			if (column % 5 > 2 || row % 5 > 2) light[i] = (light[i] ?? 0) * 0.5;
		}
		expect(read(seen(scene, CARDS, GOOD, 7, { width: 3000, height: 4000 }).reading).warnings).toContain(
			'screen'
		);
	});
});

describe('greys', () => {
	it('weigh colours as ITU-R BT.601 does: 0.299, 0.587 and 0.114', () => {
		const { light } = greyOf(2, 2, [255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255, 255, 255, 255, 255]);
		for (const [i, share] of [0.299, 0.587, 0.114, 1].entries())
			expect(Math.abs((light[i] ?? 0) - 255 * share)).toBeLessThan(1.5);
	});
});

describe('places that were found', () => {
	const right = [at(0, 0), at(0, 600), at(240, 20), at(250, 300), at(120, 600)];

	it('are laid on the draft as most of them lie, though one is 8 mm off', () => {
		const motion = turning(at(50, 70), radians(0.4));
		const found = right.map((place) => movedBy(motion, place));
		const pairs = found.map((place, i) => ({
			found: i === 3 ? at(place.x + 8, place.y) : place,
			right: right[i] ?? at(0, 0),
			weight: 1
		}));
		const laid = aligned(pairs);
		if (!laid) throw new Error('they are five');
		expect(laid.mirrored).toBe(false);
		const off = pairs.map((pair) => distance(movedBy(laid.motion, pair.found), pair.right));
		expect(off[3]).toBeCloseTo(8, 0);
		expect(Math.max(...off.filter((_, i) => i !== 3))).toBeLessThan(0.6);
	});

	it('are turned over where they are those of the other side', () => {
		const pairs = right.map((place) => ({ found: at(300 - place.x, place.y), right: place, weight: 1 }));
		expect(aligned(pairs)?.mirrored).toBe(true);
	});
});

describe('a line that was tapped', () => {
	/** A quarter of a circle, whose numbers are known. */
	const circle = (radius: number, count: number) =>
		Array.from({ length: count }, (_, i) => {
			const angle = (i / (count - 1)) * (Math.PI / 2);
			return at(radius * Math.sin(angle), radius * (1 - Math.cos(angle)));
		});
	const through = (places: readonly ReturnType<typeof at>[]) => {
		const [first, second, ...rest] = places;
		if (!first || !second) throw new Error('two at least');
		return lineThrough(first, second, ...rest);
	};

	it('runs smoothly through its places: a circle stays one to 0.1 mm', () => {
		const { greatest, longer, deeper } = lineDifference(through(circle(150, 7)), through(circle(150, 60)));
		expect(greatest).toBeLessThan(0.1);
		expect(Math.abs(longer)).toBeLessThan(0.1);
		expect(Math.abs(deeper ?? NaN)).toBeLessThan(0.1);
	});

	it('is compared from either end: too flat, too short, with ends that are off', () => {
		const flat = circle(150, 7).map(({ x, y }) => at(x, y));
		const chord = [at(0, 0), at(150, 150)];
		// Half of the hollow of a quarter circle is 150 (1 - sqrt 1/2) / 2 = 21.97 mm.
		const half = flat.map(({ x, y }) => {
			const along = (x + y) / 2;
			return at((x + along) / 2, (y + along) / 2);
		});
		const told = lineDifference(through([...half].reverse()), through(circle(150, 60)));
		expect(told.deeper).toBeCloseTo(-21.97, 1);
		expect(told.start).toBeCloseTo(0, 6);
		expect(told.longer).toBeLessThan(-10);
		expect(lineDifference(through(chord), through(chord)).deeper).toBeUndefined();
		expect(lineDifference(through([at(0, 4), at(150, 150)]), through(chord)).start).toBeCloseTo(4, 6);
	});

	it('has no hidden unit: lengths are millimetres', () => {
		expect(
			lineDifference(through([at(0, 0), at(100, 0)]), through([at(0, 0), at(90, 0)])).longer
		).toBeCloseTo(mm(10), 9);
	});
});
