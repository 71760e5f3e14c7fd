/**
 * The back of the demo body as a person works it by hand from the rules (common practice, no source):
 * half of 38.4 is 19.2, and 3 are 22.2; a quarter of 96 and of 4 is 25; and so on. Millimetres.
 * The handles are the method's corner rule, worked in tests/reference/back-block.ts.
 */
type At = readonly [across: number, down: number];

/** How one step is done: a point, the two ends of a line, or a curve's handles. */
export type Answer =
	| { readonly point: At; readonly sum?: string; readonly from?: string; readonly go?: string }
	| { readonly end: At; readonly sum: string }
	| { readonly ends: readonly [string, string] }
	| { readonly handles: readonly At[] };

/** The steps of each lesson of the back, with Heron's numbers. */
export const HERON_BACK: Readonly<Record<string, Readonly<Record<string, Answer>>>> = {
	'40-back-levels': {
		A: { point: [0, 222], sum: '38.4/2+3', go: 'down' },
		W: { point: [0, 425], sum: '42.5', go: 'down' },
		H: { point: [0, 630], sum: '20.5', from: 'W', go: 'down' },
		armholeLevel: { end: [250, 222], sum: '(96+4)/4' },
		waistLevel: { end: [205, 425], sum: '78/4+1' },
		hipLevel: { end: [265, 630], sum: '102/4+4/4' }
	},
	'41-back-neck-and-shoulder': {
		N: { point: [71.7, 0], sum: '37/6+1', go: 'across' },
		C: { point: [0, 25], sum: '2,5', go: 'down' },
		centre: { ends: ['C', 'H'] },
		K: { point: [192, 0], sum: '38.4/2', go: 'across' },
		S: { point: [192, 30], sum: '3', from: 'K', go: 'down' },
		shoulder: { ends: ['N', 'S'] },
		neck: {
			handles: [
				[36.1, 25],
				[68.2, 13.8]
			]
		}
	},
	'42-back-armhole': {
		Q: { point: [192, 222] },
		P: { point: [192, 126], sum: '19.2/2', from: 'S', go: 'down' },
		M: { point: [182, 126], sum: '1', from: 'P', go: 'in' },
		U: { point: [250, 222], sum: '25', from: 'A', go: 'across' },
		armhole: {
			handles: [
				[186.5, 52.2],
				[182, 95.1],
				[182, 179],
				[212.4, 222]
			]
		}
	},
	'43-back-side-and-hip': {
		V: { point: [205, 425], sum: '20.5', from: 'W', go: 'across' },
		J: { point: [265, 630], sum: '26.5', from: 'H', go: 'across' },
		side: { ends: ['U', 'V'] },
		hip: {
			handles: [
				[225, 493.3],
				[265, 558.8]
			]
		},
		hem: { ends: ['H', 'J'] }
	}
};
