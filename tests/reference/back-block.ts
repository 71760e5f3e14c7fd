/**
 * The back block a second time, from the printed rules alone: straight-line arithmetic in centimetres
 * that shares no code with the program, so that a mistake would have to be made twice.
 */

/** Measurements and allowances in centimetres. */
export type Numbers = Readonly<Record<string, number>>;
export type Spot = readonly [across: number, down: number];

/** A back worked by hand: places, lengths and the curves' control places, all in centimetres. */
export interface HandBack {
	readonly points: Readonly<Record<string, Spot>>;
	readonly lengths: Readonly<Record<string, number>>;
	/** For each curve its cubics, as start, two handles, end. */
	readonly curves: Readonly<Record<string, readonly (readonly [Spot, Spot, Spot, Spot])[]>>;
	/** How often two ends had no corner ahead of both, so that the rule of thirds held. */
	readonly withoutCorner: number;
	/** The pairs of measurements at odds. */
	readonly odds: readonly string[];
}

const USUAL: Numbers = {
	bustEase: 8,
	waistEase: 4,
	hipEase: 6,
	sideMost: 3,
	waistDartTop: 2,
	armholeDrop: 3,
	neckAllow: 1,
	backNeckDepth: 2.5,
	shoulderDropBack: 4,
	hollowBack: 1
};

/** Simpson's rule over the speed of a cubic: an even number of parts, fine enough for a millionth of a centimetre. */
const PARTS = 400;

const cubicLength = (c: readonly [Spot, Spot, Spot, Spot]): number => {
	const slope = (axis: 0 | 1, t: number): number => {
		const [p, q, r, s] = [c[0][axis], c[1][axis], c[2][axis], c[3][axis]];
		return 3 * (q - p) + 6 * (r - 2 * q + p) * t + 3 * (s - 3 * r + 3 * q - p) * t * t;
	};
	const speed = (t: number): number => Math.sqrt(slope(0, t) ** 2 + slope(1, t) ** 2);
	let sum = speed(0) + speed(1);
	for (let i = 1; i < PARTS; i++) sum += (i % 2 === 1 ? 4 : 2) * speed(i / PARTS);
	return sum / (3 * PARTS);
};

const apart = (a: Spot, b: Spot): number => Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);

/** One segment by the corner rule: from p along u to q along v, where u and v have length one. */
const bySquareLines = (
	p: Spot,
	u: Spot,
	q: Spot,
	v: Spot
): { cubic: readonly [Spot, Spot, Spot, Spot]; corner: boolean } => {
	// p + a u = q - b v, solved for a and b by Cramer's rule.
	const determinant = u[0] * v[1] - v[0] * u[1];
	const a = ((q[0] - p[0]) * v[1] - v[0] * (q[1] - p[1])) / determinant;
	const b = (u[0] * (q[1] - p[1]) - (q[0] - p[0]) * u[1]) / determinant;
	const corner = Math.abs(determinant) > 1e-9 && a > 0 && b > 0;
	const k = (4 / 3) * (Math.SQRT2 - 1);
	const [first, second] = corner ? [k * a, k * b] : [apart(p, q) / 3, apart(p, q) / 3];
	const leaving: Spot = [p[0] + first * u[0], p[1] + first * u[1]];
	const arriving: Spot = [q[0] - second * v[0], q[1] - second * v[1]];
	return { cubic: [p, leaving, arriving, q], corner };
};

/** What the side of a panel takes of what is too much at the waist, and what is left for a dart. */
export const waistShared = (u: number, need: number, most: number): { side: number; dart: number } => {
	const spare = u - need;
	const side = spare > 0 ? u - (spare < 3 * most ? spare / 3 : most) : need;
	return { side, dart: side - need };
};

/** A dart on the waist, pointed at both ends: its points and the lengths of its two sides; nothing where it has no width. */
export const waistDart = (
	middle: number,
	width: number,
	waist: number,
	top: number,
	foot: number
): { points: Readonly<Record<string, Spot>>; lengths: Readonly<Record<string, number>> } => {
	if (width <= 1e-7) return { points: {}, lengths: {} };
	const side = Math.hypot(width / 2, waist - top) + Math.hypot(width / 2, foot - waist);
	return {
		points: {
			...{ G: [middle, waist], G1: [middle - width / 2, waist], G2: [middle + width / 2, waist] },
			...{ G3: [middle, top], G4: [middle, foot] }
		},
		lengths: { waistDartInner: side, waistDartOuter: side }
	};
};

/** Works the back of a body; allowances that are not given are the usual ones. */
export const handBack = (given: Numbers): HandBack => {
	const value = (key: string): number => {
		const found = given[key] ?? USUAL[key];
		if (found === undefined) throw new Error(`no ${key} was given`);
		return found;
	};
	const half = value('shoulderWidth') / 2;
	const armhole = half + value('armholeDrop');
	const waist = value('backLength');
	const hip = waist + value('waistToHip');
	const neck = value('neck') / 6 + value('neckAllow');
	const drop = value('shoulderDropBack');
	const [u, need, j] = (['bust', 'waist', 'hip'] as const).map(
		(girth) => (value(girth) + value(`${girth}Ease`)) / 4
	) as [number, number, number];
	const { side: v, dart: intake } = waistShared(u, need, value('sideMost'));
	const dart = waistDart(
		half / 2,
		intake,
		waist,
		armhole + value('waistDartTop'),
		hip - value('waistToHip') / 3
	);
	const N: Spot = [neck, 0];
	const C: Spot = [0, value('backNeckDepth')];
	const S: Spot = [half, drop];
	const M: Spot = [half - value('hollowBack'), (drop + armhole) / 2];
	const [U, V, J]: [Spot, Spot, Spot] = [
		[u, armhole],
		[v, waist],
		[j, hip]
	];

	const shoulder = apart(N, S);
	const [right, down]: [Spot, Spot] = [
		[1, 0],
		[0, 1]
	];
	// Square to the shoulder, which runs (half - neck, drop): turned a quarter, upward at N and downward at S.
	const upAtN: Spot = [drop / shoulder, -(half - neck) / shoulder];
	const downAtS: Spot = [-drop / shoulder, (half - neck) / shoulder];
	const neckCurve = bySquareLines(C, right, N, upAtN);
	const upper = bySquareLines(S, downAtS, M, down);
	const lower = bySquareLines(M, down, U, right);
	const third = apart(V, J) / 3;
	const hipCurve = [V, [v + (j - v) / 3, waist + (hip - waist) / 3], [j, hip - third], J] as const;

	const odds: string[] = [];
	if (u - half < 1.5 - 1e-9) odds.push('bust shoulderWidth');
	if (waist - armhole < 5 - 1e-9) odds.push('shoulderWidth backLength');
	if (intake > 1e-7 && half / 2 - intake / 2 < 1 - 1e-9) odds.push('bust waist');
	if (intake > 1e-7 && v - half / 2 - intake / 2 < 1 - 1e-9) odds.push('bust waist');
	if (half - neck < 4 - 1e-9) odds.push('neck shoulderWidth');
	return {
		points: {
			...{ O: [0, 0], A: [0, armhole], W: [0, waist], H: [0, hip], N, C, K: [half, 0], S },
			...{ Q: [half, armhole], P: [half, M[1]], M, U, V, J },
			...{ W1: [need, waist], W2: [u, waist] },
			...dart.points
		},
		lengths: {
			...{ armholeLevel: u, waistLevel: need, waistLine: v, hipLevel: j, hem: j },
			...{ centre: hip - C[1], shoulder, side: apart(U, V) },
			...dart.lengths,
			neck: cubicLength(neckCurve.cubic),
			armhole: cubicLength(upper.cubic) + cubicLength(lower.cubic),
			hip: cubicLength(hipCurve)
		},
		curves: { neck: [neckCurve.cubic], armhole: [upper.cubic, lower.cubic], hip: [hipCurve] },
		withoutCorner: [neckCurve, upper, lower].filter(({ corner }) => !corner).length,
		odds
	};
};
