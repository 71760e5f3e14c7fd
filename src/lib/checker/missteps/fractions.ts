import { LOWERED } from './priors.ts';

/** A share that rules and mistaken rules take of a length, with its name in notes and in sentences. */
interface Fraction {
	readonly name: string;
	readonly share: number;
	readonly of: string;
	readonly alone: string;
}

const fraction = (name: string, share: number, of: string, alone: string): Fraction => ({
	name,
	share,
	of,
	alone
});

/** Every share that a learner may take for another: those that rules of drafting have. */
export const FRACTIONS: readonly Fraction[] = [
	fraction('whole', 1, 'the whole of', 'the whole'),
	fraction('half', 1 / 2, 'half of', 'a half'),
	fraction('third', 1 / 3, 'a third of', 'a third'),
	fraction('quarter', 1 / 4, 'a quarter of', 'a quarter'),
	fraction('sixth', 1 / 6, 'a sixth of', 'a sixth')
];

const nearly = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;

/** The share of this size (its sign left out), or one that is not named. */
export const fractionOf = (share: number): Fraction =>
	FRACTIONS.find((each) => nearly(each.share, Math.abs(share))) ??
	fraction('part', Math.abs(share), 'a part of', 'another part');

/** How much less common this share is for that one than half for quarter. */
export const fractionWeight = (wrong: Fraction, right: Fraction): number => {
	const ratio = wrong.share / right.share;
	const folded = nearly(ratio, 2) || nearly(ratio, 1 / 2) || nearly(wrong.share, 1);
	return (folded ? 1 : LOWERED.oddFraction) * (nearly(right.share, 1) ? LOWERED.unlikelyFraction : 1);
};
