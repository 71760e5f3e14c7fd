import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { patternWarningWords, type Pattern } from '#garment/pattern.ts';
import type { PieceEdge } from '#garment/piece.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { crossings, selfCrossings } from '#geometry/kernel/crossings.ts';
import { pathReversed, pathSamples, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import type { Spot } from './back-block.ts';
import {
	atEnds,
	atPairsOfEnds,
	DEMO,
	randomWearers,
	strained,
	SURVEY,
	surveyWithChoices,
	type Wearer
} from './dress-bodies.ts';
import { lengthTo } from './dress-curves.ts';
import { dressFor, tangles } from './dress-pattern.ts';

interface Worn {
	readonly name: string;
	readonly pattern: Pattern;
}
interface Refused {
	readonly name: string;
	readonly odds: readonly (readonly string[])[];
}

const worked = (
	wearers: readonly Wearer[]
): { readonly made: readonly Worn[]; readonly refused: readonly Refused[] } => {
	const all = wearers.map(({ name, numbers }) => ({ name, work: dressFor(numbers) }));
	return {
		made: all.flatMap(({ name, work }) => (work.kind === 'made' ? [{ name, pattern: work.pattern }] : [])),
		refused: all.flatMap(({ name, work }) =>
			work.kind === 'refused' ? [{ name, odds: work.refusals.map((each) => each.odds) }] : []
		)
	};
};

const SETS = {
	'the invented bodies': worked(DEMO),
	'the 300 women of the survey': worked(SURVEY),
	'every allowance at both ends': worked(atEnds),
	'pairs of allowances at their ends': worked(atPairsOfEnds(17)),
	'women of the survey with other allowances': worked(surveyWithChoices(1, 31)),
	'bodies with one measurement strained': worked(strained.filter((_, i) => i % 3 === 0)),
	'random bodies': worked(randomWearers(700, 19))
};
const EACH = Object.entries(SETS).map(([what, work]) => ({ what, ...work }));

/** How many of a set are made; of sets that are drawn by chance, how many at least. */
const MADE: Readonly<Record<string, number>> = {
	'the invented bodies': 7,
	'the 300 women of the survey': 300,
	'every allowance at both ends': atEnds.length - 1
};
const MADE_AT_LEAST = 100;

const edge = (pattern: Pattern, piece: string, name: string): PieceEdge => {
	const found = pattern.pieces.find(({ key }) => key === piece)?.edges.find((each) => each.name === name);
	if (!found) throw new Error(`there is no ${piece}.${name}`);
	return found;
};

/** The length of an edge in millimetres, measured again by hand. */
const measured = (path: Path): number =>
	path.reduce((sum, segment) => {
		if (segment.kind === 'straight') return sum + distance(segment.from, segment.to);
		const spot = ({ x, y }: SheetPoint): Spot => [x, y];
		const { from, leaving, arriving, to } = segment;
		return sum + lengthTo([spot(from), spot(leaving), spot(arriving), spot(to)], 1);
	}, 0);

/** The page's table: what is sewn together, and within how many millimetres both sides are of one length. */
const TABLE = [
	['front.shoulder', 'back.shoulder', 1],
	['front.side', 'back.side', 1],
	['front.neckline', 'frontBand.outer', 0.5],
	['back.neckline', 'backBand.outer', 0.5],
	['front.waist', 'skirt.top', 1],
	['back.waist', 'skirt.top', 1],
	['front.waist', 'back.waist', 1]
] as const;

describe.each(EACH)('the course dress for $what', ({ what, made, refused }) => {
	it('is made, or refused with two measurements named', () => {
		const expected = MADE[what];
		if (expected === undefined) expect(made.length).toBeGreaterThan(MADE_AT_LEAST);
		else expect(made.length).toBe(expected);
		for (const { name, odds } of refused) for (const pair of odds) expect(pair, name).toHaveLength(2);
	});

	it('every pair of the table is of one length, measured again along the stitching lines', () => {
		for (const { name, pattern } of made)
			for (const [first, second, within] of TABLE) {
				const [a, b] = [first, second].map((each) => {
					const [piece = '', own = ''] = each.split('.');
					return measured(edge(pattern, piece, own).path);
				});
				expect(Math.abs((a ?? NaN) - (b ?? NaN)), `${name}: ${first}, ${second}`).toBeLessThanOrEqual(within);
			}
	});

	it('every seam and every run is reported within its tolerance', () => {
		for (const { name, pattern } of made) {
			expect(pattern.runs.length).toBeGreaterThan(12);
			const off = [...pattern.seams, ...pattern.runs].filter(({ within }) => !within);
			expect(
				off.map((report) => ('run' in report ? report.run : report.label)),
				name
			).toEqual([]);
		}
	});

	it('no outline crosses itself', () => {
		for (const { name, pattern } of made)
			for (const { key, outline } of pattern.pieces)
				expect(selfCrossings(outline), `${key} of ${name}`).toEqual([]);
	});
});

describe('the cutting lines of the course dress', () => {
	it.each(EACH.slice(0, 4))('do not cross themselves for $what', ({ made }) => {
		for (const { name, pattern } of made) expect(tangles(pattern), name).toEqual([]);
	});
});

describe('the darts of the dress front', () => {
	it.each(EACH.slice(0, 5))('do not cut into the armhole for $what', ({ made }) => {
		for (const { name, pattern } of made) {
			const front = pattern.drafts['front'];
			if (!front) throw new Error('there is no front');
			const { lines, points } = front;
			// Where a leg leaves the armhole it touches it; anywhere else is a cut.
			const ends = [points['G1'], points['G2']].flatMap((place) => place ?? []);
			for (const leg of ['armholeDartUpper', 'armholeDartLower', 'dartUpper', 'dartLower'])
				for (const part of ['armholeTop', 'armholeFoot']) {
					const [a, b] = [lines[leg]?.path, lines[part]?.path];
					const met = a && b ? crossings(a, b) : [];
					const cuts = met.filter((place) => ends.every((end) => distance(place, end) > 0.5));
					expect(cuts, `${leg}, ${part} of ${name}`).toEqual([]);
				}
		}
	});
});

describe('the runs of the course dress', () => {
	it('across every seam of the table and into every fold are looked at', () => {
		const [heron] = SETS['the invented bodies'].made;
		const labels = heron?.pattern.runs.map(english.words.garments.run).join('; ') ?? '';
		for (const words of [
			/neckline at the shoulder/,
			/armhole at the shoulder/,
			/armhole at the underarm/,
			/waist at the side/,
			/hem at the side/,
			/neckline at the fold/,
			/waist at the fold/,
			/hem at the fold/,
			/neckline at the centre front/,
			/waist at the centre front/
		])
			expect(labels).toMatch(words);
	});
});

describe('the women of the survey', () => {
	it('all have one: the block leaves room for every one of them', () => {
		expect(SETS['the 300 women of the survey'].refused).toEqual([]);
	});

	it('are warned of a front shorter than the back, and of nothing that is trued', () => {
		const warnings = SETS['the 300 women of the survey'].made.flatMap(({ pattern }) =>
			pattern.warnings.map((each) => patternWarningWords(each, english))
		);
		expect(warnings).toHaveLength(82);
		for (const words of warnings)
			expect(words).toMatch(/^the front length and the back length: the front is shorter/);
	});
});

describe('edges that two pieces share', () => {
	it('have one curve, not two nearly equal ones', () => {
		for (const { made } of EACH)
			for (const { name, pattern } of made) {
				const shared = (piece: string, own: string, other: string, its: string): void => {
					const [a, b] = [edge(pattern, piece, own).path, edge(pattern, other, its).path];
					expect([a, pathReversed(a)], `${name}: ${piece}.${own}, ${other}.${its}`).toContainEqual(b);
				};
				shared('front', 'neckline', 'frontBand', 'outer');
				shared('back', 'neckline', 'backBand', 'outer');
				shared('front', 'neckline', 'facing', 'neckline');
				shared('front', 'standEdge', 'facing', 'standEdge');
			}
	});

	it('the facing’s shoulder end lies on the front’s shoulder, and is reported as caught in it', () => {
		for (const { made } of EACH)
			for (const { name, pattern } of made) {
				const [front, facing] = ['front', 'facing'].map((piece) => edge(pattern, piece, 'shoulder'));
				if (!front || !facing) throw new Error('there is no shoulder');
				for (const place of pathSamples(facing.path, mm(5)))
					expect(distance(place, nearestOnPath(front.path, place)), name).toBeLessThan(0.01);
				const seam = pattern.seams.find((each) => each.name === 'facingShoulder');
				expect(seam, name).toMatchObject({ first: ['front.shoulder'], second: ['facing.shoulder'] });
				expect(seam?.ease, name).toBeCloseTo(Math.min(0, facing.length - front.length), 9);
				expect(seam?.difference, name).toBeLessThan(0.5);
			}
	});

	it('the facing’s waist lies on the front’s, and its inner edge stays clear of the neckline', () => {
		for (const { made } of EACH.slice(0, 2))
			for (const { name, pattern } of made.filter((_, i) => i % 6 === 0)) {
				const waist = edge(pattern, 'front', 'waist').path;
				for (const place of pathSamples(edge(pattern, 'facing', 'waist').path, mm(5)))
					expect(distance(place, nearestOnPath(waist, place)), name).toBeLessThan(0.01);
				const width = edge(pattern, 'facing', 'shoulder').length;
				const neckline = edge(pattern, 'facing', 'neckline').path;
				for (const place of pathSamples(edge(pattern, 'facing', 'inner').path, mm(5)))
					expect(distance(place, nearestOnPath(neckline, place)), name).toBeGreaterThan(0.9 * width);
			}
	});
});
