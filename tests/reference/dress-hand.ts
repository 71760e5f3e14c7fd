/**
 * The bodice of the course dress a second time, from the printed rules alone: straight-line arithmetic in centimetres
 * that shares no code with the program. Only the block's own places come from the blocks worked by hand.
 */
import { handBack, type Numbers, type Spot } from './back-block.ts';
import { handFront } from './front-block.ts';
import {
	ACROSS,
	angleAt,
	apart,
	besideLength,
	byCorner,
	byThirds,
	DOWN,
	firstPassing,
	gone,
	lengthOf,
	lengthTo,
	middle,
	onTheWay,
	placeOn,
	shareAt,
	square,
	turned,
	UP,
	way,
	wayOn,
	type Cubic,
	type Curve
} from './dress-curves.ts';

/** A draft worked by hand: places and lengths in centimetres. */
export interface HandDraft {
	readonly points: Readonly<Record<string, Spot>>;
	readonly lengths: Readonly<Record<string, number>>;
}

/** The two bodices, and the front's curves that other pieces lean on. */
export interface HandBodice {
	readonly front: HandDraft;
	readonly back: HandDraft;
	readonly frontNeck: Cubic;
	readonly frontWaist: Cubic;
}

/** The dress's own numbers, as the page of its method lists them, and those of the block that the dress uses again. */
const USUAL: Numbers = {
	...{
		neckOut: 1.5,
		neckDownFront: 3,
		neckDownBack: 1,
		shoulderIn: 2,
		armholeDown: 0,
		bustOut: 0.5,
		hipOut: 0.5,
		waistIn: 1,
		blousing: 2
	},
	...{
		armholeDart: 1.2,
		buttonStand: 1.8,
		bandWidth: 3,
		facingWaist: 6,
		facingShoulder: 4.5,
		casingWidth: 3.5
	},
	...{ elasticShort: 10, skirtLength: 64, flare: 5, elasticOverlap: 2, bindingSpare: 2 },
	...{ hollowFront: 1.5, hollowBack: 1, dartBelow: 6, hipEase: 6 }
};

/** A body's measurement, or its allowance, or that allowance's usual value. */
export const valuesOf =
	(given: Numbers) =>
	(key: string): number => {
		const found = given[key] ?? USUAL[key];
		if (found === undefined) throw new Error(`no ${key} was given`);
		return found;
	};
type Values = ReturnType<typeof valuesOf>;

const spot = (points: Readonly<Record<string, Spot>>, name: string): Spot => {
	const found = points[name];
	if (!found) throw new Error(`the block has no ${name}`);
	return found;
};

/** What front and back have alike: neckline, shoulder, underarm, and the line below the band. */
interface Top {
	readonly points: Readonly<
		Record<'N1' | 'S1' | 'C1' | 'R1' | 'U1' | 'W1' | 'R2' | 'V0' | 'N2' | 'C2', Spot>
	>;
	readonly neck: Cubic;
	readonly along: Spot;
	readonly lengths: Readonly<Record<string, number>>;
}

const topOf = (block: Readonly<Record<string, Spot>>, value: Values, neckDown: number): Top => {
	const [N, S, C, U] = [spot(block, 'N'), spot(block, 'S'), spot(block, 'C'), spot(block, 'U')];
	const N1 = onTheWay(N, S, value('neckOut'));
	const S1 = onTheWay(S, N, value('shoulderIn'));
	const C1 = gone(C, DOWN, neckDown);
	const R1 = gone(U, ACROSS, value('bustOut'));
	const U1 = gone(R1, DOWN, value('armholeDown'));
	const W1 = gone(spot(block, 'W'), DOWN, value('blousing'));
	const R2: Spot = [U1[0], W1[1]];
	const V0 = gone(R2, ACROSS, -value('waistIn'));
	const along = way(N1, S1);
	const neck = byCorner(C1, ACROSS, N1, square(along, UP));
	const band = value('bandWidth');
	return {
		points: { N1, S1, C1, R1, U1, W1, R2, V0, N2: gone(N1, along, band), C2: gone(C1, DOWN, band) },
		neck,
		along,
		lengths: {
			shoulder: apart(N1, S1),
			neck: lengthTo(neck, 1),
			// The neck runs outward and then up, so its right hand, where the bodice is, is the outer side of its bend.
			bandLine: besideLength(neck, band, 1),
			bandShoulder: band,
			shoulderLeft: apart(N1, S1) - band
		}
	};
};

type SideDart = Readonly<Record<'D' | 'D1' | 'D2' | 'E', Spot>>;

/** The side dart on the line from the underarm to the waist, by the block's rules. */
const sideDart = (U1: Spot, V: Spot, T: Spot, intake: number, below: number): SideDart => {
	const D = onTheWay(U1, V, below);
	const [D1, D2] = [onTheWay(U1, V, below - intake / 2), onTheWay(U1, V, below + intake / 2)];
	return { D, D1, D2, E: onTheWay(T, D2, apart(T, D1)) };
};

const dartLengths = ({ D1, E }: SideDart, T: Spot, U1: Spot, V: Spot): Readonly<Record<string, number>> => ({
	dartUpper: apart(T, D1),
	dartLower: apart(T, E),
	sideTop: apart(U1, D1),
	sideFoot: apart(E, V)
});

/** The armhole with its hollow, and where the legs of the armhole dart lie on it. */
const armholeOf = ({ points: { S1, U1 }, along }: Top, value: Values) => {
	const Q1: Spot = [S1[0], U1[1]];
	const P1 = middle(S1, Q1);
	const M1 = gone(P1, ACROSS, -value('hollowFront'));
	const above = byCorner(S1, square(along, DOWN), M1, DOWN);
	const below = byCorner(M1, DOWN, U1, ACROSS);
	const half = value('armholeDart') / 2;
	const at1 = half > 0 ? shareAt(above, lengthTo(above, 1) - half) : 1;
	const at2 = half > 0 ? shareAt(below, half) : 0;
	const [G1, G2] = [placeOn(above, at1), placeOn(below, at2)];
	return {
		points: { Q1, P1, M1, G1, G2 },
		/** How the armhole runs into the dart, and out of it. */
		runs: [wayOn(above, at1), wayOn(below, at2)] as const,
		lengths: {
			...{ armholeAbove: lengthTo(above, 1), armholeBelow: lengthTo(below, 1) },
			...{ armholeTop: lengthTo(above, 1) - half, armholeFoot: lengthTo(below, 1) - half }
		}
	};
};

/** The front, its darts closed and its side trued to the back's. */
const frontOf = (
	block: Readonly<Record<string, Spot>>,
	value: Values,
	backSide: number
): Omit<HandBodice, 'back'> => {
	const top = topOf(block, value, value('neckDownFront'));
	const { S1, U1, C1, C2, N2, V0: V, W1: W } = top.points;
	const T = spot(block, 'T');
	const F: Spot = [T[0], W[1]];
	const hole = armholeOf(top, value);
	const { G1, G2 } = hole.points;

	// First turn: the armhole dart closed. Second turn: the side dart, where there is one.
	const first = angleAt(T, G2, G1);
	const once = (place: Spot): Spot => turned(T, first, place);
	const intake = value('frontLength') - value('backLength');
	const dart = intake > 1e-9 ? sideDart(U1, V, T, intake, value('dartBelow')) : undefined;
	const second = dart ? angleAt(T, dart.E, dart.D1) : 0;
	const twice = (place: Spot): Spot => turned(T, first + second, place);
	const [U2, V1, G3] = [once(U1), twice(V), once(G2)];

	const Z = onTheWay(U2, V1, backSide);
	const side = way(U2, Z);
	const waist = byThirds(W, ACROSS, Z, square(side, ACROSS));
	const G4 = middle(G1, G3);
	const [ends, begins] = [hole.runs[0], turned([0, 0], first, hole.runs[1])];
	const across = way([0, 0], [ends[0] + begins[0], ends[1] + begins[1]]);
	const armhole: Curve = [
		byCorner(S1, square(top.along, DOWN), G4, across),
		byCorner(G4, across, U2, square(side, ACROSS))
	];
	const stand = value('buttonStand');
	const inward = (place: Spot): Spot => gone(place, ACROSS, -stand);
	const turnedPoints = { G3, U2, V2: once(V), F2: once(F), V1, F1: twice(F), Z, G4 };
	const standPoints = { C3: inward(C1), C4: inward(C2), W2: inward(W) };
	const down = W[1] - C2[1];
	return {
		frontNeck: top.neck,
		frontWaist: waist,
		front: {
			points: {
				...{ ...top.points, ...hole.points, F, ...turnedPoints, ...standPoints },
				...(dart ? { ...dart, D3: once(dart.D1), E2: once(dart.E), E3: twice(dart.E) } : {})
			},
			lengths: {
				...{ ...top.lengths, ...hole.lengths, sideStart: apart(U1, V), waistWithin: F[0] - W[0] },
				...{
					armholeDartUpper: apart(G1, T),
					armholeDartLower: apart(G2, T),
					cut: apart(F, T),
					cutOut: apart(F, T)
				},
				...{
					waistOut: Math.abs(V[0] - F[0]),
					side: backSide,
					waist: lengthTo(waist, 1),
					armhole: lengthOf(armhole)
				},
				...{ standTop: stand, standFoot: stand, bandTop: stand, bandEnd: value('bandWidth') },
				...{ standEdge: down, centre: down, shoulderLeft: apart(N2, S1) },
				...(dart ? dartLengths(dart, T, U1, V) : {})
			}
		}
	};
};

/** Least and most that the back's waist goes round the underarm, in centimetres of its arc, and how finely it is tried. */
const SWING: readonly [number, number] = [-10, 45];
const TRIED = 110;

/** The back whose waist is as long as the front's; undefined where no swing of the side seam makes it so. */
const backOf = (
	block: Readonly<Record<string, Spot>>,
	value: Values,
	frontWaist: number
): HandDraft | undefined => {
	const top = topOf(block, value, value('neckDownBack'));
	const { S1, U1, C1, C2, N2, V0: V, W1: W } = top.points;
	const reach = apart(U1, V);
	const waistOf = (V1: Spot): Cubic => byThirds(W, ACROSS, V1, square(way(U1, V1), ACROSS));
	// A swing outward is one from y toward x.
	const swung = (arc: number): Spot => turned(U1, -arc / reach, V);
	const arc = firstPassing((far) => lengthTo(waistOf(swung(far)), 1, 40) - frontWaist, ...SWING, TRIED);
	if (arc === undefined) return undefined;
	const V1 = swung(arc);
	const Q1: Spot = [S1[0], U1[1]];
	const P1 = middle(S1, Q1);
	const M1 = gone(P1, ACROSS, -value('hollowBack'));
	const armhole: Curve = [
		byCorner(S1, square(top.along, DOWN), M1, DOWN),
		byCorner(M1, DOWN, U1, square(way(U1, V1), ACROSS))
	];
	const { R1: _, R2: __, ...points } = top.points;
	return {
		points: { ...points, V1, Q1, P1, M1 },
		lengths: {
			...top.lengths,
			...{ side: apart(U1, V1), waist: lengthTo(waistOf(V1), 1), armhole: lengthOf(armhole) },
			...{ bandCentre: apart(C1, C2), centre: W[1] - C2[1], shoulderLeft: apart(N2, S1) }
		}
	};
};

/** Works the front bodice of a body, whether or not it is refused. */
export const handFrontBodice = (given: Numbers): Omit<HandBodice, 'back'> => {
	const value = valuesOf(given);
	const { U1, V0 } = topOf(handBack(given).points, value, value('neckDownBack')).points;
	return frontOf(handFront(given).points, value, apart(U1, V0));
};

/** Works both bodices; undefined where the back's waist cannot be made as long as the front's. */
export const handBodice = (given: Numbers): HandBodice | undefined => {
	const made = handFrontBodice(given);
	const back = backOf(handBack(given).points, valuesOf(given), made.front.lengths['waist'] ?? NaN);
	return back && { ...made, back };
};

/** The top of the back: what is refused before the front is worked. */
export const handBackTop = (given: Numbers): Top =>
	topOf(handBack(given).points, valuesOf(given), valuesOf(given)('neckDownBack'));
