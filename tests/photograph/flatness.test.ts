import { describe, expect, it } from 'vitest';
import { chanceOf } from '#practice/chance.ts';
import { at } from '#geometry/point.ts';
import { bulges } from '#photograph/flatness.ts';
import { rectify, type Rectified } from '#photograph/rectify.ts';
import { errorOf } from '#photograph/sureness.ts';
import { seenBy } from './camera.ts';
import { CONDITIONS, GOOD, heldOver, type Condition } from './pictures.ts';
import { onTable, rimMarkers, type LaidMarker } from './scene.ts';

const ERROR = 0.04;
const PICTURES = 12;

/** How the sheet is read from corners that stray as those that are found do: no picture is taken. */
const readFrom = (
	markers: readonly LaidMarker[],
	condition: Condition,
	seed: number,
	lens = (r: number): number => 1 + condition.bend * r * r
): Rectified => {
	const chance = chanceOf(seed, 'flatness', condition.name);
	const camera = heldOver({ ...condition, bend: 0 }, chance);
	const half = { u: camera.width / 2, v: camera.height / 2 };
	const read = rectify({
		width: camera.width,
		height: camera.height,
		distances: [],
		pieces: markers.map((marker) => ({
			name: String(marker.id),
			error: ERROR,
			seen: [at(0, 0), at(marker.side, 0), at(marker.side, marker.side), at(0, marker.side)].map((own) => {
				const { u, v } = seenBy(camera, onTable(marker, own.x, own.y));
				const out = lens(Math.hypot(u - half.u, v - half.v) / Math.hypot(half.u, half.v));
				const stray = (): number => chance.normal() * ERROR;
				return {
					own,
					picture: { u: half.u + (u - half.u) * out + stray(), v: half.v + (v - half.v) * out + stray() }
				};
			})
		}))
	});
	if (!read) throw new Error('the sheet was not found');
	return read;
};

const all = <T>(of: (seed: number) => T): readonly T[] => Array.from({ length: PICTURES }, (_, i) => of(i));
const warned = (read: readonly Rectified[]): number => read.filter(({ flatness }) => bulges(flatness)).length;
const tilted = CONDITIONS.find(({ name }) => name === 'tilt to 25°') ?? GOOD;

describe('whether paper lies flat', () => {
	it.each([4, 6, 8])('flat paper is not said to bulge, with %i markers', (count) => {
		expect(warned(all((seed) => readFrom(rimMarkers(count), tilted, seed)))).toBe(0);
	});

	it('nor where the lens bends otherwise than by the square: 2 % of what is seen, undone', () => {
		// As some describe a lens: by where a place would be without it.
		const undone = (r: number): number => {
			let own = r;
			for (let i = 0; i < 30; i++) own = r / (1 - 0.02 * own * own);
			return own / r;
		};
		expect(warned(all((seed) => readFrom(rimMarkers(6), tilted, seed, undone)))).toBe(0);
	});

	it('paper that stands up by 3 mm is, from markers along two sides; from the corners alone more often than not', () => {
		const bulging = { ...tilted, bulge: 3 };
		expect(warned(all((seed) => readFrom(rimMarkers(6), bulging, seed)))).toBe(PICTURES);
		expect(warned(all((seed) => readFrom(rimMarkers(4), bulging, seed)))).toBeGreaterThan(PICTURES / 2);
	});

	it('and each point’s own error grows with how high it stands', () => {
		const errorAt = (bulge: number): number => {
			const read = readFrom(rimMarkers(6), { ...GOOD, bulge }, 1);
			return errorOf(read, { u: 800, v: 800 });
		};
		expect(errorAt(5)).toBeGreaterThan(1.5 * errorAt(0));
		expect(errorAt(8)).toBeGreaterThan(errorAt(5));
	});
});
