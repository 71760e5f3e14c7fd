import type { SheetPoint } from '#geometry/point.ts';
import { backward, seenAt, sheetAt, type Homography } from './homography.ts';
import type { PicturePoint } from './picture.ts';

/** How a camera sees a flat sheet: by a homography, and then bent by the lens. */
export interface View {
	/** From the sheet's millimetres to the picture's pixels, as a lens without error would see it. */
	readonly plane: Homography;
	/** How much further out the lens puts a place in the picture's corner, as a share: one radial coefficient about the picture's middle (Hartley and Zisserman 2004, 7.4). */
	readonly bend: number;
	/** The same by the fourth power of the distance from the middle: what telephones' own correction leaves is no plain bend. */
	readonly bendFurther: number;
	/** In pixels. */
	readonly width: number;
	/** In pixels. */
	readonly height: number;
}

type Frame = Omit<View, 'plane'>;

/** Moves a place out from the picture's middle by what `share` says of its distance, in half diagonals. */
const movedOut = (
	{ width, height }: Frame,
	{ u, v }: PicturePoint,
	share: (r: number) => number
): PicturePoint => {
	const [x, y] = [u - width / 2, v - height / 2];
	const by = share(Math.hypot(x, y) / (Math.hypot(width, height) / 2));
	return { u: width / 2 + x * by, v: height / 2 + y * by };
};

/** Where the lens puts what would be seen at a place without it. */
const bent = (frame: Frame, place: PicturePoint): PicturePoint =>
	movedOut(frame, place, (r) => 1 + frame.bend * r ** 2 + frame.bendFurther * r ** 4);

/** Rounds of Newton's method: each doubles the digits that are right. */
const ROUNDS = 6;

/** Where a place would be seen without the lens's error. */
const unbent = (frame: Frame, place: PicturePoint): PicturePoint =>
	movedOut(frame, place, (r) => {
		if (r === 0) return 1;
		let own = r;
		for (let i = 0; i < ROUNDS; i++) {
			const [second, fourth] = [frame.bend * own ** 2, frame.bendFurther * own ** 4];
			own -= (own * (1 + second + fourth) - r) / (1 + 3 * second + 5 * fourth);
		}
		return own / r;
	});

/** Where a place on the sheet is seen in the picture. */
export const toPicture = (view: View, place: SheetPoint): PicturePoint =>
	bent(view, seenAt(view.plane, place));

/** Which place on the sheet is seen at a place of the picture. */
export const toSheet = (view: View, place: PicturePoint): SheetPoint =>
	sheetAt(backward(view.plane), unbent(view, place));
