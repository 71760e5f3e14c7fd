import jpeg from 'jpeg-js';
import type { Chance } from '#practice/chance.ts';
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

/** Which place of the table is seen in a pixel. */
const meets = (camera: Camera, u: number, v: number): Place => {
	const [a, b] = [u - camera.width / 2, v - camera.height / 2];
	let out = 1;
	for (let i = 0; i < 30; i++) out = 1 + camera.bend * (Math.hypot(a, b) / half(camera) / out) ** 2;
	const ray = [a / out / camera.focal, b / out / camera.focal, 1] as const;
	const [r0, r1, r2] = camera.turn;
	const [dx, dy, dz] = [0, 1, 2].map(
		(k) => (r0[k] ?? 0) * ray[0] + (r1[k] ?? 0) * ray[1] + (r2[k] ?? 0) * ray[2]
	) as [number, number, number];
	let [x, y] = [0, 0];
	let z = 0;
	for (let i = 0; i < 6; i++) {
		const t = (z - camera.at[2]) / dz;
		[x, y] = [camera.at[0] + dx * t, camera.at[1] + dy * t];
		const next = -camera.height3d(x, y);
		if (Math.abs(next - z) < 1e-6) break;
		z = next;
	}
	return { x, y };
};

/** Rays are followed at every so many pixels, and lie evenly between those: a thousandth of a pixel at most beside the true ones. */
const EVERY = 8;

/** The sharp picture without noise: each pixel is the mean of four places in it. */
const exposed = (scene: Scene, camera: Camera): Float32Array => {
	const { width, height } = camera;
	const out = new Float32Array(width * height);
	const { light, across, down } = scene.dots;
	const columns = Math.ceil(width / EVERY) + 1;
	const rowOf = (v: number): readonly [Float64Array, Float64Array] => {
		const [xs, ys] = [new Float64Array(columns), new Float64Array(columns)];
		for (let i = 0; i < columns; i++) {
			const { x, y } = meets(camera, i * EVERY, v);
			xs[i] = (x - scene.left) * scene.perMm - 0.5;
			ys[i] = (y - scene.top) * scene.perMm - 0.5;
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
	const along = (source: Float32Array, length: number, lines: number, step: number, line: number) => {
		const out = new Float32Array(source.length);
		for (let l = 0; l < lines; l++)
			for (let i = 0; i < length; i++) {
				let sum = 0;
				for (let k = -reach; k <= reach; k++) {
					const at = Math.min(length - 1, Math.max(0, i + k));
					sum += (source[l * line + at * step] ?? 0) * (bell[k + reach] ?? 0);
				}
				out[l * line + i * step] = sum;
			}
		return out;
	};
	return along(along(from, width, height, 1, width), height, width, width, 1);
};

/** The picture that the camera takes, before it is made a file of. */
export const developed = (scene: Scene, camera: Camera, film: Film, chance: Chance): Grey => {
	const { width, height } = camera;
	const light = blurred(exposed(scene, camera), width, height, film.blur);
	const noise = Float32Array.from({ length: 65_521 }, () => chance.normal() * film.noise);
	const angle = chance.fraction() * 2 * Math.PI;
	const out = new Uint8Array(width * height);
	for (let row = 0; row < height; row++)
		for (let column = 0; column < width; column++) {
			const [a, b] = [column / width - 0.5, row / height - 0.5];
			const lit =
				1 - film.uneven * (0.5 + a * Math.cos(angle) + b * Math.sin(angle)) - 0.15 * (a * a + b * b);
			const i = row * width + column;
			const value = (light[i] ?? 0) * lit + (noise[i % 65_521] ?? 0) + 0.5;
			out[i] = Math.min(255, Math.max(0, value));
		}
	return { width, height, light: out };
};

const rgbaOf = ({ width, height, light }: Grey): Uint8Array => {
	const out = new Uint8Array(width * height * 4).fill(255);
	for (let i = 0; i < light.length; i++) out.fill(light[i] ?? 0, i * 4, i * 4 + 3);
	return out;
};

/** The bytes of a picture's file. */
export const jpegOf = (picture: Grey, quality: number): Uint8Array =>
	jpeg.encode({ ...picture, data: rgbaOf(picture) }, quality).data;

/**
 * What JPEG leaves of a picture about some places, in place. It works on squares of eight pixels, each by itself, so that a part
 * which begins and ends on their edges comes out as it does in the whole; the whole of twelve million takes seconds.
 */
export const pressed = (
	picture: Grey,
	places: readonly PicturePoint[],
	reach: number,
	quality: number
): void => {
	const { width, height, light } = picture;
	for (const { u, v } of places) {
		const from = (middle: number): number => Math.max(0, Math.floor((middle - reach) / 8) * 8);
		const [left, top] = [from(u), from(v)];
		const part = {
			width: Math.min(width - left, Math.ceil((2 * reach) / 8) * 8),
			height: Math.min(height - top, Math.ceil((2 * reach) / 8) * 8)
		};
		const cut = new Uint8Array(part.width * part.height);
		for (let row = 0; row < part.height; row++)
			cut.set(
				light.subarray((top + row) * width + left, (top + row) * width + left + part.width),
				row * part.width
			);
		const { data } = jpeg.decode(jpegOf({ ...part, light: cut }, quality), { useTArray: true });
		for (let row = 0; row < part.height; row++)
			for (let column = 0; column < part.width; column++)
				light[(top + row) * width + left + column] = data[(row * part.width + column) * 4] ?? 0;
	}
};
