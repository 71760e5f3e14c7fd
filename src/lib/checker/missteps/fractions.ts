import type { Share } from '#shared/speech/en/missteps.ts';
import { LOWERED } from './priors.ts';

/** A share that rules and mistaken rules take of a length, with its name. */
interface Fraction {
	readonly name: Share;
	readonly share: number;
}

/** Every share that a learner may take for another: those that rules of drafting have. */
export const FRACTIONS: readonly Fraction[] = [
	{ name: 'whole', share: 1 },
	{ name: 'half', share: 1 / 2 },
	{ name: 'third', share: 1 / 3 },
	{ name: 'quarter', share: 1 / 4 },
	{ name: 'sixth', share: 1 / 6 }
];

/** Shares that few rules have: a guess at the rule, or a tape folded once too often. */
export const RARE_FRACTIONS: readonly Fraction[] = [
	{ name: 'fifth', share: 1 / 5 },
	{ name: 'eighth', share: 1 / 8 },
	{ name: 'twelfth', share: 1 / 12 },
	{ name: 'twoThirds', share: 2 / 3 },
	{ name: 'threeQuarters', share: 3 / 4 },
	{ name: 'twice', share: 2 }
];

/** Shares closer than this are one: rounding moves them by less. */
const SAME_SHARE = 1e-9;

/** Whether two shares, or two ratios of them, are one. */
export const isSameShare = (a: number, b: number): boolean => Math.abs(a - b) < SAME_SHARE;

/** The share of this size (its sign left out), or one that is not named. */
export const fractionOf = (share: number): Fraction =>
	[...FRACTIONS, ...RARE_FRACTIONS].find((each) => isSameShare(each.share, Math.abs(share))) ?? {
		name: 'part',
		share: Math.abs(share)
	};

/** How much less common this share is for that one than half for quarter. */
export const fractionWeight = (wrong: Fraction, right: Fraction): number => {
	const ratio = wrong.share / right.share;
	const folded = isSameShare(ratio, 2) || isSameShare(ratio, 1 / 2) || isSameShare(wrong.share, 1);
	const unfolded = RARE_FRACTIONS.includes(wrong) ? LOWERED.rareFraction : LOWERED.oddFraction;
	return (folded ? 1 : unfolded) * (isSameShare(right.share, 1) ? LOWERED.unlikelyFraction : 1);
};
