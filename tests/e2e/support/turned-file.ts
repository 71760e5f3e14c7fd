import jpeg from 'jpeg-js';

/** Where the upright picture's pixel is that is kept at a row and column, by the number that the file's notes have for it (CIPA DC-008, 4.6.4, tag 274). */
const KEPT = {
	3: (row: number, column: number, width: number, height: number) => [height - 1 - row, width - 1 - column],
	5: (row: number, column: number) => [column, row],
	6: (row: number, column: number, width: number) => [column, width - 1 - row],
	8: (row: number, column: number, _: number, height: number) => [height - 1 - column, row]
} as const;

/** The same picture as a camera keeps it that was held otherwise: turned, with a note of how it is upright. */
export const turnedFile = (file: Buffer, turn: keyof typeof KEPT): Buffer => {
	const { width, height, data } = jpeg.decode(file, { useTArray: true });
	const [across, down] = turn === 3 ? [width, height] : [height, width];
	const upright = new Uint32Array(data.buffer, data.byteOffset, width * height);
	const kept = new Uint32Array(across * down);
	for (let row = 0; row < down; row++)
		for (let column = 0; column < across; column++) {
			const [y = 0, x = 0] = KEPT[turn](row, column, width, height);
			kept[row * across + column] = upright[y * width + x] ?? 0;
		}
	const turned = jpeg.encode({ width: across, height: down, data: new Uint8Array(kept.buffer) }, 92).data;
	const notes = Buffer.from(
		`ffe100224578696600004d4d002a0000000800010112000300000001000${String(turn)}000000000000`,
		'hex'
	);
	return Buffer.concat([turned.subarray(0, 2), notes, turned.subarray(2)]);
};
