/** For what a body is refused a course dress, by hand and in centimetres, in the order in which the dress is drafted. */
import type { Numbers } from './back-block.ts';
import { handFront } from './front-block.ts';
import { apart } from './dress-curves.ts';
import { handBackTop, handBodice, handFrontBodice, valuesOf } from './dress-hand.ts';
import { handSkirt } from './dress-skirt.ts';

/** A rule: the pair at odds, and how far it is kept; below 0 it is broken. */
type Rule = readonly [pair: string, kept: number];

/** Sums of decimal centimetres end in noise. */
const NOISE = 1e-7;
const broken = (rules: readonly Rule[]): readonly string[] =>
	rules.filter(([, kept]) => !(kept >= -NOISE)).map(([pair]) => pair);

const backTopRules = (given: Numbers): readonly Rule[] => {
	const { points, lengths } = handBackTop(given);
	const value = valuesOf(given);
	return [
		['neck shoulderWidth', (lengths['shoulder'] ?? NaN) - value('bandWidth') - 1],
		['shoulderWidth backLength', value('backLength') - points.U1[1] - 4]
	];
};

/** Whether the middle of the side dart lies beyond the waist: what its closing would do to the side then says nothing. */
export const dartBeyond = (given: Numbers): boolean => {
	const value = valuesOf(given);
	const { lengths } = handFrontBodice(given).front;
	return value('frontLength') > value('backLength') && value('dartBelow') >= (lengths['sideStart'] ?? NaN);
};

const frontRules = (given: Numbers): readonly Rule[] => {
	const value = valuesOf(given);
	const { points, lengths } = handFrontBodice(given).front;
	const at = (name: string) => points[name] ?? ([NaN, NaN] as const);
	const long = (name: string): number => lengths[name] ?? NaN;
	const half = (value('frontLength') - value('backLength')) / 2;
	const darts: readonly Rule[] = [
		['frontLength backLength', value('dartBelow') - half],
		['frontLength backLength', long('sideStart') - value('dartBelow') - half]
	];
	return [
		['neck shoulderWidth', long('shoulder') - value('bandWidth') - 1],
		['bust shoulderWidth', long('armholeBelow') - value('armholeDart') / 2 - 1],
		['bust shoulderWidth', long('armholeAbove') - value('armholeDart') / 2 - 1],
		['neck bustHeight', value('bustHeight') - at('C2')[1] - 1],
		['bustSpan shoulderWidth', at('M1')[0] - value('bustSpan') / 2 - 0.5],
		...(dartBeyond(given) ? [] : [['shoulderWidth backLength', at('Z')[1] - at('U2')[1] - 6] satisfies Rule]),
		...(half > 1e-9 ? darts : [])
	];
};

const backRules = (given: Numbers): readonly Rule[] => {
	const bodice = handBodice(given);
	if (!bodice) return [['frontLength backLength', -1]];
	const { points, lengths } = bodice.back;
	const at = (name: string) => points[name] ?? ([NaN, NaN] as const);
	return [
		['frontLength backLength', 0.6 * (lengths['side'] ?? NaN) - apart(at('V0'), at('V1'))],
		['shoulderWidth backLength', at('V1')[1] - at('U1')[1] - 6]
	];
};

const skirtRules = (given: Numbers): readonly Rule[] => {
	const skirt = handSkirt(given, handFrontBodice(given).front.lengths['waist'] ?? NaN);
	if (!skirt) return [['waist hip', -1]];
	return [['waistToHip hip', (skirt.lengths['sideFoot'] ?? NaN) - 2]];
};

/** The pairs of measurements at odds: those of the first draft that a body cannot have. */
export const handOdds = (given: Numbers): readonly string[] => {
	const blocks = handFront(given).odds;
	if (blocks.length > 0) return blocks;
	for (const rules of [backTopRules, frontRules, backRules, skirtRules]) {
		const odds = broken(rules(given));
		if (odds.length > 0) return odds;
	}
	return [];
};
