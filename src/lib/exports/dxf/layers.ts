/**
 * The layers of the open pattern-exchange convention of ASTM D6673 (withdrawn 2019). The numbers are from memory: the
 * standard's text was not at hand, and no conformity is promised.
 */
export const LAYERS = {
	/** The piece's boundary, which is cut, and words about the piece. */
	boundary: 1,
	/** Corners of the boundary. */
	turnPoints: 2,
	/** Points between corners, on curves. */
	curvePoints: 3,
	notches: 4,
	/** The fold, on which the piece is mirrored. */
	mirror: 6,
	grain: 7,
	/** Lines inside a piece that are not cut. */
	internal: 8,
	drills: 13,
	/** The stitching line. */
	sewLines: 14
} as const;
