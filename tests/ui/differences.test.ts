import { describe, expect, it } from 'vitest';
import type { Placement } from '#shared/placement.ts';
import { boundsOf } from '#geometry/path.ts';
import { inkOf } from '#ui/drawing/ink-of.ts';
import { inkLabels } from '#ui/drawing/labels.ts';
import { leafFor } from '#ui/drawing/leaf.ts';
import { toScreen } from '#ui/drawing/view.ts';
import { differenceWords, fewDifferences, numbersBeside, placeOfDifference } from '#ui/embeds/differences.ts';
import { english } from '../support/speech.ts';
import { answerOf, DESKS, findingsOf, HERON_BACK, marked, ruled, verdictOn } from '../checker/drafts.ts';

const words = (step: string, placement: unknown, unit: 'cm' | 'in' = 'cm'): string =>
	differenceWords(findingsOf(verdictOn(HERON_BACK, step, placement)), english.inUnit(unit));

describe('a row of the table of differences', () => {
	it('a point says how far and which way', () => {
		expect(words('A', marked(9, 224))).toBe('9 mm too far out, 2 mm too low');
		expect(words('A', marked(9, 224), 'in')).toBe('3/8″ too far out, 1/16″ too low');
		expect(words('A', marked(0, 221))).toBe('1 mm too high');
	});

	it('a line says how far it strays, and how much longer or shorter it is', () => {
		expect(words('hem', ruled([0, 630], [277, 630]))).toBe('strays 7 mm, 7 mm longer');
		expect(words('hem', ruled([0, 630], [100, 634], [270, 630]))).toBe('strays 4 mm');
		expect(words('hem', ruled([0, 630], [268, 630]))).toBe('strays 2 mm, 2 mm shorter');
	});

	it('less than a pencil line is no difference', () => {
		expect(words('A', marked(0.3, 222.3))).toBe('no difference to speak of');
		expect(words('hem', ruled([0, 630.2], [270.2, 630.2]))).toBe('no difference to speak of');
	});

	it('the computed answer differs from itself in no step of any body', () => {
		for (const desk of DESKS)
			for (const { name } of desk.method.steps)
				expect(differenceWords(findingsOf(verdictOn(desk, name, answerOf(desk, name))), english)).toBe(
					'no difference to speak of'
				);
	});
});

describe('the few differences that matter', () => {
	const placed: Readonly<Record<string, unknown>> = {
		A: marked(0, 223.6),
		W: marked(0, 425.4),
		hem: ruled([0, 630], [100, 634], [270, 630]),
		S: marked(192, 41)
	};
	const few = (...names: readonly string[]): readonly string[] =>
		fewDifferences(names, (name) => verdictOn(HERON_BACK, name, placed[name]));

	it('are those that a sharp pencil would not have strayed, in the order of drafting', () => {
		expect(few('A', 'W', 'S', 'hem')).toEqual(['A', 'hem']);
	});

	it('are at most six, the greatest', () => {
		const off = (by: number) => verdictOn(HERON_BACK, 'A', marked(0, 222 + by));
		const names = ['1.1', '1.2', '5', '1.3', '1.4', '1.5', '1.6', '1.7'];
		expect(fewDifferences(names, (by) => off(Number(by)))).toEqual(['5', '1.3', '1.4', '1.5', '1.6', '1.7']);
	});

	it('are shown where they are: at the mark, or where the line strays furthest', () => {
		const place = (name: string) =>
			placeOfDifference(placed[name] as Placement, verdictOn(HERON_BACK, name, placed[name]));
		expect(place('A')).toEqual({ x: 0, y: 223.6 });
		expect(place('hem')).toEqual({ x: 100, y: 634 });
		expect(placeOfDifference(undefined, verdictOn(HERON_BACK, 'A', undefined))).toBeUndefined();
	});
});

describe('the number of a ring on the picture', () => {
	/** The least distance, in pixels, at which a number of 9 pixels touches neither a letter nor another's ring. */
	const CLEAR = 14;

	it('covers no name, no other ring and no other number, whichever points of the back are ringed', () => {
		const { method, draft } = HERON_BACK;
		const ink = inkOf(method, draft);
		const { view } = leafFor(boundsOf(ink.lines.map(({ path }) => path)), 540);
		const written = inkLabels(ink, view).flatMap(({ at, left }) => (left ? [] : [at]));
		const rings = ink.points.map(({ at }) => toScreen(view, at));
		for (let i = 0; i < rings.length; i++) {
			const ringed = [0, 4, 8, 12].flatMap((on) => rings[(i + on) % rings.length] ?? []);
			const numbers = numbersBeside(ringed, written);
			expect(numbers).toHaveLength(ringed.length);
			for (const [n, number] of numbers.entries())
				for (const other of [...written, ...numbers.filter((each) => each !== number), ...ringed])
					expect(
						Math.hypot(other.left - number.left, other.top - number.top),
						`the number of ring ${String(n)} of those from point ${String(i)} on`
					).toBeGreaterThan(CLEAR);
		}
	});
});
