import { describe, expect, it } from 'vitest';
import type { Draft } from '#drafting/evaluate.ts';
import { enclosedArea } from '#geometry/area.ts';
import { chained, type Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { draftOf, mark, smallMethod } from '../drafting/small-method.ts';
import { DEMO, SURVEY, surveyWithChoices } from './dress-bodies.ts';
import { dressFor } from './dress-pattern.ts';

/** Closed forms hold to a billionth, as a share or as an angle in radians. */
const EXACT = 1e-9;

const FRONTS = [
	...DEMO,
	...SURVEY.filter((_, i) => i % 6 === 0),
	...surveyWithChoices(1, 4).filter((_, i) => i % 6 === 0)
].flatMap(({ name, numbers }) => {
	const work = dressFor(numbers);
	const draft = work.kind === 'made' ? work.pattern.drafts['front'] : undefined;
	return draft ? [{ name, draft, hasDart: 'E' in draft.points }] : [];
});

const point = ({ points }: Draft, name: string): SheetPoint => {
	const found = points[name];
	if (!found) throw new Error(`there is no ${name}`);
	return found;
};
const apart = (draft: Draft, a: string, b: string): number => {
	const [p, q] = [point(draft, a), point(draft, b)];
	return Math.hypot(p.x - q.x, p.y - q.y);
};
/** The angle at T between two points, by the law of cosines' half-angle form, which loses no digits where it is small. */
const angleAtT = (draft: Draft, a: string, b: string): number => {
	const [p, q, r] = [apart(draft, 'T', a), apart(draft, 'T', b), apart(draft, a, b)];
	return 2 * Math.asin(Math.sqrt(Math.max(0, (r - (p - q)) * (r + (p - q))) / (4 * p * q)));
};
/** Lines end to end; those that this body does not have are passed over. */
const chainOf = (draft: Draft, ...lines: readonly string[]): Path => {
	const chain = chained(lines.flatMap((name) => (draft.lines[name] ? [draft.lines[name].path] : [])));
	if (!chain) throw new Error(`${lines.join()} do not join`);
	return chain;
};

const areaOf = (draft: Draft, ...lines: readonly string[]): number =>
	Math.abs(enclosedArea(chainOf(draft, ...lines)));

/** The two parts that turn, by their lines before they do: beside the armhole, and between the side dart and the cut. */
const BESIDE = ['armholeFoot', 'sideTop', 'dartUpper', 'armholeDartLower'];
const BELOW = ['dartLower', 'sideFoot', 'waistOut', 'cutOut'];
/** Without a side dart they are one. */
const WHOLE = ['armholeFoot', 'sideStart', 'waistOut', 'cutOut', 'armholeDartLower'];
const after = (lines: readonly string[], turn: 1 | 2): readonly string[] =>
	lines.map((name) => `${name}${turn}`);

describe('the darts of the dress front moved into its waist', () => {
	it('bodies with and without a side dart are looked at', () => {
		expect(FRONTS.filter(({ hasDart }) => hasDart).length).toBeGreaterThan(30);
		expect(FRONTS.filter(({ hasDart }) => !hasDart).length).toBeGreaterThan(20);
	});

	it('the waist opens by the angles of the two darts together', () => {
		for (const { name, draft, hasDart } of FRONTS) {
			const darts = angleAtT(draft, 'G1', 'G2') + (hasDart ? angleAtT(draft, 'D1', 'E') : 0);
			expect(Math.abs(angleAtT(draft, 'F', 'F1') - darts), name).toBeLessThan(EXACT);
		}
	});

	it('the opening is twice the length of the cut times the sine of half that angle', () => {
		for (const { name, draft, hasDart } of FRONTS) {
			const darts = angleAtT(draft, 'G1', 'G2') + (hasDart ? angleAtT(draft, 'D1', 'E') : 0);
			const width = 2 * apart(draft, 'T', 'F') * Math.sin(darts / 2);
			expect(Math.abs(apart(draft, 'F', 'F1') - width), name).toBeLessThan(EXACT * 1000);
		}
	});

	it('every point that turns stays as far from the bust point, and from the others that turn with it', () => {
		const once = ['U1', 'D1', 'E', 'V0', 'F', 'G2'];
		const turnedTo: Readonly<Record<string, string>> = {
			U1: 'U2',
			D1: 'D3',
			E: 'E2',
			V0: 'V2',
			F: 'F2',
			G2: 'G3'
		};
		for (const { name, draft } of FRONTS) {
			const moved = once.filter((each) => each in draft.points);
			const pairs = [
				...moved.flatMap((a) => [...moved, 'T'].map((b) => [a, b, turnedTo[a], turnedTo[b] ?? b] as const)),
				['V0', 'T', 'V1', 'T'] as const,
				['F', 'T', 'F1', 'T'] as const,
				['V0', 'F', 'V1', 'F1'] as const,
				...('E' in draft.points ? [['E', 'T', 'E3', 'T'] as const, ['E', 'V0', 'E3', 'V1'] as const] : [])
			];
			for (const [a, b, a2 = '', b2] of pairs) {
				const [before, now] = [apart(draft, a, b), apart(draft, a2, b2)];
				expect(Math.abs(now - before), `${name}: ${a}${b}`).toBeLessThanOrEqual(EXACT * before);
			}
		}
	});

	it('the side dart is closed: its lower leg lies on its upper, and the armhole dart’s on the line of its upper', () => {
		for (const { name, draft, hasDart } of FRONTS) {
			expect(angleAtT(draft, 'G1', 'G3'), name).toBeLessThan(1e-6);
			if (hasDart) expect(apart(draft, 'E3', 'D3'), name).toBeLessThan(1e-6);
		}
	});

	it('turned parts keep their areas', () => {
		for (const { name, draft, hasDart } of FRONTS) {
			const parts = hasDart
				? [[BESIDE, after(BESIDE, 2)] as const, [BELOW, after(BELOW, 1)] as const]
				: [[WHOLE, after(WHOLE, 2)] as const];
			for (const [before, now] of parts) {
				const area = areaOf(draft, ...before);
				expect(area, name).toBeGreaterThan(100);
				expect(Math.abs(areaOf(draft, ...now) / area - 1), `${name}: ${before.join()}`).toBeLessThan(EXACT);
			}
		}
	});

	it('the front with its darts cut out is the sum of its parts, before and after they turn', () => {
		for (const { name, draft, hasDart } of FRONTS) {
			const [C1, W] = [point(draft, 'C1'), point(draft, 'W')];
			const ends = ['neck', 'shoulder', 'armholeTop', 'armholeDartUpper'];
			const closing = Math.abs(
				enclosedArea([...chainOf(draft, ...ends, 'cut', 'waistIn'), { kind: 'straight', from: W, to: C1 }])
			);
			const outer = hasDart ? ['sideTop', 'dartUpper', 'dartLower', 'sideFoot'] : ['sideStart'];
			const whole = Math.abs(
				enclosedArea([
					...chainOf(draft, ...ends, 'armholeDartLower', 'armholeFoot', ...outer, 'waistOut', 'waistIn'),
					{ kind: 'straight', from: W, to: C1 }
				])
			);
			const now = hasDart
				? areaOf(draft, ...after(BESIDE, 2)) + areaOf(draft, ...after(BELOW, 1))
				: areaOf(draft, ...after(WHOLE, 2));
			expect(Math.abs((closing + now) / whole - 1), name).toBeLessThan(EXACT);
		}
	});
});

describe('a dart closed and opened again', () => {
	it('gives back every point that turned with it', () => {
		const draft = draftOf(
			smallMethod(
				[
					mark('T', 'O', 'down', 'bustHeight'),
					mark('A', 'O', 'across', 'shoulderWidth'),
					mark('B', 'A', 'down', 'neckAllow'),
					mark('P', 'B', 'down', 'waistToHip'),
					{
						kind: 'turn',
						name: 'B2',
						label: 'closed',
						move: 'B',
						about: 'T',
						onto: 'A',
						carries: { P2: 'P' }
					},
					{
						kind: 'turn',
						name: 'B3',
						label: 'opened',
						move: 'B2',
						about: 'T',
						opening: 'distance(B, B2)',
						toward: 'down',
						carries: { P3: 'P2' }
					}
				],
				{}
			)
		);
		for (const [before, closed, again] of [
			['B', 'B2', 'B3'],
			['P', 'P2', 'P3']
		] as const) {
			expect(apart(draft, before, closed)).toBeGreaterThan(5);
			expect(apart(draft, before, again)).toBeLessThan(EXACT * 1000);
		}
	});
});
