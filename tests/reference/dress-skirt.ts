/** The rest of the course dress by hand, in centimetres: facing, skirt, and the strips that are cut by their lengths alone. */
import type { Numbers, Spot } from './back-block.ts';
import {
	ACROSS,
	apart,
	besideMiddle,
	byThirds,
	DOWN,
	firstPassing,
	gone,
	lengthOf,
	lengthTo,
	onTheWay,
	placeOn,
	shareAt,
	square,
	UP,
	way,
	type Cubic
} from './dress-curves.ts';
import { valuesOf, type HandBodice, type HandDraft } from './dress-hand.ts';

const placeOf = ({ points }: HandDraft, name: string): Spot => points[name] ?? [NaN, NaN];
const lengthIn = ({ lengths }: HandDraft, name: string): number => lengths[name] ?? NaN;

/** The facing's inner edge: up from the waist, past the middle of the line beside the neckline, to the shoulder. */
export const handFacing = (given: Numbers, { front, frontNeck, frontWaist }: HandBodice): HandDraft => {
	const value = valuesOf(given);
	const [N2, S1, C2] = [placeOf(front, 'N2'), placeOf(front, 'S1'), placeOf(front, 'C2')];
	const width = Math.min(value('facingShoulder'), apart(N2, S1));
	const waistPart = value('facingWaist') - value('buttonStand');
	const K1 = placeOn(frontWaist, shareAt(frontWaist, waistPart));
	const K2 = onTheWay(N2, S1, width);
	// A line beside the line beside the neck lies beside the neck.
	const K3 = besideMiddle(frontNeck, value('bandWidth') + width);
	const chord = way(C2, N2);
	const inner: readonly Cubic[] = [
		byThirds(K1, UP, K3, chord),
		byThirds(K3, chord, K2, square(way(N2, S1), UP))
	];
	return { points: { K1, K2, K3 }, lengths: { inner: lengthOf(inner), shoulder: width, waistPart } };
};

/** A quarter of the skirt; undefined where no place at the side makes its top as long as the bodice's waist. */
export const handSkirt = (given: Numbers, waist: number): HandDraft | undefined => {
	const value = valuesOf(given);
	const [down, long, flare] = [value('waistToHip'), value('skirtLength'), value('flare')];
	const hip = (value('hip') + value('hipEase')) / 4 + value('hipOut');
	const O: Spot = [0, 0];
	const [H, L]: [Spot, Spot] = [gone(O, DOWN, down), gone(O, DOWN, long)];
	// Where the waist is the wider, the side is straight from there: the flare shared out over the length.
	const J = gone(H, ACROSS, hip > waist ? hip : waist + (flare * down) / long);
	const K1 = gone(L, ACROSS, Math.max(hip, waist) + flare);
	const slope = way(J, K1);
	const R = gone(O, DOWN, (-waist * (J[0] - waist)) / down / 2);
	const topOf = (V: Spot): Cubic => byThirds(O, ACROSS, V, square(way(V, J), ACROSS));
	const across = firstPassing((far) => lengthTo(topOf(gone(R, ACROSS, far)), 1, 40) - waist, 0, 150, 300);
	if (across === undefined) return undefined;
	const V = gone(R, ACROSS, across);
	const sideTop = byThirds(V, way(V, J), J, slope);
	const below = long - lengthTo(sideTop, 1);
	const K = gone(J, slope, below);
	const hem = byThirds(L, ACROSS, K, square(slope, ACROSS));
	return {
		points: { O, H, L, J, K1, R, V, K },
		lengths: {
			...{ guide: apart(J, K1), top: lengthTo(topOf(V), 1), sideTop: lengthTo(sideTop, 1), sideFoot: below },
			...{ side: lengthTo(sideTop, 1) + below, hem: lengthTo(hem, 1), centre: long }
		}
	};
};

/** Strips and numbers, in centimetres; the gathering is how many times the waist edges are as long as the elastic. */
export const handStrips = (
	given: Numbers,
	{ front, back }: HandBodice
): Readonly<Record<'casing' | 'elastic' | 'elasticCut' | 'gathering' | 'armhole' | 'binding', number>> => {
	const value = valuesOf(given);
	const half = lengthIn(front, 'waist') + lengthIn(back, 'waist');
	const elastic = value('waist') - value('elasticShort');
	const armhole = lengthIn(front, 'armhole') + lengthIn(back, 'armhole');
	return {
		casing: half,
		elastic,
		elasticCut: elastic + value('elasticOverlap'),
		gathering: (2 * half) / elastic,
		armhole,
		binding: armhole + value('bindingSpare')
	};
};
