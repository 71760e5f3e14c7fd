import { pathData, type Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';

/** Decimals of a printed point or length in millimetres: far below a hundredth, far above floating-point noise. */
const DIGITS = 9;
const SCALE = 10 ** DIGITS;
/** Decimals of path data, which is for drawing. */
const PATH_DIGITS = 6;

/** A number as JSON holds it, which writes a negative nought as 0. */
export const rounded = (value: number): number => Math.round(value * SCALE) / SCALE;

/** A place as JSON holds it: across and down, in millimetres. */
export const placeJson = ({ x, y }: SheetPoint): readonly [number, number] => [rounded(x), rounded(y)];

/** A line as JSON holds it: path data in millimetres; `closed` adds the closing Z. */
export const pathJson = (path: Path, closed = false): string => pathData(path, PATH_DIGITS, closed);
