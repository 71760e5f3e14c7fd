import aruco from 'js-aruco2';
import { pixelsApart, shrunk, type Grey, type PicturePoint } from './picture.ts';

/** A square marker that was found: which it is, and its corners from its upper left one on, clockwise as it is printed. */
export interface FoundMarker {
	readonly id: number;
	readonly corners: readonly [PicturePoint, PicturePoint, PicturePoint, PicturePoint];
}

/** The family of markers: any two differ in twelve of their 36 cells or more (Garrido-Jurado et al. 2016). */
const FAMILY = 'ARUCO_MIP_36h12';
/** Cells of a marker that may be misread: more, and lettering is taken for one. Measured on pictures of sheets. */
const MISREAD = 2;
/** A marker has six cells between black borders of one. */
export const CELLS_ACROSS = 8;

/** How much smaller the picture is looked at. Blur hides markers at full size; small ones are lost in a smaller picture. */
const SHARES_PER_WIDTH = [1350, 2000, 1000, 700];

const cells = (): readonly (readonly boolean[])[] => {
	const { codeList } = new aruco.AR.Dictionary(FAMILY);
	return codeList.map((code) => Array.from(code, (bit) => bit === '1'));
};

/**
 * Which cells of a marker are white, row by row, its black border left out. Throws for an id that the family does not have.
 */
export const whiteCells = (id: number): readonly (readonly boolean[])[] => {
	const code = cells()[id];
	if (!code) throw new Error(`there is no marker ${String(id)}`);
	const across = CELLS_ACROSS - 2;
	return Array.from({ length: across }, (_, row) => code.slice(row * across, (row + 1) * across));
};

const rgbaOf = ({ light }: Grey): Uint8ClampedArray => {
	const out = new Uint8ClampedArray(light.length * 4);
	for (let i = 0; i < light.length; i++) {
		const each = light[i] ?? 0;
		out[i * 4] = each;
		out[i * 4 + 1] = each;
		out[i * 4 + 2] = each;
		out[i * 4 + 3] = 255;
	}
	return out;
};

const foundAt = (grey: Grey, by: number): readonly FoundMarker[] => {
	const { width, height } = grey;
	const detector = new aruco.AR.Detector({ dictionaryName: FAMILY, maxHammingDistance: MISREAD });
	return detector.detectImage(width, height, rgbaOf(grey)).map(({ id, corners: [a, b, c, d] }) => {
		// It names pixels; their middles are meant.
		const put = ({ x, y }: { x: number; y: number }): PicturePoint => ({
			u: (x + 0.5) * by,
			v: (y + 0.5) * by
		});
		return { id, corners: [put(a), put(b), put(c), put(d)] };
	});
};

const sizeOf = ({ corners: [a, b, c, d] }: FoundMarker): number => pixelsApart(a, c) + pixelsApart(b, d);

/**
 * The markers in a picture, to a pixel or two. Each is found twice, by the outer and the inner rim of its border: the larger is
 * kept. `enough` says of ids when no more are looked for at other sizes of the picture.
 */
export const findMarkers = (
	grey: Grey,
	enough: (ids: ReadonlySet<number>) => boolean
): readonly FoundMarker[] => {
	const found = new Map<number, FoundMarker>();
	const tried = new Set<number>();
	for (const width of SHARES_PER_WIDTH) {
		const by = Math.max(1, Math.round(Math.max(grey.width, grey.height) / width));
		if (tried.has(by)) continue;
		tried.add(by);
		for (const marker of foundAt(by === 1 ? grey : shrunk(grey, by), by)) {
			const known = found.get(marker.id);
			if (!known || sizeOf(known) < sizeOf(marker)) found.set(marker.id, marker);
		}
		if (enough(new Set(found.keys()))) break;
	}
	return [...found.values()].sort((a, b) => a.id - b.id);
};
