import type { Caution } from '#shared/garment.ts';

/**
 * What is said to whoever cuts and sews. The rules of the room, of the cloth's maker and of the law come before
 * anything said here. Standards named: EN 14682 (cords and drawstrings on children's clothing), EN 14878
 * (burning behaviour of children's nightwear), 16 CFR 1615 and 1616 (children's sleepwear, United States).
 */
const CAUTION_WORDS: Readonly<Record<Caution, string>> = {
	tools: 'Scissors, blades, pins and needles cut and prick. Follow the rules of the room where you work.',
	iron: 'A hot iron burns skin and cloth. Try it on a scrap first, and stand it up when you let go of it.',
	wash: 'Cloth that will be washed is washed before it is cut, since it shrinks.',
	toile: 'Sew a new draft in cheap cloth first. No rule knows how you stand.',
	children:
		'For a child: cords and drawstrings can catch (EN 14682), and nightwear can burn (EN 14878; 16 CFR 1615 and 1616). The local rules come first.'
};

/** The words of some cautions, in their order. */
export const cautionWords = (cautions: readonly Caution[]): readonly string[] =>
	cautions.map((caution) => CAUTION_WORDS[caution]);
