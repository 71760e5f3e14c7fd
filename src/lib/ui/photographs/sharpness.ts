/** Side of the part of a picture's middle by which it is told how sharp it is, in pixels. */
const SIDE = 640;

/**
 * How sharp a picture is: how much its pixels differ from the mean of their four neighbours (the variance of the Laplacian, Pech-Pacheco
 * and others 2000), in its middle. It has no unit: pictures of the same thing are compared by it.
 */
export const sharpness = (width: number, height: number, rgba: ArrayLike<number>): number => {
	let [sum, squares, count] = [0, 0, 0];
	const green = (column: number, row: number): number => rgba[(row * width + column) * 4 + 1] ?? 0;
	for (let row = 1; row < height - 1; row++)
		for (let column = 1; column < width - 1; column++) {
			const edge =
				4 * green(column, row) -
				green(column - 1, row) -
				green(column + 1, row) -
				green(column, row - 1) -
				green(column, row + 1);
			sum += edge;
			squares += edge * edge;
			count += 1;
		}
	return count === 0 ? 0 : squares / count - (sum / count) ** 2;
};

/** How sharp a picture of the camera is. */
export const sharpnessOf = (picture: ImageBitmap): number => {
	const [width, height] = [Math.min(SIDE, picture.width), Math.min(SIDE, picture.height)];
	const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
	context?.drawImage(picture, (width - picture.width) / 2, (height - picture.height) / 2);
	const { data } = context?.getImageData(0, 0, width, height) ?? { data: [] };
	return sharpness(width, height, data);
};
