import type { Typed } from '#shared/placement.ts';

/**
 * Slips as a teacher tells them, each worked by hand for a demo body, and what Square Across says of them.
 * Their block has an ease of 4 at bust and hip, shoulders that drop by 3 and 4, and the dress an underarm 1.5 out and down.
 * It is a test (told-slips.test.ts) and a help page: what a misstep is, told by examples.
 */
export interface ToldSlip {
	readonly tale: string;
	readonly body: 'Heron' | 'Wren' | 'Plover' | 'Lark' | 'Gannet' | 'Eider';
	readonly panel: 'back' | 'front' | 'dress front' | 'dress back';
	readonly step: string;
	/** Where the point was put, in centimetres across and down. */
	readonly at: readonly [across: number, down: number];
	/** A sum that was typed, from a point and a way; then the place is where it leads. */
	readonly typed?: Omit<Extract<Typed, { form: 'distance' }>, 'form'>;
	/** The notes of the diagnosis, the likeliest first: none for no guess, one where it is certain, several for "either ... or ...". */
	readonly notes: readonly string[];
}

type Told = readonly [tale: string, step: string, across: number, down: number, ...notes: readonly string[]];

const slips = (
	body: ToldSlip['body'],
	panel: ToldSlip['panel'],
	told: readonly Told[]
): readonly ToldSlip[] =>
	told.map(([tale, step, across, down, ...notes]) => ({
		tale,
		body,
		panel,
		step,
		at: [across, down],
		notes
	}));

/** Heron: bust 96, waist 78, hip 102, neck 37, shoulder width 38.4, back length 42.5, waist to hip 20.5. */
const HERON_BACK = slips('Heron', 'back', [
	// Right: A 22.2 down.
	['The whole shoulder width and 3: 41.4.', 'A', 0, 41.4, 'fraction:whole-for-half'],
	['Half the shoulder width, and the drop forgotten: 19.2.', 'A', 0, 19.2, 'allowance:left-out:armholeDrop'],
	['The drop added twice: 19.2 + 3 + 3.', 'A', 0, 25.2, 'allowance:twice:armholeDrop'],
	['The drop taken off: 19.2 - 3.', 'A', 0, 16.2, 'allowance:subtracted:armholeDrop'],
	['22.2 laid off across the top, and not down.', 'A', 22.2, 0, 'direction:crossed'],
	['22.2 laid off upward.', 'A', 0, -22.2, 'direction:opposite'],
	['The wrong ten of the tape: 32.2 for 22.2.', 'A', 0, 32.2, 'tape:10cm'],
	['22.2 looked for on the inch side of the tape: 56.4 cm.', 'A', 0, 56.4, 'unit:inches-for-centimetres'],
	[
		'A quarter of the shoulder width and 3 is 12.6; half the bust span and 3 is 12.75.',
		'A',
		0,
		12.6,
		'fraction:quarter-for-half'
	],
	// Right: W 42.5 down, H 20.5 below it.
	['The front length for the back length: 45.5.', 'W', 0, 45.5, 'measurement:frontLength-for-backLength'],
	['42.5 written down as 24.5.', 'W', 0, 24.5, 'digits:swapped'],
	['20.5 down from the corner, and not from the waist.', 'H', 0, 20.5, 'start:O-for-W'],
	['20.5 down from the armhole level: 22.2 + 20.5.', 'H', 0, 42.7, 'start:A-for-W'],
	['20.5 up from the waist: 42.5 - 20.5.', 'H', 0, 22, 'direction:opposite'],
	// Right: N 6.17 + 1 = 7.17 across, C 2.5 down.
	['Half the neck and 1: 19.5.', 'N', 19.5, 0, 'fraction:half-for-sixth'],
	['A quarter of the neck and 1: 10.25.', 'N', 10.25, 0, 'fraction:quarter-for-sixth'],
	['A third of the neck and 1: 13.33.', 'N', 13.33, 0, 'fraction:third-for-sixth'],
	['A sixth of the neck and nothing more: 6.17.', 'N', 6.17, 0, 'allowance:left-out:neckAllow'],
	['The neck width laid off down the centre.', 'N', 0, 7.17, 'direction:crossed'],
	['The neck depth laid off across.', 'C', 2.5, 0, 'direction:crossed'],
	['The neck depth begun at the armhole level: 22.2 + 2.5.', 'C', 0, 24.7, 'start:A-for-O'],
	['25 for 2.5.', 'C', 0, 25, 'decimal'],
	// Right: K 19.2 across, S 3 below it, Q on the armhole level, P half way, M 1 in.
	['The whole shoulder width, as though there were no fold.', 'K', 38.4, 0, 'fraction:whole-for-half'],
	['Half the shoulder width, but on the armhole level.', 'K', 19.2, 22.2, 'start:A-for-O'],
	['The shoulder drop begun at the corner.', 'S', 0, 3, 'start:O-for-K'],
	['The front shoulder drop: 4 for 3.', 'S', 19.2, 4, 'allowance:shoulderDropFront-for-shoulderDropBack'],
	['No shoulder drop: the shoulder point left at K.', 'S', 19.2, 0, 'allowance:left-out:shoulderDropBack'],
	['Squared down from the side neck.', 'Q', 7.17, 22.2, 'start:N-for-K'],
	['Squared across from the waist.', 'Q', 19.2, 42.5, 'start:W-for-A'],
	['A third of the way from S to Q: 3 + 6.4.', 'P', 19.2, 9.4, 'fraction:third-for-half'],
	['Half way from K, and not from S: 11.1.', 'P', 19.2, 11.1, 'start:K-for-S'],
	['The hollow marked outward.', 'M', 20.2, 12.6, 'direction:opposite'],
	['The hollow marked downward.', 'M', 19.2, 13.6, 'direction:crossed'],
	[
		'No hollow: M put on P. A hollow of 0.1 for 1 lies a pencil line beside it.',
		'M',
		19.2,
		12.6,
		'allowance:left-out:hollowBack'
	],
	['The front hollow: 1.5 for 1.', 'M', 17.7, 12.6, 'allowance:hollowFront-for-hollowBack'],
	// Right: U 24 + 1 = 25 across from A.
	['Half the bust and a quarter of the ease: 48 + 1.', 'U', 49, 22.2, 'fraction:half-for-quarter'],
	['Half of both: (96 + 4) / 2.', 'U', 50, 22.2, 'fraction:half-for-quarter'],
	['No ease: 24.', 'U', 24, 22.2, 'allowance:left-out:bustEase'],
	[
		'A quarter of the bust and all of the ease: 24 + 4.',
		'U',
		28,
		22.2,
		'fraction:whole-for-quarter:bustEase'
	],
	['The ease taken off: 24 - 1.', 'U', 23, 22.2, 'allowance:subtracted:bustEase'],
	['The waist for the bust: 19.5 + 1.', 'U', 20.5, 22.2, 'measurement:waist-for-bust'],
	['The hip for the bust: 25.5 + 1.', 'U', 26.5, 22.2, 'measurement:hip-for-bust'],
	['A third of the bust and 1: 33. A third of both is 33.3.', 'U', 33, 22.2, 'fraction:third-for-quarter'],
	['25 across, but from the waist level.', 'U', 25, 42.5, 'start:W-for-A'],
	['69 for 96: 17.25 + 1.', 'U', 18.25, 22.2, 'digits:swapped'],
	['52 for 25.', 'U', 52, 22.2, 'digits:swapped'],
	['2.5 for 25.', 'U', 2.5, 22.2, 'decimal'],
	['25 across and then put below A: 22.2 + 25.', 'U', 0, 47.2, 'direction:crossed'],
	[
		'26 across: the ease added twice, or half of it taken: 24 + 2.',
		'U',
		26,
		22.2,
		'fraction:half-for-quarter:bustEase',
		'allowance:twice:bustEase'
	],
	// Right: W1 19.5 + 1 = 20.5 across from W, W2 25 across, V a third of 4.5 in from there, J 25.5 + 1 = 26.5 across from H.
	[
		'The bust for the waist: 24 + 1 is 25; so is 20.5 with its digits swapped.',
		'W1',
		25,
		42.5,
		'measurement:bust-for-waist'
	],
	['The hip for the waist: 25.5 + 1.', 'W1', 26.5, 42.5, 'measurement:hip-for-waist'],
	['What the waist needs put on the hip level.', 'W1', 20.5, 63, 'start:H-for-W'],
	[
		'The whole difference taken at the side, and nothing left for a dart: 4.5.',
		'V',
		20.5,
		42.5,
		'fraction:whole-for-third'
	],
	// Right: G 9.6 across, G1 and G2 half of 3 from it, G3 18.3 above it and G4 13.67 below.
	['Half the shoulder width for a quarter of it: 19.2.', 'G', 19.2, 42.5, 'fraction:half-for-quarter'],
	['The whole width of the dart on one side of its middle: 3.', 'G1', 6.6, 42.5, 'fraction:whole-for-half'],
	['A third of 20.5 down, and not two thirds: 6.83.', 'G4', 9.6, 49.33, 'fraction:third-for-twoThirds'],
	['Half the hip and 1: 52.', 'J', 52, 63, 'fraction:half-for-quarter'],
	['The waist for the hip: 19.5 + 1.', 'J', 20.5, 63, 'measurement:waist-for-hip'],
	// No rule leads there.
	['The right place missed by half a centimetre, for no reason to be seen.', 'N', 7.17, 0.5],
	['A point put down anywhere.', 'U', 14, 9],
	['The right place missed by 3 mm: a careless hand, and no wrong rule.', 'K', 19.5, 0]
]);

/** Heron's front: front length 45.5, bust height 26.5, bust span 19.5; the back's shoulder is 12.402 long. */
const HERON_FRONT = slips('Heron', 'front', [
	['The back length for the front length: 42.5.', 'W', 0, 42.5, 'measurement:backLength-for-frontLength'],
	['The front length for the bust height: 45.5.', 'B', 0, 45.5, 'measurement:frontLength-for-bustHeight'],
	[
		'The neck width for the neck depth, without the 1: 7.17.',
		'C',
		0,
		7.17,
		'allowance:left-out:frontNeckDrop'
	],
	['The back neck depth, as on the back: 2.5.', 'C', 0, 2.5, 'panel:back'],
	// Right: S 11.739 across from N (7.167), 4 down.
	['The shoulder laid straight across its level: 7.17 + 12.4.', 'S', 19.57, 4, 'slope'],
	['The shoulder laid straight across from N.', 'S', 19.57, 0, 'slope'],
	['The shoulder swung toward the centre: 7.17 - 11.74.', 'S', -4.57, 4, 'direction:opposite'],
	[
		'The back shoulder drop: 12.03 across from N, 3 down.',
		'S',
		19.2,
		3,
		'allowance:shoulderDropBack-for-shoulderDropFront'
	],
	['The whole bust span: 19.5.', 'T', 19.5, 26.5, 'fraction:whole-for-half'],
	[
		'Half the shoulder width for half the bust span.',
		'T',
		19.2,
		26.5,
		'measurement:shoulderWidth-for-bustSpan'
	],
	['Half the bust span, but on the armhole level.', 'T', 9.75, 22.2, 'start:A-for-B'],
	// U (25, 22.2), V (23.5, 45.5): the side runs 23.35, for every cm 0.06 in and 1 down. W2 lies straight below U.
	['The dart measured straight down from U.', 'D', 25, 28.2, 'slope'],
	['The dart measured up from V: 45.5 - 5.99.', 'D', 23.89, 39.51, 'start:V-for-U'],
	['The whole intake, 3, for half of it, up from D.', 'D1', 24.8, 25.2, 'fraction:whole-for-half'],
	// Right: F 26.99 across, 42.4 down; L 25.44 across, 26.7 down.
	['The dart not folded: F written beside V.', 'F', 23.5, 45.5, 'unmoved'],
	['The dart folded half shut.', 'F', 25.32, 44.04, 'fraction:half-for-whole'],
	['The side not ruled anew: L left on D1.', 'L', 24.71, 26.69, 'unmoved:D1'],
	[
		'The sewn tip twice as far from T: 5, and 2.5 with its digits swapped is 5.2.',
		'Y',
		14.72,
		27.06,
		'allowance:twice:dartShort'
	]
]);

/**
 * Heron's course dress. Front: the bust point T lies at (9.75, 26.5). G2 lies 13.65 from it and is turned by 2.0° onto the line
 * through G1; E2 lies 16.65 from it and is turned by 10.1° onto D3. Back: the side U1–V0 is 20.82 long and swings about U1 (26.5, 23.7)
 * until the waist curve is as long as the front's, 29.83.
 */
const HERON_DRESS = [
	...slips('Heron', 'dress front', [
		// Right: G3 15.09 across, 13.93 down.
		['The panel not turned at all: G3 written beside G2.', 'G3', 15.53, 14.13, 'unmoved'],
		['Turned by 2.0° the other way, so that the dart gapes.', 'G3', 15.96, 14.34, 'direction:opposite'],
		[
			'G2 drawn straight onto G1, which lies 1.0 further from T: paper does not stretch.',
			'G3',
			15.52,
			12.93,
			'straight-onto'
		],
		['Turned by 10.1°, the angle of the side dart.', 'G3', 13.27, 13.31, 'turn:E3-for-G3'],
		// Right: E3 26.36 across, 27.61 down.
		['The panel left open: E3 written beside E2.', 'E3', 25.91, 30.51, 'unmoved'],
		['Half of the dart closed, 5° of 10.1°.', 'E3', 26.2, 29.07, 'fraction:half-for-whole'],
		['Turned by 10.1° the other way.', 'E3', 24.96, 33.28, 'direction:opposite'],
		['Turned by 2.0°, the angle of the armhole dart.', 'E3', 26.04, 29.94, 'turn:G3-for-E3'],
		['Turned by both, 12.1°: the armhole dart was closed already.', 'E3', 26.39, 27.03, 'turn:G3-and-E3']
	]),
	...slips('Heron', 'dress back', [
		// Right: V1 29.78 across, 44.26 down.
		['The side not swung: V1 written beside V0.', 'V1', 25.5, 44.5, 'unmoved'],
		['Swung inward by as much as it should swing outward.', 'V1', 21.26, 43.85, 'direction:opposite'],
		['Until the waist is as long as the front’s armhole, 26.99.', 'V1', 26.99, 44.52, 'length:front.armhole'],
		['Until it is as long as the side seam, 20.82.', 'V1', 20.67, 43.69, 'length:sideStart']
	])
];

const OTHERS = [
	...slips('Wren', 'back', [['Half the bust and 1: 40 + 1.', 'U', 41, 20.3, 'fraction:half-for-quarter']]),
	...slips('Plover', 'back', [
		['The waist for the hip: 18 + 1.', 'J', 19, 63.5, 'measurement:waist-for-hip'],
		['Half the hip and 1: 58 + 1.', 'J', 59, 63.5, 'fraction:half-for-quarter']
	]),
	...slips('Gannet', 'back', [
		['A quarter of the neck and 1: 10.375 + 1.', 'N', 11.375, 0, 'fraction:quarter-for-sixth']
	]),
	...slips('Eider', 'back', [
		[
			'All of the ease, 6, and a quarter of the bust: 31 + 6. So is 142 for 124: 35.5 + 1.5.',
			'U',
			37,
			23.1,
			'fraction:whole-for-quarter:bustEase'
		],
		['No ease: 31.', 'U', 31, 23.1, 'allowance:left-out:bustEase']
	]),
	// Lark is written in inches: 37 3/4 + 4/2.54 = 39.32, a quarter of it 9.83 inches.
	...slips('Lark', 'back', [
		['9.83 inches laid off in centimetres.', 'U', 9.83, 22.84, 'unit:centimetres-for-inches']
	])
];

type ToldSum = readonly [
	tale: string,
	step: string,
	sum: string,
	from: string,
	go: 'up' | 'down' | 'across' | 'in',
	...notes: readonly string[]
];

const sums = (
	body: ToldSlip['body'],
	panel: ToldSlip['panel'],
	told: readonly ToldSum[]
): readonly ToldSlip[] =>
	told.map(([tale, step, sum, from, go, ...notes]) => ({
		tale,
		body,
		panel,
		step,
		at: [0, 0],
		typed: { sum, from, go, unit: 'cm' },
		notes
	}));

/** What was typed settles the matter. */
const TYPED = sums('Heron', 'back', [
	['Half for quarter.', 'U', '96/2+1', 'A', 'across', 'fraction:half-for-quarter'],
	['Half for quarter, worked in the head.', 'U', '48+1', 'A', 'across', 'fraction:half-for-quarter'],
	['Half of both, in brackets.', 'U', '(96+4)/2', 'A', 'across', 'fraction:half-for-quarter'],
	['Half of both, the bracket worked in the head.', 'U', '100/2', 'A', 'across', 'fraction:half-for-quarter'],
	['The ease twice, seen from its sum.', 'U', '96/4+1+1', 'A', 'across', 'allowance:twice:bustEase'],
	['Half the ease, seen from its sum.', 'U', '96/4+4/2', 'A', 'across', 'fraction:half-for-quarter:bustEase'],
	['The waist, with its ease.', 'U', '78/4+1', 'A', 'across', 'measurement:waist-for-bust'],
	['Two digits swapped before the sum.', 'U', '69/4+1', 'A', 'across', 'digits:swapped'],
	['The right sum from the waist level.', 'U', '96/4+1', 'W', 'across', 'start:W-for-A'],
	['The right sum, downward.', 'U', '(96+4)/4', 'A', 'down', 'direction:crossed'],
	[
		'A quarter of the shoulder width, which a place could not tell from the bust span.',
		'A',
		'38.4/4+3',
		'O',
		'down',
		'fraction:quarter-for-half'
	],
	['Half the bust span, likewise.', 'A', '19.5/2+3', 'O', 'down', 'measurement:bustSpan-for-shoulderWidth'],
	['The rule of the waist, typed for the underarm.', 'U', '78/4+4/4', 'W', 'across', 'point:W1-for-U'],
	['Two slips at once.', 'U', '96/2+1', 'W', 'across', 'fraction:half-for-quarter+start:W-for-A'],
	['A sum of no known rule.', 'U', '96/5+17', 'A', 'across']
]);

export const TOLD_SLIPS: readonly ToldSlip[] = [
	...HERON_BACK,
	...HERON_FRONT,
	...HERON_DRESS,
	...OTHERS,
	...TYPED
];
