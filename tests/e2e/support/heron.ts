import type { Compass } from '#shared/method.ts';

/**
 * The back of the demo body as a person works it by hand from the rules (common practice, no source):
 * half of 38.4 is 19.2, and 3 are 22.2; a quarter of 96 and of 8 is 26; and so on. Millimetres.
 * The handles are the method's corner rule, worked in tests/reference/back-block.ts.
 */
type At = readonly [across: number, down: number];

/** How one step is done: a point, the two ends of a line, or a curve's handles. */
export type Answer =
	| { readonly point: At; readonly sum?: string; readonly from?: string; readonly go?: Compass }
	| { readonly end: At; readonly sum: string }
	| { readonly ends: readonly [string, string] }
	| { readonly handles: readonly At[] };

/** The steps of each lesson of the back, with Heron's numbers. */
export const HERON_BACK: Readonly<Record<string, Readonly<Record<string, Answer>>>> = {
	'40-back-levels': {
		A: { point: [0, 222], sum: '38.4/2+3', go: 'down' },
		W: { point: [0, 425], sum: '42.5', go: 'down' },
		H: { point: [0, 630], sum: '20.5', from: 'W', go: 'down' },
		armholeLevel: { end: [260, 222], sum: '(96+8)/4' },
		waistLevel: { end: [205, 425], sum: '78/4+1' },
		hipLevel: { end: [270, 630], sum: '102/4+6/4' }
	},
	'41-back-neck-and-shoulder': {
		N: { point: [71.7, 0], sum: '37/6+1', go: 'across' },
		C: { point: [0, 25], sum: '2,5', go: 'down' },
		centre: { ends: ['C', 'H'] },
		K: { point: [192, 0], sum: '38.4/2', go: 'across' },
		S: { point: [192, 40], sum: '4', from: 'K', go: 'down' },
		shoulder: { ends: ['N', 'S'] },
		neck: {
			handles: [
				[35, 25],
				[67.1, 13.8]
			]
		}
	},
	'42-back-armhole': {
		Q: { point: [192, 222] },
		P: { point: [192, 131], sum: '18.2/2', from: 'S', go: 'down' },
		M: { point: [182, 131], sum: '1', from: 'P', go: 'in' },
		U: { point: [260, 222], sum: '26', from: 'A', go: 'across' },
		armhole: {
			handles: [
				[186.5, 56.6],
				[182, 97.4],
				[182, 181.3],
				[216.9, 222]
			]
		}
	},
	'43-back-side-and-hip': {
		W1: { point: [205, 425], sum: '20.5', from: 'W', go: 'across' },
		W2: { point: [260, 425] },
		// A third of 5.5.
		V: { point: [241.7, 425], sum: '5.5/3', from: 'W2', go: 'in' },
		J: { point: [270, 630], sum: '27', from: 'H', go: 'across' },
		side: { ends: ['U', 'V'] },
		hip: {
			handles: [
				[251.1, 493.3],
				[270, 561]
			]
		},
		hem: { ends: ['H', 'J'] }
	},
	'43-back-waist-dart': {
		G: { point: [96, 425], sum: '38.4/4', from: 'W', go: 'across' },
		// Half of the two thirds that are left of 5.5.
		G1: { point: [77.7, 425], sum: '5.5/3', from: 'G', go: 'in' },
		G2: { point: [114.3, 425], sum: '5.5/3', from: 'G', go: 'across' },
		G3: { point: [96, 242], sum: '42.5-22.2-2', from: 'G', go: 'up' },
		G4: { point: [96, 561.7], sum: '20.5*2/3', from: 'G', go: 'down' }
	}
};
