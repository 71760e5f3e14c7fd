/** A place in a picture, in its pixels: u to the right and v down from the upper left corner, where the first pixel's middle is (0.5, 0.5). */
export interface PicturePoint {
	readonly u: number;
	readonly v: number;
}

/** A picture without its colours: a byte for each pixel, row by row, 0 black to 255 white. */
export interface Grey {
	readonly width: number;
	readonly height: number;
	readonly light: Uint8Array;
}

/** The greys of a picture that comes as red, green, blue and opacity, weighed as ITU-R BT.601 does. */
export const greyOf = (width: number, height: number, rgba: ArrayLike<number>): Grey => {
	const light = new Uint8Array(width * height);
	for (let i = 0, at = 0; i < light.length; i++, at += 4)
		light[i] = ((rgba[at] ?? 0) * 77 + (rgba[at + 1] ?? 0) * 150 + (rgba[at + 2] ?? 0) * 29) >> 8;
	return { width, height, light };
};

/** The same picture with each square of `by` pixels as one; what is left over at the right and below falls away. */
export const shrunk = ({ width, height, light }: Grey, by: number): Grey => {
	const small = {
		width: Math.floor(width / by),
		height: Math.floor(height / by)
	};
	const sums = new Uint16Array(small.width);
	const out = new Uint8Array(small.width * small.height);
	for (let row = 0; row < small.height; row++) {
		sums.fill(0);
		for (let down = 0; down < by; down++) {
			let from = (row * by + down) * width;
			for (let column = 0; column < small.width; column++) {
				let sum = 0;
				for (let across = 0; across < by; across++) sum += light[from++] ?? 0;
				sums[column] = (sums[column] ?? 0) + sum;
			}
		}
		for (let column = 0; column < small.width; column++)
			out[row * small.width + column] = (sums[column] ?? 0) / (by * by);
	}
	return { ...small, light: out };
};

/** How light a picture is at a place between its pixels, from the four about it; at the rim, from the nearest. */
export const lightAt = ({ width, height, light }: Grey, { u, v }: PicturePoint): number => {
	const x = Math.min(Math.max(u - 0.5, 0), width - 1.001);
	const y = Math.min(Math.max(v - 0.5, 0), height - 1.001);
	const [column, row] = [Math.floor(x), Math.floor(y)];
	const [right, down] = [x - column, y - row];
	const i = row * width + column;
	const above = (light[i] ?? 0) * (1 - right) + (light[i + 1] ?? 0) * right;
	const below = (light[i + width] ?? 0) * (1 - right) + (light[i + width + 1] ?? 0) * right;
	return above * (1 - down) + below * down;
};

/** How far two places of a picture are apart, in pixels. */
export const pixelsApart = (a: PicturePoint, b: PicturePoint): number => Math.hypot(b.u - a.u, b.v - a.v);

/** Whether a place lies in a picture. */
export const isInside = (
	{ width, height }: Pick<Grey, 'width' | 'height'>,
	{ u, v }: PicturePoint
): boolean => u >= 0 && v >= 0 && u <= width && v <= height;
