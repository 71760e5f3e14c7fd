import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { readGarment } from '#garment/read-garment.ts';
import { garments } from './garment-files.ts';
import { findSmall, SMALL_GARMENT, type Written } from './small-garment.ts';

/** The small garment with something in it put elsewhere: a path of keys, and what stands there instead. */
const spoilt = (path: readonly (string | number)[], value: unknown): unknown => {
	const copy = structuredClone(SMALL_GARMENT) as Written;
	const last = path.at(-1) ?? '';
	let at = copy;
	for (const key of path.slice(0, -1)) at = at[key] as Written;
	if (value === undefined) Reflect.deleteProperty(at, last);
	else at[last] = value;
	return copy;
};

const complaint = (input: unknown): string =>
	refusalOf(() => readGarment(input, 'small/garment.yaml', findSmall));

describe('a garment file', () => {
	const garment = readGarment(SMALL_GARMENT, 'small/garment.yaml', findSmall);

	it('is read: pieces numbered in order, edges with the usual allowance of their kind', () => {
		expect(garment.pieces.map(({ key, number }) => `${number} ${key}`)).toEqual(['1 front', '2 back']);
		const [front] = garment.pieces;
		expect(front?.edges.map(({ allowance }) => allowance)).toMatchObject([
			{ kind: 'allowance', key: 'seamAllowance' },
			{ kind: 'operation', sign: '*' },
			{ kind: 'allowance', key: 'hemAllowance' },
			{ kind: 'operation', sign: '*', left: { kind: 'number', value: 0 } }
		]);
	});

	it('has the measurements and allowances of its drafts, and those of cutting', () => {
		expect(garment.measurements).toEqual(['bust', 'backLength']);
		expect(garment.allowances.map(({ key }) => key)).toEqual(
			expect.arrayContaining(['flare', 'seamAllowance', 'hemAllowance'])
		);
	});

	it('has usual values where nothing is said', () => {
		const [side, hem] = garment.seams;
		expect(side).toMatchObject({ turned: false, within: 1, notches: [0.5], ease: undefined, runs: {} });
		expect(hem).toMatchObject({ notches: [], within: 0.5 });
		expect(garment.pieces[0]).toMatchObject({ bias: false, marks: [], drills: [], darts: [], text: [] });
	});

	it.each<[what: string, path: readonly (string | number)[], value: unknown, problem: string]>([
		['an unknown method', ['uses', 'skirt'], 'smal', 'uses.skirt: there is no method "smal"'],
		[
			'an unknown draft',
			['pieces', 0, 'draft'],
			'skir',
			'piece front: there is no draft "skir" (did you mean "skirt"?)'
		],
		[
			'an unknown line',
			['pieces', 0, 'edges', 1, 'lines'],
			['sides'],
			'piece front: edge side: there is no line "sides" (did you mean "side"?)'
		],
		[
			'a point for a line',
			['pieces', 0, 'edges', 1, 'lines'],
			['L'],
			'pieces.0.edges.1.lines.0: a name here is written in small letters'
		],
		[
			'an unknown point of the grain',
			['pieces', 1, 'grain'],
			['O', 'Z'],
			'piece back: there is no point "Z"'
		],
		[
			'an unknown mark',
			['pieces', 1, 'marks'],
			[{ line: 'middle', label: 'Middle' }],
			'piece back: there is no line "middle"'
		],
		[
			'an unknown drill',
			['pieces', 1, 'drills'],
			[{ point: 'T', label: 'Tip' }],
			'piece back: there is no point "T"'
		],
		[
			'two edges of one name',
			['pieces', 0, 'edges', 1, 'name'],
			'waist',
			'piece front: two edges are called "waist"'
		],
		[
			'an allowance that no draft knows',
			['pieces', 0, 'edges', 1, 'allowance'],
			'seamAllowanc',
			'piece front: edge side: allowance: position 1 of "seamAllowanc": there is no measurement or allowance "seamAllowanc" (did you mean "seamAllowance"?)'
		],
		[
			'an allowance that is no length',
			['pieces', 0, 'edges', 1, 'allowance'],
			'2',
			'piece front: edge side: allowance: '
		],
		[
			'a seam of an unknown piece',
			['seams', 0, 'first'],
			['frnt.side'],
			'seam side: there is no piece "frnt" (did you mean "front"?)'
		],
		[
			'a seam of an unknown edge',
			['seams', 0, 'second'],
			['back.sid'],
			'seam side: back: there is no edge "sid" (did you mean "side"?)'
		],
		[
			'an edge without its piece',
			['seams', 0, 'second'],
			['side'],
			'seams.0.second.0: an edge is named with its piece, such as front.side; seen: "side"'
		],
		['a seam without a tolerance', ['seams', 0, 'within'], undefined, 'seams.0.within: '],
		[
			'a notch at a corner',
			['seams', 0, 'notches'],
			[1],
			'seams.0.notches.0: Too big: expected number to be <1; seen: 1'
		],
		[
			'an ease that names nothing',
			['seams', 0, 'ease'],
			'capEase',
			'seam side: ease: position 1 of "capEase": '
		],
		[
			'a smooth join of an unknown edge',
			['smooth'],
			[{ label: 'It', first: 'front.hem', second: 'front.hm' }],
			'smooth It: front: there is no edge "hm" (did you mean "hem"?)'
		],
		['a number that is no length', ['numbers', 0, 'formula'], 'length(skirt.side) / waist', 'number round: '],
		[
			'a line of no draft',
			['numbers', 0, 'formula'],
			'length(skirt.sid)',
			'number round: position 8 of "length(skirt.sid)": there is no line "skirt.sid" (did you mean "skirt.side"?)'
		],
		['an unknown kind of edge', ['pieces', 0, 'edges', 0, 'kind'], 'seem', 'pieces.0.edges.0.kind: '],
		['an unknown corner rule', ['pieces', 0, 'edges', 0, 'corner'], 'round', 'pieces.0.edges.0.corner: '],
		[
			'a piece of two edges',
			['pieces', 0, 'edges'],
			[{ name: 'a', kind: 'seam', lines: ['waist'] }],
			'pieces.0.edges: Too small: '
		],
		['an unknown cloth', ['pieces', 0, 'cut', 0, 'in'], 'felt', 'pieces.0.cut.0.in: '],
		['a piece that is not cut', ['pieces', 0, 'cut'], [], 'pieces.0.cut: Too small: '],
		['half a piece', ['pieces', 0, 'cut', 0, 'count'], 1.5, 'pieces.0.cut.0.count: '],
		['no order of sewing', ['order'], [], 'order: Too small: '],
		['an unknown caution', ['cautions'], ['fire'], 'cautions.0: '],
		['a word too many', ['colour'], 'red', 'garment: Unrecognized key: "colour"']
	])('with %s is refused at its place', (_, path, value, problem) => {
		expect(readGarment(SMALL_GARMENT, 'small/garment.yaml', findSmall).id).toBe('small-skirt');
		const seen = complaint(spoilt(path, value));
		expect(seen).toContain(`small/garment.yaml: ${problem}`);
	});

	it('that is no garment at all is refused', () => {
		expect(complaint('a dress')).toMatch(/^small\/garment\.yaml: garment: .*; seen: "a dress"$/);
		expect(complaint(null)).toContain('seen: null');
	});
});

describe('the garments of the lessons', () => {
	it('are read, each with an id of its own', () => {
		const ids = garments().map(({ id }) => id);
		expect(ids).toContain('course-dress');
		expect(new Set(ids).size).toBe(ids.length);
	});
});
