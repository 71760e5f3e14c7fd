import { describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import { evaluate, outlineOf, type Draft } from '#drafting/evaluate.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { pathSamples } from '#geometry/path.ts';
import { mm } from '#shared/units.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import type { Numbers } from './back-block.ts';
import { HERON } from './front-block-bodies.ts';
import { surveyFigures } from './survey-bodies.ts';

/** Arcs are cubics that stray from the circle by less than a ten-millionth of its radius. */
const STRAYS = 2e-7;

const WIDTHS = [
	['quarter', 1 / 4],
	['half', 1 / 2],
	['threeQuarter', 3 / 4],
	['full', 1]
] as const;

const METHOD = lessonMethod('85-circle-skirt');

const ENDS: readonly Numbers[] = [
	...[-2, 6].map((bandEase) => ({ ...HERON, bandEase })),
	...[30, 110].map((skirtLength) => ({ ...HERON, skirtLength }))
];
const BODIES: readonly Numbers[] = [HERON, ...ENDS, ...surveyFigures().map((figure) => ({ ...figure }))];

describe.each(WIDTHS)('%s', (fullness, share) => {
	const bodyOf = ({ bandEase = 1, skirtLength = 60, ...measured }: Numbers) =>
		readBody({ ...measured, allowances: { bandEase, skirtLength, fullness } }, '', 'body', METHOD.allowances);
	const works = BODIES.map((numbers) => ({ numbers, work: evaluate(METHOD, bodyOf(numbers)) }));
	const drawn: readonly { readonly numbers: Numbers; readonly draft: Draft }[] = works.flatMap(
		({ numbers, work }) => (work.kind === 'drafted' ? [{ numbers, draft: work.draft }] : [])
	);
	/** The whole waist, and the length of the skirt, in millimetres. */
	const girth = ({ waist = NaN, bandEase = 1 }: Numbers): number => 10 * (waist + bandEase);
	const long = ({ skirtLength = 60 }: Numbers): number => 10 * skirtLength;

	it('radius = waist / (2 pi x share): the waist is a quarter of it, the hem longer by its share of a circle', () => {
		for (const { numbers, draft } of drawn) {
			const radius = girth(numbers) / (2 * Math.PI * share);
			const angle = (Math.PI / 2) * share;
			expect(draft.points['A']?.y).toBeCloseTo(radius, 9);
			const { waist, hem, side, centre } = draft.lines;
			expect(Math.abs((waist?.length ?? NaN) - girth(numbers) / 4)).toBeLessThan(radius * STRAYS);
			const outer = radius + long(numbers);
			expect(Math.abs((hem?.length ?? NaN) - (girth(numbers) / 4 + long(numbers) * angle))).toBeLessThan(
				outer * STRAYS
			);
			expect(side?.length).toBeCloseTo(long(numbers), 6);
			expect(centre?.length).toBeCloseTo(long(numbers), 6);
			// The far end of the hem, by sine and cosine.
			const { K } = draft.points;
			expect(
				Math.hypot((K?.x ?? NaN) - outer * Math.sin(angle), (K?.y ?? NaN) - outer * Math.cos(angle))
			).toBeLessThan(1e-6);
		}
	});

	it('waist and hem are everywhere on their circles about O', () => {
		for (const { numbers, draft } of drawn.slice(0, 40)) {
			const radius = girth(numbers) / (2 * Math.PI * share);
			for (const [name, wanted] of [
				['waist', radius],
				['hem', radius + long(numbers)]
			] as const) {
				const line = draft.lines[name];
				if (!line) throw new Error(`no ${name} is drafted`);
				for (const { x, y } of pathSamples(line.path, mm(20)))
					expect(Math.abs(Math.hypot(x, y) - wanted)).toBeLessThan(wanted * STRAYS);
			}
		}
	});

	it('no outline crosses itself', () => {
		for (const { numbers, draft } of drawn) {
			const outline = outlineOf(METHOD, draft);
			expect(outline && selfCrossings(outline), JSON.stringify(numbers)).toEqual([]);
		}
	});

	it('is refused where it would be narrower than the hip at its level, and nowhere else', () => {
		for (const { numbers, work } of works) {
			const { hip = NaN, waistToHip = NaN } = numbers;
			const round = girth(numbers) / 10 + 2 * Math.PI * share * waistToHip;
			const odds = work.kind === 'refused' ? work.refusals.map((each) => each.odds) : [];
			expect(odds, JSON.stringify(numbers)).toEqual(round < hip ? [['waist', 'hip']] : []);
		}
	});
});

describe('numbers to work in the head', () => {
	const radiusOf = (fullness: string, waist: number): number => {
		const body = readBody(
			{ ...HERON, hip: 80, waist, allowances: { bandEase: 0, fullness } },
			'',
			'body',
			METHOD.allowances
		);
		const work = evaluate(METHOD, body);
		return work.kind === 'drafted' ? (work.draft.points['A']?.y ?? NaN) / 10 : NaN;
	};

	// 22/7 for pi: 66 x 7 / 44 = 10 1/2, and so on. It is 0.04 % too large.
	it.each([
		['full', 10.5],
		['threeQuarter', 14],
		['half', 21],
		['quarter', 42]
	])('%s of a waist of 66 has a radius of %d', (fullness, radius) => {
		expect(Math.abs(radiusOf(fullness, 66) / radius - 1)).toBeLessThan(0.0005);
	});
});
