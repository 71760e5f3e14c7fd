import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody, type Body } from '#shared/body.ts';
import { isChoice, namedChoice, type AllowanceValues } from '#shared/allowances.ts';
import { mm } from '#shared/units.ts';
import type { Garment } from '#garment/garment.ts';
import { makePattern, type Pattern } from '#garment/pattern.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { garmentOf } from '../garment/garment-files.ts';
import { surveyFigures } from './survey-bodies.ts';

/** A garment is data: what is asked of the dress is asked of each of these. */
const GARMENTS = [
	['straight-skirt', undefined],
	['circle-skirt', 'quarter'],
	['circle-skirt', 'half'],
	['circle-skirt', 'threeQuarter'],
	['circle-skirt', 'full'],
	['sleeved-bodice', undefined]
] as const;
/** How many of the 300 women have each; tests of each draft say who has none, and why. */
const HAVE_NONE: Readonly<Record<string, number>> = { quarter: 9 };

const SURVEY: readonly Body[] = surveyFigures().map((figure) => readBody({ ...figure }));
const DEMO: readonly Body[] = DEMO_BODIES.map(({ body }) => body);

interface Made {
	readonly of: string;
	readonly pattern: Pattern;
}

/** How full a skirt is chosen to be, where it may be chosen. */
const choosing = ({ allowances }: Garment, fullness: string | undefined): AllowanceValues => {
	const known = allowances.find(({ key }) => key === 'fullness');
	return fullness !== undefined && known && isChoice(known)
		? { fullness: namedChoice(known, fullness, '') }
		: {};
};

const madeFor = (
	garment: Garment,
	bodies: readonly Body[],
	allowances: AllowanceValues = {}
): readonly Made[] =>
	bodies.flatMap((body, i) => {
		const work = makePattern(garment, body, { allowances, edges: {} });
		return work.kind === 'made' ? [{ of: `${body.name} ${String(i)}`, pattern: work.pattern }] : [];
	});

/** The invented bodies with one allowance of the garment's own, or of its cutting, at an end of its range. */
const atEnds = (garment: Garment, chosen: AllowanceValues): readonly Made[] =>
	DEMO.flatMap((body) =>
		garment.allowances
			.filter((each) => 'range' in each)
			.flatMap(({ key, range }) =>
				range.flatMap((end): readonly Made[] => {
					const work = makePattern(garment, body, {
						allowances: { ...chosen, [key]: end },
						edges: {}
					});
					return work.kind === 'made'
						? [{ of: `${body.name}, ${key} ${String(end)}`, pattern: work.pattern }]
						: [];
				})
			)
	);

describe.each(GARMENTS)('%s %s', (id, fullness) => {
	const garment = garmentOf(id);
	const chosen = choosing(garment, fullness);
	const survey = madeFor(garment, SURVEY, chosen);
	const all = [...madeFor(garment, DEMO, chosen), ...survey, ...atEnds(garment, chosen)];

	it('is made for the women of the survey', () => {
		expect(survey).toHaveLength(300 - (HAVE_NONE[fullness ?? id] ?? 0));
	});

	it('every seam is within', () => {
		for (const { of, pattern } of all)
			expect(
				pattern.seams.filter(({ within }) => !within),
				of
			).toEqual([]);
	});

	it('every run is within', () => {
		for (const { of, pattern } of all) {
			expect(pattern.runs.length, of).toBeGreaterThan(0);
			expect(
				pattern.runs.filter(({ within }) => !within).map(({ run, corner }) => [run, corner]),
				of
			).toEqual([]);
		}
	});

	it('no stitching line crosses itself', () => {
		for (const { of, pattern } of all)
			for (const { key, outline } of pattern.pieces)
				expect(selfCrossings(outline), `${of}: ${key}`).toEqual([]);
	});

	it('no cutting line crosses itself', () => {
		for (const { of, pattern } of all)
			for (const { key, cutting } of pattern.pieces)
				expect(selfCrossings(cutting.outline), `${of}: ${key}`).toEqual([]);
	});

	it('every piece has an order, a grain and a cut', () => {
		for (const { number, cut, grain } of survey[0]?.pattern.pieces ?? []) {
			expect(number).toBeGreaterThan(0);
			expect(cut.length).toBeGreaterThan(0);
			expect(Math.hypot(grain[1].x - grain[0].x, grain[1].y - grain[0].y)).toBeGreaterThan(mm(10));
		}
	});
});

describe('what is sewn to what', () => {
	it('the waistband is the waist and its ease, whole, for a straight and for a circle skirt', () => {
		for (const id of ['straight-skirt', 'circle-skirt']) {
			for (const { pattern } of madeFor(garmentOf(id), DEMO)) {
				const bands = pattern.seams.filter(({ second }) => second[0]?.startsWith('waistband.'));
				expect(bands).toHaveLength(2);
				const [left, right] = bands;
				const body = DEMO.find(({ name }) => name === pattern.body);
				const girth = (body?.measurements.waist ?? NaN) + (body?.allowances['bandEase'] ?? 10);
				expect((left?.secondLength ?? NaN) + (right?.secondLength ?? NaN)).toBeCloseTo(girth, 6);
				expect((left?.firstLength ?? NaN) + (right?.firstLength ?? NaN)).toBeCloseTo(girth, 3);
			}
		}
	});

	it('the cap is eased into the armhole by what was chosen, half in front and half behind', () => {
		const garment = garmentOf('sleeved-bodice');
		for (const ease of [0, 20, 40]) {
			const work = makePattern(garment, DEMO[0] as Body, { allowances: { capEase: mm(ease) }, edges: {} });
			if (work.kind !== 'made') throw new Error('Heron has no bodice');
			for (const name of ['frontCap', 'backCap']) {
				const seam = work.pattern.seams.find((each) => each.name === name);
				expect((seam?.secondLength ?? NaN) - (seam?.firstLength ?? NaN)).toBeCloseTo(ease / 2, 4);
				expect(seam?.ease).toBe(ease / 2);
			}
		}
	});

	it('the notches of each seam lie on both its edges', () => {
		const pattern = madeFor(garmentOf('sleeved-bodice'), DEMO.slice(0, 1))[0]?.pattern;
		for (const name of ['shoulder', 'side', 'hip', 'frontCap', 'backCap', 'underarm']) {
			const notches = pattern?.pieces.flatMap((piece) => piece.notches.filter(({ seam }) => seam === name));
			expect(notches, name).toHaveLength(2);
		}
	});
});
