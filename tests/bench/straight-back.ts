import type { Body } from '#shared/body.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Draft, DraftLine } from '#drafting/evaluate.ts';
import type { Path } from '#geometry/path.ts';
import { segmentLength, type Segment } from '#geometry/segment.ts';

/**
 * The back block as someone would write it who needed this block and no other: no steps, no
 * formulas, no names looked up. It gives what `evaluate` gives, with the same quadrature.
 */

type P = Draft['points'][string];
const place = (x: number, y: number): P => ({ x: mm(x), y: mm(y) });
const line = (...path: [Segment, ...Segment[]]): DraftLine => {
	let length = 0;
	for (const segment of path) length += segmentLength(segment);
	return { path: path satisfies Path, length: mm(length) };
};
const ruled = (from: P, to: P): Segment => ({ kind: 'straight', from, to });

const K = (4 * (Math.SQRT2 - 1)) / 3;
/** From p along (ux, uy) to q along (vx, vy), by the corner rule. */
const bent = (p: P, ux: number, uy: number, q: P, vx: number, vy: number): Segment => {
	const cross = ux * vy - uy * vx;
	const [x, y] = [q.x - p.x, q.y - p.y];
	const first = (x * vy - y * vx) / cross;
	const second = (ux * y - uy * x) / cross;
	const corner = Math.abs(cross) >= 1e-9 && first > 0 && second > 0;
	const third = corner ? 0 : Math.hypot(x, y) / 3;
	const [a, b] = corner ? [K * first, K * second] : [third, third];
	return {
		kind: 'cubic',
		from: p,
		leaving: place(p.x + a * ux, p.y + a * uy),
		arriving: place(q.x - b * vx, q.y - b * vy),
		to: q
	};
};

const hipCurve = (V: P, J: P): Segment => {
	const [x, y] = [J.x - V.x, J.y - V.y];
	const third = Math.hypot(x, y) / 3;
	return {
		kind: 'cubic',
		from: V,
		leaving: place(V.x + x / 3, V.y + y / 3),
		arriving: place(J.x, J.y - third),
		to: J
	};
};

/** The back of a body that can be drafted and whose waist asks for a dart; undefined for one that cannot. */
export const straightBack = (body: Body): Draft | undefined => {
	const measured = (key: MeasurementKey): Mm => {
		const value = body.measurements[key];
		if (value === undefined) throw new Error(`${key} is missing`);
		return value;
	};
	const { bustEase = 80, waistEase = 40, hipEase = 60, armholeDrop = 30, sideMost = 30 } = body.allowances;
	const {
		neckAllow = 10,
		backNeckDepth = 25,
		shoulderDropBack = 40,
		hollowBack = 10,
		waistDartTop = 20
	} = body.allowances;
	const half = measured('shoulderWidth') / 2;
	const O = place(0, 0);
	const A = place(0, half + armholeDrop);
	const W = place(0, measured('backLength'));
	const H = place(0, W.y + measured('waistToHip'));
	const N = place(measured('neck') / 6 + neckAllow, 0);
	const C = place(0, backNeckDepth);
	const k = place(half, 0);
	const S = place(half, shoulderDropBack);
	const Q = place(half, A.y);
	const middle = place(half, (S.y + Q.y) / 2);
	const M = place(half - hollowBack, middle.y);
	const U = place(measured('bust') / 4 + bustEase / 4, A.y);
	const need = measured('waist') / 4 + waistEase / 4;
	const spare = U.x - need;
	const V = place(spare > 0 ? U.x - Math.min(spare / 3, sideMost) : need, W.y);
	const dart = V.x - need;
	const [W1, W2, G] = [place(need, W.y), place(U.x, W.y), place(half / 2, W.y)];
	const [G1, G2] = [place(G.x - dart / 2, W.y), place(G.x + dart / 2, W.y)];
	const [G3, G4] = [place(G.x, A.y + waistDartTop), place(G.x, H.y - measured('waistToHip') / 3)];
	const J = place(measured('hip') / 4 + hipEase / 4, H.y);
	if (U.x - Q.x < 15 || W.y - A.y < 50 || S.x - N.x < 40) return undefined;

	const [sx, sy] = [S.x - N.x, S.y - N.y];
	const size = Math.hypot(sx, sy);
	const [dx, dy] = [sx / size, sy / size];
	const lines: Record<string, DraftLine> = {
		armholeLevel: line(ruled(A, U)),
		waistLevel: line(ruled(W, W1)),
		waistLine: line(ruled(W, V)),
		waistDartInner: line(ruled(G3, G1), ruled(G1, G4)),
		waistDartOuter: line(ruled(G3, G2), ruled(G2, G4)),
		hipLevel: line(ruled(H, J)),
		centre: line(ruled(C, W), ruled(W, H)),
		shoulder: line(ruled(N, S)),
		neck: line(bent(C, 1, 0, N, dy, -dx)),
		armhole: line(bent(S, -dy, dx, M, 0, 1), bent(M, 0, 1, U, 1, 0)),
		side: line(ruled(U, V)),
		hip: line(hipCurve(V, J)),
		hem: line(ruled(H, J))
	};
	const points = { O, A, W, H, N, C, K: k, S, Q, P: middle, M, U, V, J, W1, W2, G, G1, G2, G3, G4 };
	return { method: 'back-block', points, lines, uses: {}, warnings: [] };
};
