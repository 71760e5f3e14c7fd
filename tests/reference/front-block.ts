/**
 * The front block a second time, from the printed rules alone: straight-line arithmetic in centimetres
 * that shares no code with the program, so that a mistake would have to be made twice. Only the back's
 * shoulder and side seam come from the back worked by hand.
 */
import { handBack, waistDart, waistShared, type Numbers, type Spot } from './back-block.ts';

type Cubic = readonly [Spot, Spot, Spot, Spot];

/** A front worked by hand: places, lengths and the curves' control places, all in centimetres. */
export interface HandFront {
	readonly points: Readonly<Record<string, Spot>>;
	readonly lengths: Readonly<Record<string, number>>;
	/** For each curve its cubics, as start, two handles, end. */
	readonly curves: Readonly<Record<string, readonly Cubic[]>>;
	readonly hasDart: boolean;
	/** How much longer the side seam with its dart closed is than the back's. */
	readonly sideDifference: number;
	/** The pairs of measurements at odds; nothing is drafted where there is one. */
	readonly odds: readonly string[];
	/** What is warned about: the front shorter than the back, side seams that do not agree. */
	readonly warnings: readonly ('shorter' | 'sideSeam')[];
}

const USUAL: Numbers = {
	...{ bustEase: 8, waistEase: 4, hipEase: 6, sideMost: 3, armholeDrop: 3, neckAllow: 1, frontNeckDrop: 1 },
	...{ shoulderDropFront: 5, hollowFront: 1.5, dartBelow: 6, dartShort: 2.5 }
};

/** Sums of decimal centimetres end in noise, which must not move a body across a limit. */
const NOISE = 1e-9;

const apart = (a: Spot, b: Spot): number => Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
/** The place so far from `a` on the way to `b`. */
const onTheWay = (a: Spot, b: Spot, far: number): Spot => [
	a[0] + ((b[0] - a[0]) * far) / apart(a, b),
	a[1] + ((b[1] - a[1]) * far) / apart(a, b)
];

const placeOn = ([a, b, c, d]: Cubic, t: number): Spot => {
	const s = 1 - t;
	const along = (i: 0 | 1): number =>
		s * s * s * a[i] + 3 * s * s * t * b[i] + 3 * s * t * t * c[i] + t * t * t * d[i];
	return [along(0), along(1)];
};

/** The chords of n pieces fall short by a share that goes with 1 / n²; twice as many pieces tell how much. */
const cubicLength = (cubic: Cubic): number => {
	const chords = (pieces: number): number => {
		let sum = 0;
		for (let i = 0; i < pieces; i++)
			sum += apart(placeOn(cubic, i / pieces), placeOn(cubic, (i + 1) / pieces));
		return sum;
	};
	return (4 * chords(400) - chords(200)) / 3;
};

/** Four thirds of the root of two less one. */
const K = 0.552_284_749_8;
/** A cubic between two ends toward the corner where their square lines meet; by thirds along u and against v where there is none. */
const toward = (p: Spot, u: Spot, q: Spot, v: Spot, corner: Spot | undefined): Cubic => {
	if (corner)
		return [
			p,
			[p[0] + K * (corner[0] - p[0]), p[1] + K * (corner[1] - p[1])],
			[q[0] + K * (corner[0] - q[0]), q[1] + K * (corner[1] - q[1])],
			q
		];
	const third = apart(p, q) / 3;
	return [p, [p[0] + third * u[0], p[1] + third * u[1]], [q[0] - third * v[0], q[1] - third * v[1]], q];
};

const ACROSS: Spot = [1, 0];
const DOWN: Spot = [0, 1];

/** From C leaving straight across, to N arriving square to the shoulder, which runs (run, drop) from N. */
const neckCurve = (C: Spot, N: Spot, run: number, drop: number): Cubic => {
	const size = Math.sqrt(run * run + drop * drop);
	// The square line at N goes down and inward: it reaches C's depth so far inward of N.
	const x = N[0] - (C[1] * drop) / run;
	return toward(C, ACROSS, N, [drop / size, -run / size], x > 0 && C[1] > 0 ? [x, C[1]] : undefined);
};

/** From S square to the shoulder, through M straight down, to U straight across. */
const armholeCurve = (S: Spot, M: Spot, U: Spot, run: number, drop: number): readonly [Cubic, Cubic] => {
	const size = Math.sqrt(run * run + drop * drop);
	const inward = S[0] - M[0];
	// The square line at S has gone so far down where it is as far in as M.
	const y = S[1] + (inward * run) / drop;
	const ahead = inward > 0 && y < M[1];
	const below = U[0] > M[0] && U[1] > M[1];
	return [
		toward(S, [-drop / size, run / size], M, DOWN, ahead ? [M[0], y] : undefined),
		toward(M, DOWN, U, ACROSS, below ? [M[0], U[1]] : undefined)
	];
};

/** The side of a front: with its dart, or where there is none one straight seam. */
interface Side {
	readonly points: Readonly<Record<string, Spot>>;
	readonly lengths: Readonly<Record<string, number>>;
	/** From the underarm to the waist, with the dart closed. */
	readonly seam: number;
	/** Whether the lines that L and Z are looked for on do not cross there, so that nothing more is drafted. */
	readonly lost: '' | 'L' | 'Z';
	/** Whether the dart's ends lie between the underarm and the waist. */
	readonly inside: boolean;
}

const less = (a: Spot, b: Spot): Spot => [a[0] - b[0], a[1] - b[1]];
/** Twice the area between two ways: 0 where they run alike. */
const between = (a: Spot, b: Spot): number => a[0] * b[1] - a[1] * b[0];

/** A place turned about `pin` as `from` goes to `onto`, which lies as far from it: ways as complex numbers, multiplied and divided. */
const carriedBy = (pin: Spot, from: Spot, onto: Spot, place: Spot): Spot => {
	const [p, f, o] = [less(place, pin), less(from, pin), less(onto, pin)];
	const size = f[0] * f[0] + f[1] * f[1];
	const [re, im] = [(o[0] * f[0] + o[1] * f[1]) / size, (o[1] * f[0] - o[0] * f[1]) / size];
	return [pin[0] + p[0] * re - p[1] * im, pin[1] + p[0] * im + p[1] * re];
};

/** A way mirrored in another. */
const foldedOver = (given: Spot, fold: Spot): Spot => {
	const size = fold[0] * fold[0] + fold[1] * fold[1];
	const along = (2 * (given[0] * fold[0] + given[1] * fold[1])) / size;
	return [along * fold[0] - given[0], along * fold[1] - given[1]];
};

/** The bust dart and the side seam, down to the waist. */
const sideOf = (U: Spot, V: Spot, T: Spot, intake: number, below: number, short: number): Side => {
	const bare = {
		points: {},
		lengths: { side: apart(U, V) },
		seam: apart(U, V),
		lost: '',
		inside: true
	} as const;
	// A millionth of a centimetre is no dart.
	if (intake <= 1e-7) return bare;
	const D = onTheWay(U, V, below);
	const D1 = onTheWay(U, V, below - intake / 2);
	const D2 = onTheWay(U, V, below + intake / 2);
	const leg = apart(T, D1);
	const E = onTheWay(T, D2, leg);
	const F = carriedBy(T, E, D1, V);
	const ruled = less(F, U);
	// T + share (D1 - T) lies on the line from U along `ruled`.
	const share = between(ruled, less(U, T)) / between(ruled, less(D1, T));
	if (!(share > 0)) return { ...bare, lost: 'L' };
	const L: Spot = [T[0] + share * (D1[0] - T[0]), T[1] + share * (D1[1] - T[1])];
	const R = onTheWay(T, E, apart(T, L));
	const X: Spot = [(L[0] + R[0]) / 2, (L[1] + R[1]) / 2];
	const Y = onTheWay(T, X, short);
	const pressed = foldedOver(less(V, R), less(R, Y));
	const [middle, toT] = [less(X, T), less(T, R)];
	// T + peak (X - T) lies on the line from R along `pressed`.
	const peak = -between(pressed, toT) / between(pressed, middle);
	if (!(peak > 0) || apart(R, V) < 1e-6) return { ...bare, lost: 'Z' };
	const Z: Spot = [T[0] + peak * middle[0], T[1] + peak * middle[1]];
	// Sewn to Y, the lower part is turned as R is onto L: below the dart the side leaves as the part above it, turned back.
	const bent = less(carriedBy(Y, L, R, F), carriedBy(Y, L, R, U));
	const [run, third] = [Math.hypot(...bent), apart(R, V) / 3];
	const handle: Spot = [R[0] + (bent[0] / run) * third, R[1] + (bent[1] / run) * third];
	const sideSewn = cubicLength([R, handle, onTheWay(V, R, third), V]);
	const [sideAbove, sideBelow, sewn] = [apart(U, L), apart(R, V), apart(Y, R)];
	return {
		points: { D, D1, D2, E, F, L, R, X, Y, Z },
		lengths: {
			...{
				dartUpper: apart(T, L),
				dartLower: apart(T, L),
				sewnUpper: sewn,
				sewnLower: sewn,
				sideAbove,
				sideBelow,
				sideSewn
			},
			...{ dartMiddle: apart(Y, Z), mouth: apart(L, Z) + apart(Z, R) }
		},
		seam: sideAbove + sideSewn,
		lost: '',
		inside: L[1] >= U[1] - NOISE && R[1] <= V[1] + NOISE
	};
};

/** Where the front is shorter than the back, its underarm comes up by the difference, at most half of the way from P to Q. */
const shorterFront = (
	intake: number,
	S: Spot,
	M: Spot,
	U: Spot,
	V: Spot,
	[run, drop]: Spot
): Pick<Side, 'points' | 'lengths'> => {
	if (intake >= -1e-7) return { points: {}, lengths: {} };
	const U1: Spot = [U[0], U[1] - Math.min(-intake, (U[1] - M[1]) / 2)];
	const [upper, lower] = armholeCurve(S, M, U1, run, drop);
	return {
		points: { U1 },
		lengths: { armholeTrued: cubicLength(upper) + cubicLength(lower), sideTrued: apart(U1, V) }
	};
};

/** What a front is refused for when its back can be drafted, in the order of the printed list. */
const frontOdds = (
	value: (key: string) => number,
	shoulder: number,
	U: Spot,
	V: Spot,
	side: Side,
	dart: number
): readonly string[] => {
	// A shoulder that does not even reach has no meeting point, and nothing after it is drafted.
	if (shoulder < value('shoulderDropFront') - NOISE) return ['neck shoulderWidth'];
	const intake = value('frontLength') - value('backLength');
	if (side.lost) return [side.lost === 'L' ? 'frontLength backLength' : 'bustSpan bust'];
	const middle = value('bustSpan') / 2;
	const noWaist = middle - dart / 2 < 1 - NOISE || V[0] - middle - dart / 2 < 1 - NOISE;
	const bust = value('bustHeight');
	const odds: string[] = [];
	if (shoulder <= value('shoulderDropFront') + NOISE) odds.push('neck shoulderWidth');
	if (intake > 10 + NOISE || !side.inside) odds.push('frontLength backLength');
	if (dart > 1e-7 && noWaist) odds.push('bustSpan waist');
	if (value('bustSpan') / 2 > 0.9 * U[0] + NOISE) odds.push('bustSpan bust');
	if (U[1] - bust > 3 + NOISE || bust >= value('frontLength') - NOISE) odds.push('bustHeight frontLength');
	return odds;
};

/** Works the front of a body; allowances that are not given are the usual ones. */
export const handFront = (given: Numbers): HandFront => {
	const value = (key: string): number => {
		const found = given[key] ?? USUAL[key];
		if (found === undefined) throw new Error(`no ${key} was given`);
		return found;
	};
	const back = handBack(given);
	const shoulder = back.lengths['shoulder'] ?? NaN;
	const drop = value('shoulderDropFront');
	const waist = value('frontLength');
	const hip = waist + value('waistToHip');
	const armhole = value('shoulderWidth') / 2 + value('armholeDrop');
	const neck = value('neck') / 6 + value('neckAllow');
	const N: Spot = [neck, 0];
	const C: Spot = [0, neck + value('frontNeckDrop')];
	const run = Math.sqrt(shoulder * shoulder - drop * drop);
	const S: Spot = [neck + run, drop];
	const M: Spot = [S[0] - value('hollowFront'), (drop + armhole) / 2];
	const U: Spot = [(value('bust') + value('bustEase')) / 4, armhole];
	const need = (value('waist') + value('waistEase')) / 4;
	const shared = waistShared(U[0], need, value('sideMost'));
	const V: Spot = [shared.side, waist];
	const J: Spot = [(value('hip') + value('hipEase')) / 4, hip];
	const T: Spot = [value('bustSpan') / 2, value('bustHeight')];
	const intake = waist - value('backLength');
	const side = sideOf(U, V, T, intake, value('dartBelow'), value('dartShort'));
	const dart = waistDart(
		T[0],
		shared.dart,
		waist,
		T[1] + value('dartShort'),
		waist + value('waistToHip') / 2
	);
	const trued = shorterFront(intake, S, M, U, V, [run, drop]);
	const sideDifference = (trued.lengths['sideTrued'] ?? side.seam) - (back.lengths['side'] ?? NaN);

	const neckLine = neckCurve(C, N, run, drop);
	const armholeLine = armholeCurve(S, M, U, run, drop);
	const third = apart(V, J) / 3;
	const hipLine: Cubic = [V, [V[0] + (J[0] - V[0]) / 3, V[1] + (J[1] - V[1]) / 3], [J[0], J[1] - third], J];
	return {
		points: {
			...{ O: [0, 0], A: [0, armhole], B: [0, T[1]], W: [0, waist], H: [0, hip], N, C, S },
			...{ Q: [S[0], armhole], P: [S[0], M[1]], M, U, T, V, J, ...side.points },
			...{ W1: [need, waist], W2: [U[0], waist] },
			...dart.points,
			...trued.points
		},
		lengths: {
			...{ armholeLevel: U[0], waistLevel: need, waistLine: V[0], hipLevel: J[0], hem: J[0] },
			// From C to the waist and on to the hip: back along itself where the neck is deeper than the waist.
			...{ centre: Math.abs(waist - C[1]) + (hip - waist), shoulder, ...side.lengths, ...dart.lengths },
			neck: cubicLength(neckLine),
			armhole: cubicLength(armholeLine[0]) + cubicLength(armholeLine[1]),
			hip: cubicLength(hipLine),
			...trued.lengths
		},
		curves: { neck: [neckLine], armhole: armholeLine, hip: [hipLine] },
		hasDart: intake > 1e-7,
		sideDifference,
		odds: back.odds.length > 0 ? back.odds : frontOdds(value, shoulder, U, V, side, shared.dart),
		warnings: [
			...(intake < -0.5 - NOISE ? (['shorter'] as const) : []),
			...(Math.abs(sideDifference) > 0.5 ? (['sideSeam'] as const) : [])
		]
	};
};
