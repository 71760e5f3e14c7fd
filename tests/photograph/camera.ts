import jpeg from 'jpeg-js';
import { chanceOf, type Chance } from '#practice/chance.ts';
import type { Grey, PicturePoint } from '#photograph/picture.ts';
import type { Place, Scene } from './scene.ts';

/**
 * A camera that is worked out ray by ray: each pixel's ray is bent as the lens does, goes through a pinhole and meets the paper,
 * wherever that bulges. It shares nothing with the program but the names of a picture's numbers.
 */
export interface Camera {
	/** Of the picture, in pixels. */
	readonly width: number;
	readonly height: number;
	/** In pixels. */
	readonly focal: number;
	/** Rows of the turn from the table's axes (z up to the camera's side is negative) to the camera's. */
	readonly turn: readonly [Vector, Vector, Vector];
	/** Where the camera is, in the table's millimetres. */
	readonly at: Vector;
	/** How much further out the lens puts the picture's corner, as a share. */
	readonly bend: number;
	/** How high the paper stands over the table at a place, in millimetres. */
	readonly height3d: (x: number, y: number) => number;
}

export type Vector = readonly [number, number, number];

/** What becomes of the light on its way to a file. */
export interface Film {
	/** Standard deviation of the lens's blur, in pixels. */
	readonly blur: number;
	/** Standard deviation of a pixel's noise, of 255. */
	readonly noise: number;
	/** How much darker the light is at one side than at the other, as a share. */
	readonly uneven: number;
	/** The power by which a file's greys become light, which the lens blurs; 1 where they are light themselves. */
	readonly gamma?: number;
	/** JPEG's quality, 1 to 100. */
	readonly quality: number;
}

const half = ({ width, height }: Camera): number => Math.hypot(width, height) / 2;

/** Where the camera sees a place of the table: the truth that results are held against. */
export const seenBy = (camera: Camera, { x, y }: Place): PicturePoint => {
	const d = [x - camera.at[0], y - camera.at[1], -camera.height3d(x, y) - camera.at[2]] as const;
	const [u, v, w] = camera.turn.map((row) => row[0] * d[0] + row[1] * d[1] + row[2] * d[2]);
	const [a, b] = [((u ?? 0) / (w ?? 1)) * camera.focal, ((v ?? 0) / (w ?? 1)) * camera.focal];
	const out = 1 + camera.bend * (Math.hypot(a, b) / half(camera)) ** 2;
	return { u: camera.width / 2 + a * out, v: camera.height / 2 + b * out };
};

/** Puts the place of the table that is seen in a pixel into `place`: for hundreds of thousands of them nothing else is made. */
const meets = (camera: Camera, u: number, v: number, place: Float64Array): void => {
	const [a, b] = [u - camera.width / 2, v - camera.height / 2];
	const r = Math.sqrt(a * a + b * b) / half(camera);
	let out = 1;
	for (let i = 0; i < 30; i++) {
		const next = 1 + camera.bend * (r / out) ** 2;
		if (next === out) break;
		out = next;
	}
	const { turn, at, focal, height3d } = camera;
	const [p, q] = [a / out / focal, b / out / focal];
	const dx = turn[0][0] * p + turn[1][0] * q + turn[2][0];
	const dy = turn[0][1] * p + turn[1][1] * q + turn[2][1];
	const dz = turn[0][2] * p + turn[1][2] * q + turn[2][2];
	let z = 0;
	for (let i = 0; i < 6; i++) {
		const t = (z - at[2]) / dz;
		place[0] = at[0] + dx * t;
		place[1] = at[1] + dy * t;
		const next = -height3d(place[0], place[1]);
		if (Math.abs(next - z) < 1e-6) break;
		z = next;
	}
};

/** Rays are followed at every so many pixels, and lie evenly between those: a thousandth of a pixel at most beside the true ones. */
const EVERY = 8;

/** A part of a picture, in pixels; it begins where rays are followed, so that it comes out as it does in the whole. */
export interface Part {
	readonly left: number;
	readonly top: number;
	readonly width: number;
	readonly height: number;
}

/** The sharp picture without noise: each pixel is the mean of four places in it. */
const exposed = (scene: Scene, camera: Camera, part: Part): Float32Array => {
	const { width, height } = part;
	const out = new Float32Array(width * height);
	const { light, across, down } = scene.dots;
	const columns = Math.ceil(width / EVERY) + 1;
	const place = new Float64Array(2);
	const rowOf = (v: number): readonly [Float64Array, Float64Array] => {
		const [xs, ys] = [new Float64Array(columns), new Float64Array(columns)];
		for (let i = 0; i < columns; i++) {
			meets(camera, part.left + i * EVERY, part.top + v, place);
			xs[i] = ((place[0] ?? 0) - scene.left) * scene.perMm - 0.5;
			ys[i] = ((place[1] ?? 0) - scene.top) * scene.perMm - 0.5;
		}
		return [xs, ys];
	};
	const sample = (x: number, y: number): number => {
		const [c, r] = [Math.floor(x), Math.floor(y)];
		if (c < 0 || r < 0 || c >= across - 1 || r >= down - 1) return 100;
		const [p, q] = [x - c, y - r];
		const i = r * across + c;
		const above = (light[i] ?? 0) * (1 - p) + (light[i + 1] ?? 0) * p;
		const below = (light[i + across] ?? 0) * (1 - p) + (light[i + across + 1] ?? 0) * p;
		return above * (1 - q) + below * q;
	};
	let upper = rowOf(0);
	for (let top = 0; top < height; top += EVERY) {
		const lower = rowOf(top + EVERY);
		for (let row = top; row < Math.min(height, top + EVERY); row++)
			for (let column = 0; column < width; column++) {
				const i = Math.floor(column / EVERY);
				let sum = 0;
				for (const down2 of [0.25, 0.75]) {
					const q = (row + down2 - top) / EVERY;
					const x0 = (upper[0][i] ?? 0) * (1 - q) + (lower[0][i] ?? 0) * q;
					const x1 = (upper[0][i + 1] ?? 0) * (1 - q) + (lower[0][i + 1] ?? 0) * q;
					const y0 = (upper[1][i] ?? 0) * (1 - q) + (lower[1][i] ?? 0) * q;
					const y1 = (upper[1][i + 1] ?? 0) * (1 - q) + (lower[1][i + 1] ?? 0) * q;
					const p = (column + 0.25 - i * EVERY) / EVERY;
					const step = 0.5 / EVERY;
					sum += sample(x0 + (x1 - x0) * p, y0 + (y1 - y0) * p);
					sum += sample(x0 + (x1 - x0) * (p + step), y0 + (y1 - y0) * (p + step));
				}
				out[row * width + column] = sum / 4;
			}
		upper = lower;
	}
	return out;
};

/** Blurs by a bell's curve, along rows and then along columns. */
const blurred = (from: Float32Array, width: number, height: number, sigma: number): Float32Array => {
	if (sigma <= 0) return from;
	const reach = Math.ceil(3 * sigma);
	const bell = Float32Array.from({ length: 2 * reach + 1 }, (_, i) =>
		Math.exp(-((i - reach) ** 2) / (2 * sigma ** 2))
	);
	const whole = bell.reduce((sum, each) => sum + each, 0);
	for (let i = 0; i < bell.length; i++) bell[i] = (bell[i] ?? 0) / whole;
	const clamped = (i: number, length: number): number => Math.min(length - 1, Math.max(0, i));
	const alongRows = new Float32Array(from.length);
	for (let start = 0; start < from.length; start += width)
		for (let column = 0; column < width; column++) {
			let sum = 0;
			if (column >= reach && column < width - reach)
				for (let k = 0, at = start + column - reach; k < bell.length; k++, at++)
					sum += (from[at] ?? 0) * (bell[k] ?? 0);
			else
				for (let k = 0; k < bell.length; k++)
					sum += (from[start + clamped(column - reach + k, width)] ?? 0) * (bell[k] ?? 0);
			alongRows[start + column] = sum;
		}
	// A whole row at a time, as a picture lies in memory.
	const out = new Float32Array(from.length);
	const sums = new Float64Array(width);
	for (let row = 0; row < height; row++) {
		sums.fill(0);
		for (let k = 0; k < bell.length; k++) {
			const [start, share] = [clamped(row - reach + k, height) * width, bell[k] ?? 0];
			for (let column = 0; column < width; column++)
				sums[column] = (sums[column] ?? 0) + (alongRows[start + column] ?? 0) * share;
		}
		out.set(sums, row * width);
	}
	return out;
};

/** Noise of one measure, drawn once: each picture begins elsewhere in it. A prime, so that no two rows begin alike. */
const GRAINS = ((chance) => Float32Array.from({ length: 524_287 }, () => chance.normal()))(
	chanceOf(1, 'grain')
);

/** The picture that the camera takes, or a part of it, before it is made a file of. */
export const developed = (
	scene: Scene,
	camera: Camera,
	film: Film,
	chance: Chance,
	part: Part = { left: 0, top: 0, width: camera.width, height: camera.height }
): Grey => {
	const { width, height } = part;
	const { gamma = 1 } = film;
	const raised = (each: Float32Array, power: number): Float32Array =>
		power === 1 ? each : each.map((one) => one ** power);
	const sharp = raised(exposed(scene, camera, part), gamma);
	const light = raised(blurred(sharp, width, height, film.blur), 1 / gamma);
	const from = Math.floor(chance.fraction() * GRAINS.length);
	const angle = chance.fraction() * 2 * Math.PI;
	const out = new Uint8Array(width * height);
	for (let row = 0; row < height; row++)
		for (let column = 0; column < width; column++) {
			const [a, b] = [(part.left + column) / camera.width - 0.5, (part.top + row) / camera.height - 0.5];
			const lit =
				1 - film.uneven * (0.5 + a * Math.cos(angle) + b * Math.sin(angle)) - 0.15 * (a * a + b * b);
			const i = row * width + column;
			const value = (light[i] ?? 0) * lit + (GRAINS[(from + i) % GRAINS.length] ?? 0) * film.noise + 0.5;
			out[i] = Math.min(255, Math.max(0, value));
		}
	return { width, height, light: out };
};

const rgbaOf = ({ width, height, light }: Grey): Uint8Array => {
	const out = new Uint8Array(width * height * 4).fill(255);
	for (let i = 0, at = 0; i < light.length; i++, at += 4) out[at] = out[at + 1] = out[at + 2] = light[i] ?? 0;
	return out;
};

/** The bytes of a picture's file. */
export const jpegOf = (picture: Grey, quality: number): Uint8Array =>
	jpeg.encode({ ...picture, data: rgbaOf(picture) }, quality).data;

const upTo8 = (size: number): number => Math.ceil(size / 8) * 8;

/**
 * What JPEG leaves of a picture about some places, in place. It works on squares of eight pixels, each by itself, so that a part
 * which begins and ends on their edges comes out as it does in the whole, and parts may stand below each other in one picture; the
 * whole of twelve million takes seconds.
 */
export const pressed = (
	picture: Grey,
	places: readonly PicturePoint[],
	reach: number,
	quality: number
): void => {
	const { width, height, light } = picture;
	const size = upTo8(2 * reach);
	const parts = places.map(({ u, v }, i) => {
		const from = (middle: number): number => Math.max(0, Math.floor((middle - reach) / 8) * 8);
		const [left, top] = [from(u), from(v)];
		return {
			left,
			top,
			wide: Math.min(width - left, size),
			high: Math.min(height - top, size),
			row: i * size
		};
	});
	const pile = { width: size, height: size * parts.length };
	const cut = new Uint8Array(pile.width * pile.height);
	// Where the picture ends within a square, JPEG goes on with its last pixels.
	for (const { left, top, wide, high, row } of parts)
		for (let y = 0; y < size; y++)
			for (let x = 0; x < size; x++)
				cut[(row + y) * size + x] =
					light[(top + Math.min(y, high - 1)) * width + left + Math.min(x, wide - 1)] ?? 0;
	const { data } = jpeg.decode(jpegOf({ ...pile, light: cut }, quality), {
		useTArray: true,
		maxMemoryUsageInMB: 2048
	});
	for (const { left, top, wide, high, row } of parts)
		for (let y = 0; y < high; y++)
			for (let x = 0; x < wide; x++)
				light[(top + y) * width + left + x] = data[((row + y) * size + x) * 4] ?? 0;
};
