import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody } from '#shared/body.ts';
import { mm } from '#shared/units.ts';
import { makePattern, patternWarningWords, type Choices, type Pattern } from '#garment/pattern.ts';
import { readGarment } from '#garment/read-garment.ts';
import { boundsOf, pathEnd, pathStart } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';
import { BODY, FIGURE } from '../drafting/small-method.ts';
import { garmentOf, garments, madeFor } from './garment-files.ts';
import { findSmall, SMALL_GARMENT } from './small-garment.ts';

const SMALL = readGarment(SMALL_GARMENT, 'garment.yaml', findSmall);
const choices = (more: Partial<Choices>): Choices => ({ allowances: {}, edges: {}, ...more });
const pieceOf = ({ pieces }: Pattern, key: string) => {
	const found = pieces.find((piece) => piece.key === key);
	if (!found) throw new Error(`there is no piece "${key}"`);
	return found;
};
const allowancesOf = (pattern: Pattern, key: string): Readonly<Record<string, number>> =>
	Object.fromEntries(pieceOf(pattern, key).edges.map(({ name, allowance }) => [name, allowance]));

// The bust of 96 cm gives a waist of 240 mm and a hem of 290; the back of 42 cm is the length.
describe('a small skirt', () => {
	const pattern = madeFor(SMALL, BODY);

	it('has edges in turn, by their names, each beginning where the one before ends', () => {
		const { edges } = pieceOf(pattern, 'front');
		expect(edges.map(({ name, length }) => `${name} ${length.toFixed(3)}`)).toEqual([
			'waist 240.000',
			`side ${Math.hypot(50, 420).toFixed(3)}`,
			'hem 290.000',
			'centre 420.000'
		]);
		for (const [i, { path }] of edges.entries()) {
			const before = edges.at(i - 1);
			expect(before && distance(pathEnd(before.path), pathStart(path))).toBe(0);
		}
	});

	it('is cut with the allowance of each edge: its own formula, its kind, none on the fold', () => {
		expect(allowancesOf(pattern, 'front')).toEqual({ waist: 10, side: 15, hem: 30, centre: 0 });
		expect(allowancesOf(pattern, 'back')).toEqual({ waist: 10, side: 10, hem: 30, centre: 0 });
		const { left, top, bottom } = boundsOf([pieceOf(pattern, 'back').cutting.outline]);
		expect([left, top, bottom]).toEqual([0, -10, 450]);
	});

	it('follows chosen allowances, and those of single edges before all others', () => {
		const seamAllowance = mm(20);
		const chosen = madeFor(
			SMALL,
			BODY,
			choices({ allowances: { seamAllowance }, edges: { 'front.waist': mm(3), 'back.hem': mm(55) } })
		);
		expect(allowancesOf(chosen, 'front')).toEqual({ waist: 3, side: 30, hem: 30, centre: 0 });
		expect(allowancesOf(chosen, 'back')).toEqual({ waist: 20, side: 20, hem: 55, centre: 0 });
	});

	it('gives a fold no allowance, even where one was chosen', () => {
		const chosen = madeFor(SMALL, BODY, choices({ edges: { 'front.centre': mm(9) } }));
		expect(allowancesOf(chosen, 'front')['centre']).toBe(0);
	});

	it('follows the allowances of its draft', () => {
		const chosen = madeFor(SMALL, BODY, choices({ allowances: { flare: mm(0) } }));
		expect(pieceOf(chosen, 'front').edges.map(({ length }) => length)).toEqual([240, 420, 240, 420]);
	});

	it('reports its numbers, and warns of one out of bounds with the reason', () => {
		expect(pattern.numbers).toMatchObject([{ name: 'round', kind: 'length', value: 1160, within: true }]);
		expect(pattern.warnings).toEqual([]);
		const wide = madeFor(SMALL, BODY, choices({ allowances: { flare: mm(100) } }));
		expect(wide.numbers[0]).toMatchObject({ value: 1360, within: false });
		expect(wide.warnings.map((each) => patternWarningWords(each, english)).at(-1)).toBe(
			'The hem all round is 136 cm: more is too wide to walk in'
		);
	});

	it('looks at both runs into the fold of each piece', () => {
		expect(
			pattern.runs.map(({ run, within }) => `${english.words.garments.run({ run })} ${String(within)}`)
		).toEqual([
			'The front: hem at the fold true',
			'The front: waist at the fold true',
			'The back: hem at the fold true',
			'The back: waist at the fold true'
		]);
	});

	it('is refused with the reason of its draft', () => {
		const work = makePattern(SMALL, readBody({ name: 'Stilt', ...FIGURE, bust: 60, backLength: 51 }));
		expect(work).toMatchObject({
			kind: 'refused',
			refusals: [{ name: 'tooNarrow', because: 'so long a skirt is too narrow', measured: 90 }]
		});
	});

	it('is not made where a measurement is missing, and says which', () => {
		const { backLength: _, ...rest } = FIGURE;
		const bare = readBody({ name: 'Bare', ...rest });
		expect(refusalOf(() => makePattern(SMALL, bare))).toContain('the back length of Bare is missing');
	});
});

describe('a planted fault of truing', () => {
	const file = structuredClone(SMALL_GARMENT) as { seams: { second: string[] }[] };
	const [side] = file.seams;
	if (side) side.second = ['back.centre'];
	const pattern = madeFor(readGarment(file, 'garment.yaml', findSmall), BODY);

	it('is reported and warned of', () => {
		// The side is root (50 squared + 420 squared) long, the centre 420.
		const over = Math.hypot(50, 420) - 420;
		expect(pattern.seams[0]?.difference).toBeCloseTo(-over, 9);
		expect(pattern.seams[0]?.within).toBe(false);
		expect(pattern.warnings.map((each) => patternWarningWords(each, english))).toEqual([
			`The side: the second is ${(over / 10).toFixed(1)} cm too short`
		]);
	});
});

describe.each(garments())('$name', (garment) => {
	const made = DEMO_BODIES.flatMap(({ id, body }) => {
		const work = makePattern(garment, body);
		return work.kind === 'made' ? [{ id, pattern: work.pattern }] : [];
	});

	it('is made for at least half of the demo bodies', () => {
		expect(made.length).toBeGreaterThanOrEqual(DEMO_BODIES.length / 2);
	});

	it.each(made)('keeps the names of edges for $id, and every seam pair matches', ({ pattern }) => {
		for (const [i, rule] of garment.pieces.entries()) {
			const piece = pattern.pieces[i];
			const names = piece?.edges.map(({ name }) => name) ?? [];
			// A body may lack an edge (a dart that it does not need), and never gains one.
			expect(rule.edges.map(({ name }) => name).filter((name) => names.includes(name))).toEqual(names);
			expect(piece?.cutting.edges.map(({ name }) => name)).toEqual(names);
		}
		for (const { label, firstLength, secondLength, ease, tolerance, within } of pattern.seams) {
			expect(firstLength, label).toBeGreaterThan(0);
			expect(Math.abs(secondLength - firstLength - ease), label).toBeLessThanOrEqual(tolerance);
			expect(within, label).toBe(true);
		}
		for (const { run, corner, tolerance } of pattern.runs) {
			expect(Math.abs(corner), english.words.garments.run({ run })).toBeLessThanOrEqual(tolerance);
		}
	});

	it.each(made)(
		'has outlines that close, with as much round them as each edge says, for $id',
		({ pattern }) => {
			for (const { key, edges, outline } of pattern.pieces) {
				expect(distance(pathEnd(outline), pathStart(outline)), key).toBeLessThan(1e-6);
				const sum = edges.reduce((all, { length }) => all + length, 0);
				expect(sum, key).toBeGreaterThan(0);
				for (const { kind, allowance, name } of edges) {
					if (kind === 'fold') expect(allowance, `${key}.${name}`).toBe(0);
					else expect(allowance, `${key}.${name}`).toBeGreaterThanOrEqual(0);
				}
			}
		}
	);
});

describe('the dress', () => {
	it('has the seam table of its method: the pairs, and how closely each must match', () => {
		const within = Object.fromEntries(
			garmentOf('course-dress').seams.map(({ name, within: most }) => [name, most])
		);
		expect(within).toMatchObject({
			shoulder: 1,
			side: 1,
			frontNeckline: 0.5,
			backNeckline: 0.5,
			frontWaist: 1,
			backWaist: 1
		});
	});
});
